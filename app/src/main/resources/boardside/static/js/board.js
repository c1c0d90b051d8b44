// The board as pages draw it: inches, x to the thrower's right from the centre line, y up from the front edge. The same
// parts of the board as boardside.engine.tactics has (TriesPageTest holds them together).

import { el, t } from "./dom.js";

export const LENGTH = 48;
export const RADIUS = 3;
export const HOLE = { x: 0, y: 39 };
export const DEPTHS = ["back", "beside", "1", "2", "3", "4", "5", "6"]; // from the top of the board down
export const LANES = ["left", "middle", "right"];

/** Width of a kind of board, inches. */
export function widthOf(kind) {
  return kind === "narrow" ? 12 : 24;
}

export function inHole(spot) {
  return Math.hypot(spot.x - HOLE.x, spot.y - HOLE.y) < RADIUS;
}

/** The part of the board a point lies in: { depth, lane }. */
export function targetAt(spot, width) {
  const depth = spot.y >= 42 ? "back" : spot.y >= 36 ? "beside" : String(6 - Math.floor(spot.y / 6));
  const lane = Math.abs(spot.x) <= width / 6 ? "middle" : spot.x < 0 ? "left" : "right";
  return { depth, lane };
}

/** Whether a bag that rests there lies in a target. */
export function holds(target, spot, width) {
  return !inHole(spot) && textOf(targetAt(spot, width)) === textOf(target);
}

export function centreOf(target, width) {
  const y = target.depth === "back" ? 45 : target.depth === "beside" ? 39 : 39 - 6 * Number(target.depth);
  return { x: (LANES.indexOf(target.lane) - 1) * width / 3, y };
}

/** As targets are written, such as 2-left. */
export function textOf(target) {
  return `${target.depth}-${target.lane}`;
}

export function parse(text) {
  const [depth, lane] = text.split("-");
  return { depth, lane };
}

const SVG = "http://www.w3.org/2000/svg";

/** An SVG element. */
function svg(tag, attributes, ...children) {
  const node = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, value);
  node.append(...children);
  return node;
}

/** A board drawn large, with a button for every part of it: a finger says exactly where, a key the middle of the part. */
export class BoardView {
  /**
   * @param width of the board, inches
   * @param tapped told { x, y } in inches, or "in" for the hole
   * @param holeTaken whether a tap on the hole means anything
   */
  constructor(width, tapped, holeTaken = true) {
    this.width = width;
    this.tapped = tapped;
    this.picture = svg("svg", { viewBox: `${-width / 2} 0 ${width} ${LENGTH}`, "aria-hidden": "true", preserveAspectRatio: "none" });
    this.cells = el("div", { class: "cells" });
    this.node = el("div", { class: "board" }, this.picture, this.cells);
    this.node.style.setProperty("--board-width", width);
    DEPTHS.forEach((depth, row) => LANES.forEach((lane, column) => this.cells.append(el("button", {
      type: "button", "data-part": textOf({ depth, lane }), "aria-label": partName({ depth, lane }),
      tabindex: row === 3 && column === 1 ? "0" : "-1", click: (event) => this.tap(event, { depth, lane }),
    }))));
    if (holeTaken) {
      const middle = this.cells.querySelector('[data-part="beside-middle"]');
      middle.setAttribute("aria-label", t("board.part.hole"));
    }
    this.holeTaken = holeTaken;
    this.cells.addEventListener("keydown", (event) => this.move(event));
    this.show({});
  }

  /** The part of this board a point lies in. */
  partAt(spot) {
    return targetAt(spot, this.width);
  }

  tap(event, part) {
    // A key, or a screen reader's tap, has no place of its own on the board.
    const pointed = event.detail > 0;
    const box = this.picture.getBoundingClientRect();
    const centre = centreOf(part, this.width);
    const spot = pointed ? {
      x: clamp(((event.clientX - box.left) / box.width - 0.5) * this.width, -this.width / 2, this.width / 2),
      y: clamp((1 - (event.clientY - box.top) / box.height) * LENGTH, 0, LENGTH),
    } : centre;
    spot.x = Math.round(spot.x * 4) / 4;
    spot.y = Math.round(spot.y * 4) / 4;
    this.tapped(inHole(spot) && this.holeTaken ? "in" : spot);
  }

