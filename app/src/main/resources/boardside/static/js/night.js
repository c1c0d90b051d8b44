// A league night at the boards, without the network: what is needed, how likely it is, and the next game.

import { el } from "./dom.js";
import { isoNow, uuidv7 } from "./ids.js";
import { addressed } from "./sheets.js";

const NOTHING = { likely: 0, low: 0, high: 0 };
const SURE = { likely: 1, low: 1, high: 1 };

/** The chance of that many points or more with so many rounds left. */
function atLeast(reach, points) {
  if (points <= 0) return SURE;
  if (points >= reach.likely.length) return NOTHING;
  return { likely: reach.likely[points], low: reach.low[points], high: reach.high[points] };
}

/** The chance of a higher total than theirs; `theirs` holds the chance of each of their totals. */
export function winning(reach, mine, theirs) {
  const win = { ...NOTHING };
  theirs.forEach((chance, total) => {
    const one = atLeast(reach, total + 1 - mine);
    for (const part of ["likely", "low", "high"]) win[part] += chance * one[part];
  });
  return win;
}

/** A chance in whole hundredths with its range; near the ends it says so rather than claim certainty. */
export function percent({ likely, low, high }) {
  const whole = (chance) => Math.round(100 * chance);
  const estimate = likely > 0.995 && likely < 1 ? "over 99 %" : likely < 0.005 && likely > 0 ? "under 1 %" : `${whole(likely)} %`;
  return `${estimate} (${whole(low)}–${whole(high)})`;
}

/** Points a round, rounded up to a tenth so that they are enough. */
export function pace(need, left) {
  const tenths = Math.max(0, Math.ceil((10 * need) / left - 1e-9));
  return tenths % 10 === 0 ? String(tenths / 10) : (tenths / 10).toFixed(1);
}

export class Night {
  /** `night` is what the server gave, `model` the run, `t` the wording. */
  constructor(night, model, t) {
    this.night = night;
    this.model = model;
    this.t = t;
    this.game = night.game;
    // Games begun on this device and not yet sent.
    for (const operation of model.outbox.known()) {
      if ((operation.type === "fixture" || operation.type === "match") && (operation.fixture ?? operation.match) === night.fixture) {
        night.games[operation.game - 1].run = operation.run;
      }
    }
  }

  get now() {
    return this.night.games[this.game - 1];
  }

  get name() {
    return this.t("run.night.game", this.game, this.night.games.length, this.night.opponent);
  }

  /** What is needed and how likely it is, in a sentence or two. */
  needed() {
    const { points, rounds } = this.model.sums();
    const left = this.night.rounds - rounds;
    if (points === null || left <= 0) return "";
    return [this.paceSaid(points, left), this.chanceSaid(points, left)].filter((said) => said !== "").join(" ");
  }

  paceSaid(points, left) {
    const { theirs } = this.now;
    if (theirs === undefined) return "";
    const need = theirs + 1 - points;
    if (need <= 0) return this.t("run.night.beaten", this.night.opponent, theirs);
    if (need > 12 * left) return this.t("run.night.out", this.night.opponent, theirs);
    return this.t(left === 1 ? "run.night.needed.last" : "run.night.needed", pace(need, left), left, this.night.opponent, theirs);
  }

  chanceSaid(points, left) {
    const { theirs, source, totals, chances } = this.now;
    const reach = this.night.reach[left];
    if (!reach || !source) return "";
    const law = theirs === undefined ? chances : [...Array(theirs).fill(0), 1];
    return this.t(`run.night.chance.${source}`, percent(winning(reach, points, law)), this.night.opponent, totals);
  }

  /** How the game that is over came out. */
  outcome() {
    const { theirs } = this.now;
    const { points } = this.model.sums();
    const key = theirs === undefined ? "thrown" : points > theirs ? "won" : points === theirs ? "tied" : "lost";
    return this.t(`run.night.${key}`, this.game, points, theirs ?? "", this.night.opponent);
  }

  /** The number of the next game, or 0 after the last. */
  get next() {
    return this.game < this.night.games.length ? this.game + 1 : 0;
  }

  /** Goes on to the next game: the one begun already, else a new run on this device. True where a page must be loaded. */
  goOn() {
    const number = this.next;
    const begun = this.night.games[number - 1].run;
    if (begun) {
      location.assign(`/runs/${encodeURIComponent(begun)}`);
      return;
    }
    const { model } = this;
    const run = { ...model.run, id: uuidv7(), startedAt: isoNow(), game: number, finishedAt: null, setup: model.setup };
    this.now.mine = model.sums().points;
    model.outbox.add(model.player, {
      type: "run", op: uuidv7(), run: run.id, session: run.session, drill: "fixture", startedAt: run.startedAt,
      warmUp: false, opponent: this.night.opponent, target: null, game: number, setup: model.setup,
    });
    const { season, fixture } = this.night;
    const of = season === "" ? { type: "fixture", fixture } : { type: "match", season, match: fixture };
    model.outbox.add(model.player, { ...of, op: uuidv7(), game: number, run: run.id });
    this.night.games[number - 1].run = run.id;
    this.game = number;
    model.begin(run, []);
    this.settled();
  }

  /** Once the server knows the run, the page has its address. */
  settled() {
    addressed(this.model);
  }
}

/** What stands where rounds are entered once a game is over: how it came out, the next game, the match. */
export function nightDone(night, redraw) {
  const { t } = night;
  const match = el("a", { class: night.next ? "button" : "button main", id: "match", href: night.night.path }, t("run.night.match"));
  const next = night.next === 0 ? null : el("button", {
    type: "button", class: "main", id: "next-game", click: () => { night.goOn(); redraw(); },
  }, t("run.night.next", night.next));
  return el("div", { class: "done" }, el("p", { class: "pop", id: "done-said" }, night.outcome()), next, el("p", {}, match));
}
