// What the pages at the boards draw with: their texts, elements, bags as shapes, and the ways to enter a round.

import { points, finishes } from "./scoring.js";

const texts = JSON.parse(document.querySelector("[data-texts]").dataset.texts);

/** The element with an id. */
export const $ = (id) => document.getElementById(id);

/** A text with its values filled in. */
export function t(key, ...args) {
  const text = texts[key];
  if (text === undefined) throw new Error(`no text ${key}`);
  return text.replace(/\{(\d)\}/g, (_, i) => args[i]);
}

/** A new element; `click` is what a tap does. */
export function el(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name === "click") node.addEventListener("click", value);
    else if (value !== null && value !== undefined && value !== false) node.setAttribute(name, value);
  }
  node.append(...children.filter((child) => child !== null));
  return node;
}

const SVG = "http://www.w3.org/2000/svg";

/** One bag: a disc in, a square on, a cross off. */
export function bag(outcome) {
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("class", `bag bag-${outcome}`);
  svg.setAttribute("viewBox", "0 0 12 12");
  svg.setAttribute("aria-hidden", "true");
  const use = document.createElementNS(SVG, "use");
  use.setAttribute("href", `#shape-${outcome}`);
  svg.append(use);
  return svg;
}

/** The bags of counts, those in first. */
export function bags(counts) {
  const shapes = el("span", { class: "bags" });
  for (const outcome of ["in", "on", "off"]) {
    for (let i = 0; i < (counts[outcome] ?? 0); i++) shapes.append(bag(outcome));
  }
  return shapes;
}

/** A number with at most one decimal. */
export function one(number) {
  return Number.isInteger(number) ? String(number) : number.toFixed(1);
}

function finishName(f) {
  return t("run.finish", f.in, f.on, f.off, points(f));
}

/** The 15 finishes: a row for each number in, a column for each number on. */
export function picker(choose, chosen = null) {
  const head = el("tr", {}, el("td", {}), ...[0, 1, 2, 3, 4].map((on) => el("th", { scope: "col" }, t("run.picker.on", on))));
  const rows = [4, 3, 2, 1, 0].map((inside) => el("tr", {},
    el("th", { scope: "row" }, t("run.picker.in", inside)),
    ...[0, 1, 2, 3, 4].map((on) => {
      const finish = finishes().find((f) => f.in === inside && f.on === on);
      if (!finish) return el("td", {});
      const isChosen = chosen !== null && chosen.in === inside && chosen.on === on && chosen.off === finish.off;
      return el("td", {}, el("button", {
        type: "button", "aria-label": finishName(finish), "aria-pressed": isChosen ? "true" : null,
        "data-finish": `${finish.in}-${finish.on}-${finish.off}`, click: () => choose(finish),
      }, el("b", {}, String(points(finish))), bags(finish)));
    })));
  return el("table", { class: "picker" }, el("caption", { class: "visually-hidden" }, t("run.picker.caption")),
    el("thead", {}, head), el("tbody", {}, ...rows));
}

/** A button for each number of bags in, 0 to the most. */
export function counts(most, chosen, choose, label) {
  return el("div", { class: "counts", role: "group", "aria-label": label },
    ...Array.from({ length: most + 1 }, (_, n) => el("button", {
      type: "button", "aria-pressed": String(chosen === n), "data-count": String(n), "aria-label": t("run.count", n, most), click: () => choose(n),
    }, String(n))));
}

/** A large button for what became of one bag. */
export function outcomeButton(outcome, key, click) {
  return el("button", { type: "button", class: "outcome", "data-outcome": outcome, click },
    bag(outcome === "missed" ? "off" : outcome), t(`outcome.${outcome}`), el("kbd", {}, key));
}
