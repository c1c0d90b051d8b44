// A plan followed at the boards: when a block is over the next one begins on the same page, without the network too.

import { el, t } from "./dom.js";
import { isoNow, uuidv7 } from "./ids.js";

export class Planned {
  /** `boot` is what the server gave, `model` the run. */
  constructor(boot, model) {
    this.plan = boot.plan;
    this.model = model;
    this.steps = boot.steps;
    // Blocks begun on this device and not yet sent.
    for (const operation of model.outbox.known()) {
      if (operation.type === "block" && operation.plan === this.plan) this.take(operation);
    }
  }

  take({ choice, place }) {
    this.steps = this.steps.filter((step) => step.choice !== choice || step.place !== place);
  }

  /** The next block, or undefined after the last. */
  get next() {
    return this.steps[0];
  }

  /** The next block that can be thrown here. */
  get here() {
    return this.steps.find((step) => step.kind === "here");
  }

  /** Begins a block: pauses right before it are over, what else is passed over stays to be done. */
  begin(step) {
    const { model } = this;
    if (!model.finished) model.finish();
    while (this.next !== step && this.next.kind === "rest") this.done(this.next, "");
    const { drill, warmUp, opponent, setup, standing } = step.start;
    const run = {
      id: uuidv7(), session: model.run.session, drill, startedAt: isoNow(), warmUp, opponent, target: setup.target ?? null,
      game: null, finishedAt: null, setup,
    };
    model.outbox.add(model.player, {
      type: "run", op: uuidv7(), run: run.id, session: run.session, drill, startedAt: run.startedAt, warmUp, opponent,
      target: run.target, game: null, setup,
    });
    this.done(step, run.id);
    model.trial = null;
    model.standing = standing ?? null;
    model.begin(run, []);
  }

  done(step, run) {
    this.model.outbox.add(this.model.player, {
      type: "block", op: uuidv7(), plan: this.plan, choice: step.choice, place: step.place, run,
    });
    this.take(step);
  }
}

/**
 * What stands where rounds are entered once a block is over: what comes next, and a way on to it.
 *
 * @param begun told when a block was begun here; null on a page that rounds are not entered on
 */
export function plannedNext(planned, begun) {
  const { next } = planned;
  const here = begun ? planned.here : undefined;
  if (!next) return el("p", { id: "plan-next" }, t("run.plan.over"), " ", el("a", { href: "/plan" }, t("run.plan.see")));
  const button = here ? el("button", {
    type: "button", class: "main", id: "next-block", click: () => { planned.begin(here); begun(); },
  }, t("run.plan.start", here.name)) : null;
  return el("section", { id: "plan-next", "aria-labelledby": "plan-next-name" },
    el("h2", { id: "plan-next-name" }, t("run.plan.next", next.name)),
    el("p", {}, next.does), el("p", { class: "small quiet" }, next.why),
    next.kind === "page" || !begun ? el("p", { class: "small" }, t("run.plan.page"), " ", el("a", { href: "/plan", id: "to-plan" }, t("run.plan.see"))) : null,
    button);
}
