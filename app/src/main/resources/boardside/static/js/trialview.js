// What a trial shows at the boards: whom to throw, and how it stands after a block. Never a difference without its range.

import { el, t } from "./dom.js";

const signed = (value) => {
  const text = Math.abs(value).toFixed(1);
  return text === "0.0" ? text : `${value < 0 ? "\u2212" : "+"}${text}`;
};

/** The candidate to throw next, by name. */
export function trialName(model) {
  return model.trial.way(model.nextCandidate().candidate).name;
}

/** The call: which candidate, and which of its two rounds. */
export function trialCall(model) {
  const { block, round } = model.nextCandidate();
  return el("p", { class: "call called", id: "call", "aria-live": "polite" },
    el("span", { class: "small" }, t("run.trial.next", block, model.trial.trial.longest, round)), el("b", {}, trialName(model)));
}

function ahead(model, state) {
  const name = (candidate) => model.trial.way(candidate).name;
  const { estimate, low, high } = state.lead;
  const range = t("run.trial.range", signed(low), signed(high));
  return Math.abs(estimate).toFixed(1) === "0.0"
    ? t("run.trial.alike", name(state.first), name(state.second), range)
    : t("run.trial.ahead", name(state.first), estimate.toFixed(1), name(state.second), range);
}

/** How it stands so far, in a sentence; who dropped out after the last block is said first. */
export function trialSaid(model) {
  const state = model.trial.state(model.played());
  if (state.lead === null) return t("run.trial.first", 2 * state.inPlay.length);
  const gone = state.dropped.filter((drop) => drop.after === state.blocks)
    .map((drop) => t("run.trial.gone", model.trial.way(drop.candidate).name));
  return [...gone, t("run.trial.open", ahead(model, state))].join(" ");
}

/** How it ended, in a sentence. */
export function trialDone(model) {
  const state = model.trial.state(model.played());
  if (state.ending === "winner") return t("run.trial.winner", model.trial.way(state.first).name, ahead(model, state));
  if (state.ending === "as-good-as-equal") {
    const names = state.inPlay.map((candidate) => model.trial.way(candidate).name);
    return t("run.trial.equal", names.join(", "), model.trial.trial.margin);
  }
  return t("run.trial.unsettled", ahead(model, state));
}