  // Arrow keys go from part to part.
  move(event) {
    const steps = { ArrowUp: -3, ArrowDown: 3, ArrowLeft: -1, ArrowRight: 1 };
    const all = [...this.cells.querySelectorAll("button")];
    const now = all.indexOf(event.target);
    if (!(event.key in steps) || now < 0) return;
    const next = now + steps[event.key];
    const sameRow = Math.floor(next / 3) === Math.floor(now / 3);
    event.preventDefault();
    event.stopPropagation();
    if (next < 0 || next >= all.length || (Math.abs(steps[event.key]) === 1 && !sameRow)) return;
    all[now].tabIndex = -1;
    all[next].tabIndex = 0;
    all[next].focus();
  }

  /**
   * Draws anew.
   *
   * @param target { depth, lane } called, or null
   * @param bags lying: [{ x, y, side }]
   * @param marks where bags ended: [{ x, y, worked, last }]
   */
  show({ target = null, bags = [], marks = [] }) {
    const w = this.width;
    const up = (y) => LENGTH - y;
    const shapes = [svg("rect", { class: "b-wood", x: -w / 2, y: 0, width: w, height: LENGTH })];
    if (target) {
      const centre = centreOf(target, w);
      shapes.push(svg("rect", { class: "b-target", x: centre.x - w / 6, y: up(centre.y + 3), width: w / 3, height: 6 }));
    }
    for (const x of [-w / 6, w / 6]) shapes.push(svg("line", { class: "b-line", x1: x, x2: x, y1: 0, y2: LENGTH }));
    for (const y of [6, 12, 18, 24, 30, 36, 42]) shapes.push(svg("line", { class: "b-line", x1: -w / 2, x2: w / 2, y1: up(y), y2: up(y) }));
    shapes.push(svg("circle", { class: "b-hole", cx: 0, cy: up(HOLE.y), r: RADIUS }));
    for (const bag of bags) shapes.push(...bagShapes(bag));
    for (const mark of marks) {
      const kind = `${mark.worked ? "b-hit" : "b-miss"}${mark.last ? " b-last" : ""}`;
      if (mark.worked) {
        shapes.push(svg("circle", { class: kind, cx: mark.x, cy: up(mark.y), r: mark.last ? 1.3 : 0.8 }));
      } else {
        const r = mark.last ? 1.2 : 0.7;
        shapes.push(svg("path", { class: kind, d: `M${mark.x - r} ${up(mark.y) - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}` }));
      }
    }
    this.picture.replaceChildren(...shapes);
    for (const button of this.cells.children) {
      button.toggleAttribute("data-called", target !== null && button.dataset.part === textOf(target));
    }
  }
}

/** A bag by its side: mine filled, theirs ringed with a bar across, so that they differ by more than colour. */
export function bagShapes(bag) {
  const y = LENGTH - bag.y;
  const shapes = [svg("rect", { class: `b-bag b-${bag.side}`, x: bag.x - 2.7, y: y - 2.7, width: 5.4, height: 5.4, rx: 1.1 })];
  if (bag.side === "versus") shapes.push(svg("path", { class: "b-bar", d: `M${bag.x - 1.6} ${y}h3.2` }));
  return shapes;
}

/** A part of the board in words: "depth 2, left". */
export function partName(target) {
  const lane = t(`board.lane.${target.lane}`);
  return target.depth === "back" || target.depth === "beside"
    ? t(`board.part.${target.depth}`, lane) : t("board.part", target.depth, lane);
}

function clamp(value, low, high) {
  return Math.min(high, Math.max(low, value));
}
