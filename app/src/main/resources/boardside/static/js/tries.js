// The page for tries at targets and in situations: draws the run and turns taps and keys into changes of the model.

import { BoardView, partName } from "./board.js";
import { $, bag, el, t } from "./dom.js";
import { Drawing, problemOf } from "./drawing.js";
import { kept } from "./keep.js";
import { Outbox } from "./outbox.js";
import { Planned, plannedNext } from "./planned.js";
import { sender } from "./post.js";
import { Voice, addressed, drawChips, drawSent as drawSentMark, keepOrSay, onKey, setupSheet, summaryOf, wire } from "./sheets.js";
import { ShotClock, stakesSaid } from "./stakes.js";
import { TryModel } from "./trymodel.js";

const boot = JSON.parse($("run").dataset.run);
const outbox = new Outbox(sender(boot.token, t("run.send.pair")), () => drawSent());
// What the server gave holds all that was sent to it.
if (!kept && !boot.begunHere) outbox.forgetSent(boot.run.id);
const model = new TryModel(boot, outbox);
const planned = boot.plan ? new Planned(boot.plan, model) : null;
const voice = new Voice();
const MISSES = ["long", "left", "right", "short"];
let correcting = null; // number of the try being corrected
let clock = null; // the shot clock, where one is at stake
let board = null;

// Words

function shotName(shot) {
  return t(`shot.${shot}`);
}

function callName(step) {
  if (model.isPlacement) return partName(step.target);
  return step.target ? t("try.call.target", shotName(step.shot), partName(step.target)) : shotName(step.shot);
}

function restName(played) {
  const { rest } = played;
  if (!rest) return "";
  if (rest.outcome === "in") return t("try.rest.in");
  if (rest.outcome === "off") return rest.miss ? t(`try.rest.${rest.miss}`) : t("try.rest.off");
  return rest.spot ? t("try.rest.on", partName(board.partAt(rest.spot))) : t("outcome.on");
}

function sideName(side) {
  return side === "me" ? t("try.me") : model.exercise.partner;
}

// Drawing

function draw() {
  drawScore();
  drawSetup();
  drawTries();
  drawEntry();
  drawSent();
  $("undo").disabled = !model.canUndo();
  $("stakes").textContent = stakesSaid(model.setup.stakes, true);
}

function drawSent() {
  addressed(model);
  drawSentMark(outbox);
}

function drawScore() {
  const sums = model.sums();
  const { until = null, tries = null, partner } = model.exercise;
  $("score").textContent = t("try.score", sums.worked, sums.tries);
  $("where").textContent = until !== null ? t("try.where.until", until)
    : tries !== null ? t(model.chained ? "try.where.goes" : "try.where.tries", Math.min(sums.tries + 1, tries), tries)
      : t(model.chained ? "try.where.go" : "try.where.try", sums.tries + 1);
  const other = partner === "" ? null : model.sums("versus");
  $("against").textContent = other ? t("try.partner", partner, other.worked, other.tries) : "";
}

function drawSetup() {
  const s = model.setup;
  drawChips([
    model.bagName(s.bags[0]) || t("run.set.unnamed"),
    s.face ? t(`face.${s.face}`) : null,
    s.approach ? t(`approach.${s.approach}`) : null,
    s.board === "narrow" ? t("board.narrow") : null,
    s.conditions ? t(`conditions.${s.conditions}`) : null,
  ], openSetup);
}

function drawTries() {
  const list = $("rounds");
  list.replaceChildren(...model.played().map(({ number, played }) => el("li", {}, el("button", {
    type: "button", "aria-pressed": String(correcting === number),
    "aria-label": t(played.worked ? "try.again.worked" : "try.again.failed", number, callName(played)),
    click: () => { correcting = correcting === number ? null : number; draw(); },
  }, bag(played.worked ? "in" : "off"), el("span", { class: "small" }, String(number))))));
  list.hidden = list.children.length === 0;
  list.scrollLeft = list.scrollWidth;
}

function drawEntry() {
  const entry = $("entry");
  const active = document.activeElement;
  const part = entry.contains(active) ? active.dataset.part || active.dataset.off || active.id : null;
  entry.classList.toggle("correcting", correcting !== null);
  if (correcting === null && model.over()) entry.replaceChildren(done());
  else if (model.isPlacement) entry.replaceChildren(...placementEntry());
  else entry.replaceChildren(...situationEntry());
  // The button that had the keyboard's focus has it again.
  if (part) {
    const again = entry.querySelector(`[data-part="${part}"], [data-off="${part}"], [id="${part}"]`);
    (again || entry.querySelector("a, button"))?.focus({ preventScroll: true });
  }
}

