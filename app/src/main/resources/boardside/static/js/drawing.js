// Bags laid on a board with a finger or with keys: on the page of a set-up, and at the boards where one is changed.

import { BoardView, LENGTH, RADIUS, inHole, centreOf, partName, targetAt, widthOf } from "./board.js";
import { $, el, t } from "./dom.js";

const MOST_OF_A_SIDE = 4;
const FAR = 4; // inches a finger must move before it drags

/** A bag by its side and the part of the board it lies in. */
export function bagName(bag, width) {
  return t(`situations.bag.${bag.side}`, partName(targetAt(bag, width)));
}

/** Why bags cannot lie so, in words; empty where they can. */
export function problemOf(bags, kind) {
  const width = widthOf(kind);
  for (const [i, bag] of bags.entries()) {
    if (Math.abs(bag.x) > width / 2) return t("situations.beside", bagName(bag, widthOf("regulation")));
    if (inHole(bag)) return t("situations.hole");
    if (bags.slice(0, i).some((other) => Math.hypot(bag.x - other.x, bag.y - other.y) < 2 * RADIUS - 1e-6)) return t("situations.overlap");
  }
  return ["me", "versus"].some((side) => bags.filter((bag) => bag.side === side).length > MOST_OF_A_SIDE) ? t("situations.four") : "";
}

/** The board and its buttons, as the fragment drawing.jte has them. */
export class Drawing {
  constructor() {
    this.side = "versus";
    this.snap = true;
    for (const which of ["versus", "me"]) $(`side-${which}`).addEventListener("click", () => this.choose(which));
    $("snap").addEventListener("click", () => { this.snap = !this.snap; this.draw(); });
    $("remove").addEventListener("click", () => { if (this.chosen !== null) this.remove(this.chosen); });
    $("mirror").addEventListener("click", () => {
      this.change(this.bags.map((bag) => ({ ...bag, x: bag.x === 0 ? 0 : -bag.x })), t("situations.turned"));
    });
    $("draw-undo").addEventListener("click", () => {
      this.bags = this.undos.pop();
      this.chosen = null;
      this.draw();
    });
  }

  /** Draws anew, with some bags lying on a kind of board: regulation or narrow. */
  begin(bags, kind = "regulation") {
    this.kind = kind;
    this.width = widthOf(kind);
    this.board = new BoardView(this.width, (spot) => this.put(spot), false);
    this.lying = el("div", { class: "lying-bags" });
    this.board.node.append(this.lying);
    $("board").replaceChildren(this.board.node);
    this.bags = bags;
    this.chosen = null; // index of the bag chosen
    this.undos = [];
    this.draw();
  }

  /** Says something under the board. */
  say(text) {
    $("draw-said").textContent = text;
  }

  change(next, said) {
    this.undos.push(this.bags);
    this.bags = next;
    this.draw(said);
  }

  put(spot) {
    const bag = { ...this.snapped(spot), side: this.side };
    const why = problemOf([...this.bags, bag], this.kind);
    if (why) return this.draw(why);
    this.chosen = this.bags.length;
    return this.change([...this.bags, bag], t("situations.put", bagName(bag, this.width)));
  }

  move(index, spot) {
    const moved = this.bags.map((bag, i) => (i === index ? { ...this.snapped(spot), side: bag.side } : bag));
    const why = problemOf(moved, this.kind);
    if (why) return this.draw(why);
    return this.change(moved, t("situations.moved", bagName(moved[index], this.width)));
  }

  remove(index) {
    const name = bagName(this.bags[index], this.width);
    this.chosen = null;
    this.change(this.bags.filter((_, i) => i !== index), t("situations.removed", name));
    this.board.cells.querySelector('[tabindex="0"]').focus({ preventScroll: true });
  }

