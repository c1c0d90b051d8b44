// Drawing a set-up with a finger or with keys, and keeping it. What is kept goes out like every tap at the boards.

import { BoardView, LENGTH, RADIUS, inHole, centreOf, partName, targetAt, widthOf } from "./board.js";
import { $, el, t } from "./dom.js";
import { uuidv7 } from "./ids.js";
import { Outbox } from "./outbox.js";
import { sender } from "./post.js";

const boot = JSON.parse($("draw").dataset.boot);
const outbox = new Outbox(sender(boot.token, t("run.send.pair")), sent);
const width = widthOf("regulation");
const MOST_OF_A_SIDE = 4;
const FAR = 4; // inches a finger must move before it drags

let bags = boot.position.bags;
let side = "versus";
let snap = true;
let chosen = null; // index of the bag chosen
let undos = [];
let keeping = null; // the operation that waits to be stored

const board = new BoardView(width, (spot) => put(spot), false);
const lying = el("div", { class: "lying-bags" });
board.node.append(lying);
$("board").append(board.node);

function bagName(bag) {
  return t(`situations.bag.${bag.side}`, partName(targetAt(bag, width)));
}

function snapped(spot) {
  return snap ? centreOf(targetAt(spot, width), width) : spot;
}

/** Why a bag cannot lie there, or nothing. */
function problem(spot, ofSide, except = -1) {
  if (inHole(spot)) return t("situations.hole");
  const others = bags.filter((_, i) => i !== except);
  if (others.some((bag) => Math.hypot(bag.x - spot.x, bag.y - spot.y) < 2 * RADIUS - 1e-6)) return t("situations.overlap");
  if (others.filter((bag) => bag.side === ofSide).length >= MOST_OF_A_SIDE) return t("situations.four");
  return "";
}

function change(next, said) {
  undos.push(bags);
  bags = next;
  draw(said);
}

function put(spot) {
  const to = snapped(spot);
  const why = problem(to, side);
  if (why) return draw(why);
  chosen = bags.length;
  return change([...bags, { ...to, side }], t("situations.put", bagName({ ...to, side })));
}

function move(index, spot) {
  const to = snapped(spot);
  const why = problem(to, bags[index].side, index);
  if (why) return draw(why);
  return change(bags.map((bag, i) => (i === index ? { ...to, side: bag.side } : bag)), t("situations.moved", bagName({ ...bags[index], ...to })));
}

function remove(index) {
  const name = bagName(bags[index]);
  chosen = null;
  change(bags.filter((_, i) => i !== index), t("situations.removed", name));
  board.cells.querySelector('[tabindex="0"]').focus({ preventScroll: true });
}

function draw(said = "") {
  board.show({ bags });
  const focused = lying.contains(document.activeElement);
  lying.replaceChildren(...bags.map((bag, i) => {
    const button = el("button", {
      type: "button", class: "lying", "aria-label": bagName(bag), "aria-pressed": String(chosen === i),
      click: () => { chosen = chosen === i ? null : i; draw(); },
    });
    button.style.left = `${(bag.x / width + 0.5) * 100}%`;
    button.style.top = `${(1 - bag.y / LENGTH) * 100}%`;
    button.addEventListener("keydown", (event) => key(event, i));
    button.addEventListener("pointerdown", (event) => drag(event, i, button));
    return button;
  }));
  if (focused && chosen !== null) lying.children[chosen]?.focus({ preventScroll: true });
  $("said").textContent = said;
  $("remove").disabled = chosen === null;
  $("undo").disabled = undos.length === 0;
  $("side-versus").setAttribute("aria-pressed", String(side === "versus"));
  $("side-me").setAttribute("aria-pressed", String(side === "me"));
  $("snap").setAttribute("aria-pressed", String(snap));
}

// Arrow keys move the bag that has the focus, a part of the board or an inch; Delete takes it away.
function key(event, index) {
  const by = { ArrowUp: [0, 1], ArrowDown: [0, -1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] }[event.key];
  if (event.key === "Delete" || event.key === "Backspace") {
    event.preventDefault();
    remove(index);
  } else if (by) {
    event.preventDefault();
    chosen = index;
    const { x, y } = bags[index];
    const to = { x: x + by[0] * (snap ? width / 3 : 1), y: y + by[1] * (snap ? 6 : 1) };
    if (Math.abs(to.x) <= width / 2 && to.y >= 0 && to.y <= LENGTH) move(index, to);
  }
}

function drag(event, index, button) {
  const box = board.picture.getBoundingClientRect();
  const at = (e) => ({ x: ((e.clientX - box.left) / box.width - 0.5) * width, y: (1 - (e.clientY - box.top) / box.height) * LENGTH });
  const from = at(event);
  let to = null;
  button.setPointerCapture(event.pointerId);
  const moved = (e) => {
    const now = at(e);
    if (to === null && Math.hypot(now.x - from.x, now.y - from.y) < FAR) return;
    to = { x: clamp(bags[index].x + now.x - from.x, -width / 2, width / 2), y: clamp(bags[index].y + now.y - from.y, 0, LENGTH) };
    board.show({ bags: bags.map((bag, i) => (i === index ? { ...bag, ...to } : bag)) });
  };
  const done = () => {
    button.removeEventListener("pointermove", moved);
    if (to === null) return;
    // The click that follows a drag chooses nothing.
    button.addEventListener("click", (e) => e.stopImmediatePropagation(), { capture: true, once: true });
    chosen = index;
    move(index, { x: Math.round(to.x * 4) / 4, y: Math.round(to.y * 4) / 4 });
  };
  button.addEventListener("pointermove", moved);
  button.addEventListener("pointerup", done, { once: true });
  button.addEventListener("pointercancel", done, { once: true });
}

function clamp(value, low, high) {
  return Math.min(high, Math.max(low, value));
}

for (const which of ["versus", "me"]) {
  $(`side-${which}`).addEventListener("click", () => {
    side = which;
    if (chosen !== null) change(bags.map((bag, i) => (i === chosen ? { ...bag, side } : bag)), "");
    else draw();
  });
}
$("snap").addEventListener("click", () => { snap = !snap; draw(); });
$("remove").addEventListener("click", () => { if (chosen !== null) remove(chosen); });
$("mirror").addEventListener("click", () => change(bags.map((bag) => ({ ...bag, x: bag.x === 0 ? 0 : -bag.x })), t("situations.turned")));
$("undo").addEventListener("click", () => {
  bags = undos.pop();
  chosen = null;
  draw();
});

// Keeping

function say(problemText) {
  $("problem").textContent = problemText;
  $("problem").hidden = problemText === "";
}

function keep(retired) {
  const name = $("name").value.trim();
  if (name === "") {
    say(t("situations.fault.name"));
    $("name").focus();
    return;
  }
  say("");
  const op = uuidv7(boot.op);
  keeping = op;
  outbox.add(boot.player, { type: "situation", op, situation: boot.id || uuidv7(), name, position: { bags }, retired });
}

/** Once it is stored, on to the list; what is refused is said here and not kept for later. */
function sent() {
  if (keeping === null || outbox.pending().some((operation) => operation.op === keeping)) {
    if (keeping !== null) $("said").textContent = outbox.problem || t("run.waiting", outbox.pending().length);
    return;
  }
  const refused = outbox.refused().find((one) => one.operation.op === keeping);
  keeping = null;
  if (refused) {
    outbox.forgetRefused();
    say(refused.message);
  } else {
    location.href = "/situations?said=saved";
  }
}

$("keep").addEventListener("click", () => keep(false));
$("retire")?.addEventListener("click", () => keep(true));
window.addEventListener("online", () => outbox.flush());
draw();