function correctingHead() {
  const leave = () => { correcting = null; draw(); };
  return el("div", { class: "correcting-head" }, el("strong", {}, t("try.correcting", correcting)),
    el("button", { type: "button", id: "take-back", click: () => record(() => model.takeBack(correcting)) }, t("try.take-back")),
    el("button", { type: "button", class: "plain", click: leave }, t("run.correct.leave")));
}

function callHead(step) {
  const link = correcting === null ? model.link() : null;
  const side = model.exercise.partner === "" ? null : model.side();
  const about = correcting !== null ? [] : [
    link ? t("try.step", link.step, link.steps) : null,
    side ? t("try.turn", sideName(side)) : null,
  ].filter((part) => part !== null);
  return el("p", { class: "call", id: "call", "aria-live": "polite" },
    about.length > 0 ? el("span", { class: "small quiet" }, about.join(" \u00b7 ")) : null, el("strong", {}, callName(step)),
    correcting === null && model.mustWork() ? el("b", { class: "must" }, t("stakes.must-work")) : null,
    model.isPlacement ? null : el("span", { class: "small" }, t(`shot.${step.shot}.worked`)));
}

function drawBoard(choose, contents) {
  board = new BoardView(model.width, choose);
  board.show(contents);
  return board.node;
}

// A button for each way a bag leaves the board.
function offButtons(choose) {
  return MISSES.map((where) => el("button", { type: "button", class: `off off-${where}`, "data-off": where, click: () => choose(where) },
    bag("off"), el("span", {}, t(`try.off.${where}`))));
}

function marksOf(wanted, lastNumber) {
  return model.played().filter(({ played }) => played.rest?.spot && wanted(played))
    .map(({ number, played }) => ({ ...played.rest.spot, worked: played.worked, last: number === lastNumber }));
}

function placementEntry() {
  const again = correcting === null ? null : model.tries.get(correcting).played;
  const step = again || model.called();
  const same = (played) => played.target.depth === step.target.depth && played.target.lane === step.target.lane;
  const last = model.last();
  const choose = (rest) => record(() => {
    if (correcting === null) model.place(rest);
    else model.setRest(correcting, rest);
  });
  const around = el("div", { class: "around", role: "group", "aria-label": t("try.where.rest") }, ...offButtons(choose),
    drawBoard(choose, { target: step.target, marks: marksOf(same, again ? correcting : last?.number) }));
  const head = again ? correctingHead() : null;
  const said = !again && last ? t(last.played.worked ? "try.said.worked" : "try.said.failed", restName(last.played)) : t("try.tap.rest");
  const parts = [head, callHead(step), el("p", { class: "told", role: "status", id: "said" }, said), around, again ? null : chooser()];
  return parts.filter((part) => part !== null);
}

// What the player may call where they do.
function chooser() {
  const exercise = model.exercise;
  const things = model.isPlacement ? exercise.targets : exercise.shots;
  if (exercise.call !== "mine" || model.chained || things.length < 2) return null;
  const now = model.called();
  const nameOf = (thing) => (model.isPlacement ? `${thing.depth}-${thing.lane}` : thing.shot);
  const wanted = model.isPlacement ? now.target : now;
  return el("div", { class: "calls", role: "group", "aria-label": t("try.call") }, ...things.map((thing) => el("button", {
    type: "button", "aria-pressed": String(nameOf(thing) === nameOf(wanted)), "data-part": `call-${nameOf(thing)}`,
    click: () => { model.say({ call: nameOf(thing) }); draw(); },
  }, model.isPlacement ? partName(thing) : shotName(thing.shot))));
}

