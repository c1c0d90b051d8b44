// Bag sets of several speeds in random order: the phone calls the next one, each bag is one tap.

import { bag, el, outcomeButton, t } from "./dom.js";

/** The bag set to throw next, by name. */
export function calledName(model) {
  return model.bagName(model.nextThrow().bag) || t("run.set.unnamed");
}

/** The call, and a button for each way the bag may end. */
export function mixedEntry(model, { record }) {
  const tap = (outcome) => () => record(() => model.addThrow(outcome));
  const buttons = model.setup.onlyIn
    ? [outcomeButton("in", "1 \u2191", tap("in")), outcomeButton("missed", "3 \u2193", tap("missed"))]
    : [outcomeButton("in", "1 \u2191", tap("in")), outcomeButton("on", "2 \u2192", tap("on")), outcomeButton("off", "3 \u2193", tap("off"))];
  const so = el("p", { class: "slots many", role: "img", "aria-label": t("run.mixed.thrown", model.throws.length, model.bagsARound) });
  for (let i = 0; i < model.bagsARound; i++) {
    so.append(i < model.throws.length ? bag(model.throws[i].outcome === "missed" ? "off" : model.throws[i].outcome)
      : el("span", { class: i === model.throws.length ? "empty next" : "empty" }));
  }
  return el("div", { class: "one-by-one" }, so,
    el("p", { class: "call called", id: "call", "aria-live": "polite" },
      el("span", { class: "small" }, t("run.mixed.next", model.throws.length + 1, model.bagsARound)), el("b", {}, calledName(model)),
      model.nextThrow().must ? el("span", {}, t("stakes.must")) : null),
    ...buttons);
}