  /** Whose bag the next one is, or the one chosen. */
  choose(which) {
    this.side = which;
    if (this.chosen === null) return this.draw();
    const turned = this.bags.map((bag, i) => (i === this.chosen ? { ...bag, side: which } : bag));
    const why = problemOf(turned, this.kind);
    return why ? this.draw(why) : this.change(turned, "");
  }

  snapped(spot) {
    return this.snap ? centreOf(targetAt(spot, this.width), this.width) : { x: spot.x, y: spot.y };
  }

  draw(said = "") {
    this.board.show({ bags: this.bags });
    const focused = this.lying.contains(document.activeElement);
    this.lying.replaceChildren(...this.bags.map((bag, i) => this.handle(bag, i)));
    if (focused && this.chosen !== null) this.lying.children[this.chosen]?.focus({ preventScroll: true });
    this.say(said);
    $("remove").disabled = this.chosen === null;
    $("draw-undo").disabled = this.undos.length === 0;
    $("side-versus").setAttribute("aria-pressed", String(this.side === "versus"));
    $("side-me").setAttribute("aria-pressed", String(this.side === "me"));
    $("snap").setAttribute("aria-pressed", String(this.snap));
  }

  // A button over each bag: chosen by a tap or a key, dragged, moved by arrow keys.
  handle(bag, i) {
    const button = el("button", {
      type: "button", class: "lying", "aria-label": bagName(bag, this.width), "aria-pressed": String(this.chosen === i),
      click: () => { this.chosen = this.chosen === i ? null : i; this.draw(); },
    });
    button.style.left = `${(bag.x / this.width + 0.5) * 100}%`;
    button.style.top = `${(1 - bag.y / LENGTH) * 100}%`;
    button.addEventListener("keydown", (event) => this.key(event, i));
    button.addEventListener("pointerdown", (event) => this.drag(event, i, button));
    return button;
  }

  // Arrow keys move the bag that has the focus, a part of the board or an inch; Delete takes it away.
  key(event, index) {
    const by = { ArrowUp: [0, 1], ArrowDown: [0, -1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] }[event.key];
    if (event.key === "Delete" || event.key === "Backspace") {
      event.preventDefault();
      this.remove(index);
    } else if (by) {
      event.preventDefault();
      this.chosen = index;
      const { x, y } = this.bags[index];
      const to = { x: x + by[0] * (this.snap ? this.width / 3 : 1), y: y + by[1] * (this.snap ? 6 : 1) };
      if (Math.abs(to.x) <= this.width / 2 && to.y >= 0 && to.y <= LENGTH) this.move(index, to);
    }
  }

  drag(event, index, button) {
    const box = this.board.picture.getBoundingClientRect();
    const at = (e) => ({ x: ((e.clientX - box.left) / box.width - 0.5) * this.width, y: (1 - (e.clientY - box.top) / box.height) * LENGTH });
    const from = at(event);
    let to = null;
    button.setPointerCapture(event.pointerId);
    const moved = (e) => {
      const now = at(e);
      if (to === null && Math.hypot(now.x - from.x, now.y - from.y) < FAR) return;
      const { x, y } = this.bags[index];
      to = { x: clamp(x + now.x - from.x, -this.width / 2, this.width / 2), y: clamp(y + now.y - from.y, 0, LENGTH) };
      this.board.show({ bags: this.bags.map((bag, i) => (i === index ? { ...bag, ...to } : bag)) });
    };
    const done = () => {
      button.removeEventListener("pointermove", moved);
      if (to === null) return;
      // The click that follows a drag chooses nothing.
      button.addEventListener("click", (e) => e.stopImmediatePropagation(), { capture: true, once: true });
      this.chosen = index;
      this.move(index, { x: Math.round(to.x * 4) / 4, y: Math.round(to.y * 4) / 4 });
    };
    button.addEventListener("pointermove", moved);
    button.addEventListener("pointerup", done, { once: true });
    button.addEventListener("pointercancel", done, { once: true });
  }
}

function clamp(value, low, high) {
  return Math.min(high, Math.max(low, value));
}