function situationEntry() {
  const again = correcting === null ? null : model.tries.get(correcting).played;
  const last = model.last();
  const step = again || model.called();
  const restOf = again ? correcting : last?.number;
  const choose = (rest) => {
    if (restOf !== undefined) record(() => model.setRest(restOf, rest));
  };
  const drawn = drawBoard(choose, {
    target: step.target, bags: step.position.bags,
    marks: marksOf((played) => played === model.tries.get(restOf)?.played, restOf),
  });
  const big = (worked) => el("button", {
    type: "button", class: "outcome", id: worked ? "worked" : "failed",
    "aria-pressed": again ? String(again.worked === worked) : null,
    click: () => record(() => (again ? model.setWorked(correcting, worked) : model.tryShot(worked))),
  }, bag(worked ? "in" : "off"), t(worked ? "try.worked" : "try.failed"), el("kbd", {}, worked ? "1 ↑" : "3 ↓"));
  const told = restOf === undefined ? t("try.rest.later")
    : model.tries.get(restOf).played.rest ? t("try.ended", restOf, restName(model.tries.get(restOf).played)) : t("try.rest.ask", restOf);
  const parts = [again ? correctingHead() : null, callHead(step),
    el("div", { class: "play" }, drawn, el("div", { class: "verdict" }, big(true), big(false), again ? null : options())),
    again ? null : chooser(), el("p", { class: "told", role: "status", id: "said" }, told),
    el("div", { class: "offs", role: "group", "aria-label": t("try.where.rest") }, ...offButtons(choose))];
  return parts.filter((part) => part !== null);
}

// How the bags came to lie there, whose turn it is, a set-up drawn anew, and a chain from its first shot.
function options() {
  const toggles = [];
  if (model.called().position.bags.length > 0) {
    toggles.push(el("button", {
      type: "button", id: "by-hand", "aria-pressed": String(model.byHand()),
      click: () => { model.say({ byHand: !model.byHand() }); draw(); },
    }, t("try.by-hand")));
  }
  if (model.exercise.partner !== "") {
    toggles.push(el("button", {
      type: "button", id: "turn", click: () => { model.say({ side: model.side() === "me" ? "versus" : "me" }); draw(); },
    }, t("try.turn.swap")));
  }
  toggles.push(el("button", { type: "button", id: "redraw", click: openDrawing, "aria-haspopup": "dialog" }, t("try.redraw")));
  if (model.chained && model.link().step > 1) {
    toggles.push(el("button", { type: "button", id: "anew", click: () => { model.startOver(); draw(); } },
      t("try.anew")));
  }
  return el("div", { class: "calls" }, ...toggles);
}

function done() {
  const { sums: { me }, end } = model.standing();
  const { lastBag = false } = model.setup.stakes ?? {};
  const { tries = null } = model.exercise;
  const said = [
    t("try.done", me.worked, me.tries),
    end > 0 ? t("try.done.sudden") : lastBag && me.tries === tries ? t(me.last ? "try.done.last" : "try.done.last.not") : "",
  ].filter((part) => part !== "").join(". ");
  return el("div", { class: "done" }, el("p", { class: "pop", id: "done-said" }, said),
    planned ? plannedNext(planned, null) : null,
    el("a", { class: "button main", id: "summary", href: summaryOf(model.run) }, t("run.done.summary")));
}

// Changing

function record(change) {
  keepOrSay(change);
  correcting = null;
  draw();
  clock?.recorded(model);
  if (!model.over()) {
    const sums = model.sums();
    voice.say(t("try.spoken", sums.worked, sums.tries, callName(model.called())));
  }
}

function undo() {
  correcting = null;
  model.undo();
  clock?.recorded(model);
  draw();
}

const openSetup = setupSheet(model, {
  now: () => model.setup,
  changed: (changes) => { model.changeSetup(changes); draw(); },
});

// A set-up drawn anew holds from the next try on; every try keeps the one it was played in.
const drawing = $("redrawn") ? new Drawing() : null;

function openDrawing() {
  drawing.begin(model.start(), model.setup.board);
  $("drawing-fault").hidden = true;
  $("drawing-sheet").showModal();
}

$("redrawn")?.addEventListener("click", () => {
  const fault = model.exercise.shots.map((step) => problemOf(model.moved(step, drawing.bags), model.setup.board)).find((one) => one);
  $("drawing-fault").textContent = fault ? t("try.redraw.fault", fault) : "";
  $("drawing-fault").hidden = !fault;
  if (fault) return;
  $("drawing-sheet").close();
  if (JSON.stringify(drawing.bags) !== JSON.stringify(model.start())) record(() => model.redraw(drawing.bags));
});

const KEYS = { 1: true, PageUp: true, ArrowUp: true, 3: false, PageDown: false, ArrowDown: false };
onKey(KEYS, (worked) => {
  if (model.isPlacement || model.over() || correcting !== null) return false;
  record(() => model.tryShot(worked));
  return true;
});

wire(model, outbox, undo);
draw();
const { stakes } = model.setup;
if (stakes?.shotClock) {
  clock = new ShotClock(stakes.shotClock, stakes.countDown);
  clock.recorded(model);
}
outbox.flush();
