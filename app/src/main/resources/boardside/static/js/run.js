// The page at the boards: draws the run and turns taps and keys into changes of the model.

import {
  contestAgainst, contestBags, contestCorrection, contestDone, contestEntry, contestNeeded, contestRound, contestScore,
  contestWhere, scoreSheet,
} from "./contest.js";
import { $, bag, bags, counts, el, one, outcomeButton, picker, t } from "./dom.js";
import { calledName, mixedEntry } from "./mixed.js";
import { RunModel } from "./model.js";
import { kept } from "./keep.js";
import { Night, nightDone } from "./night.js";
import { Outbox } from "./outbox.js";
import { Planned, plannedNext } from "./planned.js";
import { sender } from "./post.js";
import {
  Voice, addressed, drawChips, drawSent as drawSentMark, keepOrSay, leave, onKey, setupSheet, summaryOf, wire,
} from "./sheets.js";
import { ShotClock, stakesSaid } from "./stakes.js";
import { ghostIn, roundPoints } from "./standing.js";
import { trialCall, trialDone, trialName, trialSaid } from "./trialview.js";

const root = document.getElementById("run");
const boot = JSON.parse(root.dataset.run);

const outbox = new Outbox(sender(boot.token, t("run.send.pair")), () => drawSent());
// What the server gave holds all that was sent to it.
if (!kept && !boot.begunHere) outbox.forgetSent(boot.run.id);
const model = new RunModel(boot, outbox);
const night = boot.night ? new Night(boot.night, model, t) : null;
const planned = boot.plan ? new Planned(boot.plan, model) : null;
let correcting = null; // { number, side } while an earlier round is being corrected
let clock = null; // the shot clock, where one is at stake
const voice = new Voice();

// Drawing

function draw() {
  drawScore();
  drawSetup();
  drawRounds();
  drawEntry();
  drawSent();
  $("undo").disabled = !model.canUndo();
  $("stakes").textContent = stakesSaid(model.setup.stakes);
}

function drawScore() {
  const sums = model.sums();
  if (model.trial) {
    drawTrial();
    return;
  }
  if (model.contest) {
    $("score").textContent = contestScore(model);
    $("where").textContent = contestWhere(model);
    $("against").textContent = contestAgainst(model);
    $("needed").textContent = contestNeeded(model);
    return;
  }
  if (model.isGame) {
    const { game } = model.standingNow();
    const round = Math.min(game.rounds + 1, 999);
    $("score").textContent = `${game.mine}–${game.theirs}`;
    $("where").textContent = model.setup.ghostPlay ? t("run.where.playing", boot.ghost, round)
      : t("run.where.race", model.setup.ghost, round);
    $("needed").textContent = neededInGame(game);
    return;
  }
  $("score").textContent = byIn(sums) ? String(sums.in) : String(sums.points);
  const next = sums.rounds + 1;
  const planned = model.setup.rounds;
  $("where").textContent = planned === null ? t("run.where.open", next)
    : t("run.where.of", Math.min(next, planned), planned);
  if (byIn(sums)) $("needed").textContent = sums.thrown === 0 ? "" : t("run.bags.in", sums.in, sums.thrown);
  else $("needed").textContent = night ? night.needed() : needed(sums);
  $("against").textContent = boot.challenge ? t("run.challenge", boot.challenge) : night ? night.name : against();
}

function drawTrial() {
  const state = model.trial.state(model.played());
  const { left } = model.nextCandidate();
  const over = model.over();
  // Whom to throw is what matters, and stands above the entry.
  $("score").parentElement.hidden = true;
  const midway = left < 2 * state.inPlay.length;
  $("needed").textContent = over ? "" : midway ? t(left === 1 ? "run.trial.left.one" : "run.trial.left", left) : trialSaid(model);
}

// Whether bags in are what is added up, rather than points.
function byIn(sums) {
  return sums.points === null || model.bySets || model.mixed;
}

// The best and the usual to measure against.
function against() {
  const { best, usual } = model.standing ?? {};
  if (!best) return "";
  return model.bySets || model.mixed ? t("run.against.bags", best.total, best.thrown) : t("run.against", best.total, one(usual));
}

function neededInGame(game) {
  if (game.result !== "open") return "";
  const { target } = game.rules;
  return t("run.needed.race", Math.max(0, target - game.mine), Math.max(0, target - game.theirs));
}

// What is needed for the best, or at least the usual, total of this many rounds.
function needed(sums) {
  const planned = model.setup.rounds;
  const best = model.standing?.best?.total ?? null;
  const usual = model.standing?.usual ?? null;
  if (planned === null || best === null) return "";
  const left = planned - sums.rounds;
  if (left <= 0) return "";
  const forBest = (best + 1 - sums.points) / left;
  const forUsual = usual === null ? null : (usual - sums.points) / left;
  if (forBest <= 0) return t("run.needed.already", best);
  if (forBest <= 12) return t(left === 1 ? "run.needed.best.last" : "run.needed.best", one(Math.ceil(forBest * 10) / 10), left, best);
  if (forUsual !== null && forUsual <= 12 && forUsual > 0) {
    return t(left === 1 ? "run.needed.usual.last" : "run.needed.usual", one(Math.ceil(forUsual * 10) / 10), left, one(usual));
  }
  return "";
}

function drawSetup() {
  const s = model.setup;
  const side = setupSide();
  const way = model.way(side);
  const names = (side === "b" ? [way.bag] : model.sets).map((id) => model.bagName(id)).filter((name) => name !== "");
  const tell = openScore
    ? el("button", { type: "button", id: "tell-score", click: openScore, "aria-haspopup": "dialog" }, t("run.score.tell")) : null;
  drawChips([
    model.contest?.alone ? t(`side.${side}`) : null,
    model.trial ? null : names.length > 0 ? names.join(", ") : t("run.set.unnamed"),
    way.face && !model.trial ? t(`face.${way.face}`) : null,
    way.approach && !model.trial ? t(`approach.${way.approach}`) : null,
    s.board === "narrow" ? t("board.narrow") : null,
    s.conditions ? t(`conditions.${s.conditions}`) : model.trial ? t("run.trial.conditions") : null,
    s.setting === "practice" ? null : t(`setting.${s.setting}`),
  ], openSetup, tell);
}

// The side of mine whose set-up the chips show and the sheet changes: the one whose turn it is.
function setupSide() {
  if (!model.contest?.alone) return "me";
  return model.oneByOne ? model.nextThrow().side : model.turn().side;
}

function drawRounds() {
  const list = $("rounds");
  if (model.contest) {
    list.replaceChildren(...model.numbers().map((number) => {
      const shown = contestRound(model, number);
      return el("li", {}, el("button", {
        type: "button", "aria-pressed": String(correcting !== null && correcting.number === number),
        "aria-label": t("run.round.correct", number, shown), click: () => startCorrecting(number),
      }, el("b", {}, shown)));
    }));
    list.scrollLeft = list.scrollWidth;
    return;
  }
  list.replaceChildren(...model.played().map((round) => {
    const value = roundPoints(round);
    const inside = round.lines.reduce((sum, line) => sum + (line.in ?? 0), 0);
    const points = value === null || model.bySets || model.mixed ? inside : value;
    const shown = model.setup.ghostPlay ? `${points}:${ghostIn(model.setup, round.number)}` : points;
    const pressed = correcting !== null && correcting.number === round.number;
    const shapes = round.lines.length === 1 && round.lines[0].thrown <= 4 ? bags(round.lines[0]) : null;
    return el("li", {}, el("button", {
      type: "button", "aria-pressed": String(pressed), "aria-label": t("run.round.correct", round.number, shown),
      click: () => startCorrecting(round.number),
    }, el("b", {}, String(shown)), shapes));
  }));
  list.scrollLeft = list.scrollWidth;
}

// What a button does, so that the one that had the keyboard's focus has it again after the entry is drawn anew.
function sameButton(button) {
  const set = button.closest("[data-set]");
  const within = set ? `[data-set="${set.dataset.set}"] ` : "";
  for (const name of ["finish", "outcome", "count", "side", "bag"]) {
    if (name in button.dataset) return `${within}[data-${name}="${button.dataset[name]}"]`;
  }
  return button.id ? `#${button.id}` : null;
}

function drawEntry() {
  const entry = $("entry");
  const focused = entry.contains(document.activeElement) ? sameButton(document.activeElement) : null;
  const hadFocus = entry.contains(document.activeElement);
  fillEntry(entry);
  if (hadFocus) {
    const again = (focused && entry.querySelector(`${focused}:not(:disabled)`)) || entry.querySelector("button, a");
    again?.focus({ preventScroll: true });
  }
  $("mode").hidden = model.bySets || model.mixed || Boolean(model.setup.stakes?.lastBag) || model.over() || correcting !== null;
  $("mode").textContent = t(model.setup.bagByBag ? "run.mode.round" : "run.mode.bag");
}

function fillEntry(entry) {
  entry.classList.toggle("correcting", correcting !== null);
  if (correcting !== null) {
    entry.replaceChildren(...correctionEntry());
  } else if (model.over() || (planned && model.finished)) {
    entry.replaceChildren(done());
  } else if (model.bySets) {
    entry.replaceChildren(setsEntry());
  } else if (model.mixed) {
    entry.replaceChildren(mixedEntry(model, { record }));
  } else if (model.trial) {
    const round = model.oneByOne ? oneByOneEntry() : picker((finish) => record(() => model.putFinish(finish)));
    entry.replaceChildren(trialCall(model), round);
  } else if (model.oneByOne) {
    entry.replaceChildren(model.sides.length > 1 ? contestBags(model, { record }) : oneByOneEntry());
  } else if (model.contest) {
    entry.replaceChildren(...contestEntry(model, { record, redraw: draw }));
  } else {
    entry.replaceChildren(picker((finish) => record(() => model.putFinish(finish))));
  }
}

function oneByOneEntry() {
  const slots = el("p", { class: "slots", role: "img", "aria-label": t("run.bags.thrown", model.throws.length) });
  for (let i = 0; i < 4; i++) slots.append(i < model.throws.length ? bag(model.throws[i].outcome) : el("span", { class: "empty" }));
  const big = (outcome, key) => outcomeButton(outcome, key, () => record(() => model.addThrow(outcome)));
  const { must } = model.nextThrow();
  const last = model.throws[model.throws.length - 1];
  const missed = last && last.outcome !== "in";
  const misses = el("div", { class: "misses", role: "group", "aria-label": t("run.miss") },
    ...["left", "right", "short", "long"].map((where) => el("button", {
      type: "button", disabled: missed ? null : "", "aria-pressed": String(Boolean(missed) && last.miss === where),
      click: () => record(() => model.setMiss(where)),
    }, t(`miss.${where}`))));
  const earlier = model.throws.slice(0, -1).some((thrown) => thrown.outcome !== "in");
  return el("div", { class: "one-by-one" }, slots,
    model.setup.stakes?.lastBag ? el("p", { class: "call", id: "call", "aria-live": "polite" }, must ? el("b", {}, t("stakes.must")) : null) : null, big("in", "1 ↑"), big("on", "2 →"), big("off", "3 ↓"), misses,
    el("button", { type: "button", id: "earlier", disabled: earlier ? null : "", click: () => record(() => model.earlierWentIn()) },
      t("run.earlier")));
}

function setsEntry() {
  const most = model.setup.bagsPerSet;
  return el("div", { class: "sets" }, ...model.sets.map((id) => {
    const name = model.bagName(id) || t("run.set.unnamed");
    const tapped = model.taps[id];
    const parts = [el("h2", {}, t("run.set.count", name, most))];
    if (most === 4 && !model.setup.onlyIn) {
      parts.push(picker((finish) => record(() => model.tapSet(id, finish)), tapped || null));
    } else {
      parts.push(counts(most, tapped?.in ?? null, (n) => record(() => model.tapSet(id, { thrown: most, in: n })), name));
    }
    if (model.run.drill === "casual") {
      parts.push(el("button", { type: "button", click: () => record(() => model.tapSet(id, { thrown: most })) }, t("run.not.counted", most)));
    }
    return el("section", { "data-set": id }, ...parts);
  }));
}

function startCorrecting(number) {
  correcting = correcting !== null && correcting.number === number ? null : { number };
  draw();
  if (correcting !== null) $("entry").querySelector("button")?.focus({ preventScroll: true });
}

function correctionEntry() {
  const stop = () => { correcting = null; draw(); };
  const set = (index, value, side = model.sides[0]) => {
    model.correct(correcting.number, index, value, side);
    correcting = null;
    changed(false);
  };
  const parts = [el("div", { class: "correcting-head" }, el("strong", {}, t("run.correcting", correcting.number)),
    el("button", { type: "button", class: "plain", click: stop }, t("run.correct.leave")))];
  if (model.contest) return parts.concat(contestCorrection(model, correcting, { set, redraw: draw }));
  model.round(correcting.number).lines.forEach((line, index) => {
    if (model.bySets || model.mixed) parts.push(el("h2", {}, model.bagName(line.bag) || t("run.set.unnamed")));
    if (line.thrown === 4 && line.on !== null) {
      parts.push(picker((finish) => set(index, finish), line));
    } else {
      parts.push(counts(line.thrown, line.in, (n) => set(index, { thrown: line.thrown, in: n }), t("run.correcting", correcting.number)));
    }
  });
  return parts;
}

function done() {
  const sums = model.sums();
  let said;
  if (!model.over()) {
    said = t("run.plan.closed", sums.thrown);
  } else if (model.trial) {
    said = trialDone(model);
  } else if (model.contest) {
    said = contestDone(model);
  } else if (model.isGame) {
    const { game, result } = model.standingNow();
    said = t(result === "won" ? "run.done.won" : "run.done.lost", game.mine, game.theirs, game.rounds);
  } else if (byIn(sums)) {
    said = t("run.bags.in", sums.in, sums.thrown);
  } else {
    said = t("run.done.total", sums.points, sums.rounds);
  }
  if (night) return nightDone(night, () => { draw(); $("entry").querySelector("button")?.focus({ preventScroll: true }); });
  return el("div", { class: "done" }, el("p", { class: "pop", id: "done-said" }, said),
    planned ? plannedNext(planned, begun) : null,
    el("a", { class: planned ? "button" : "button main", id: "summary", href: summaryOf(model.run) }, t("run.done.summary")));
}

// The next block of a plan has begun on this page.
function begun() {
  correcting = null;
  boot.challenge = null;
  $("score").parentElement.hidden = false;
  trialFields(false);
  document.querySelector("h1").textContent = t(`drill.${model.run.drill}`);
  draw();
  $("entry").querySelector("button")?.focus({ preventScroll: true });
  window.scrollTo(0, 0);
}

function drawSent() {
  night?.settled();
  addressed(model);
  drawSentMark(outbox);
}

// Changing

function record(change) {
  keepOrSay(change);
  changed(true);
}

function changed(speak) {
  draw();
  clock?.recorded(model);
  if (!speak || !voice.on) return;
  const next = model.over() ? "" : model.mixed ? calledName(model) : model.trial ? trialName(model) : "";
  if (model.throws.length === 0) voice.say([spokenScore(), next].filter((part) => part !== "").join(". "));
  else if (model.mixed) voice.say(next);
}

function spokenScore() {
  if (model.trial) return "";
  const played = model.played();
  if (played.length === 0) return "";
  const last = roundPoints(played[played.length - 1]);
  if (model.isGame) {
    const { game, known } = model.standingNow();
    if (!known || (model.contest && !model.over() && model.turn().number <= played[played.length - 1].number)) return "";
    return t("run.spoken.race", last, game.mine, game.theirs);
  }
  const sums = model.sums();
  return byIn(sums) ? t("run.bags.in", sums.in, sums.thrown) : t("run.spoken", last, sums.points);
}

function undo() {
  correcting = null;
  model.undo();
  clock?.recorded(model);
  draw();
}

$("mode").addEventListener("click", () => {
  if (model.throws.length > 0) model.putThrows();
  model.changeSetup({ bagByBag: !model.setup.bagByBag });
  draw();
});

// The sheets for what may change between rounds, and for a game's final score

const openScore = model.run.drill === "game" ? scoreSheet(model, { record }) : null;
const openSetup = setupSheet(model, {
  now: () => {
    const { bag: own, ...way } = model.way(setupSide());
    return { ...model.setup, ...way, bags: many() ? model.setup.bags : [own].filter((id) => id) };
  },
  many,
  changed: ({ bags: chosen, face, approach, board, conditions }) => {
    model.taps = {};
    // Called bags of a round under way are kept: the round goes on anew with what is chosen now.
    if (model.mixed && model.throws.length > 0) model.putThrows();
    const own = setupSide() === "b" ? { contest: { ...model.contest, other: { bag: chosen[0] ?? "", face, approach } } }
      : { bags: chosen, face, approach };
    model.changeSetup(model.trial ? { conditions } : { ...own, board, conditions });
    draw();
  },
});

function many() {
  return model.bySets || model.mixed;
}

// How a trial is thrown was fixed before it began; only the conditions may change.
function trialFields(hidden) {
  for (const field of ["#new-bag", "[name=face]", "[name=approach]", "[name=board]"]) {
    $("setup-form").querySelector(field).closest("fieldset").hidden = hidden;
  }
}
if (model.trial) trialFields(true);

const KEYS = {
  1: "in", ArrowUp: "in", PageUp: "in", 2: "on", ArrowRight: "on", 3: "off", ArrowDown: "off", PageDown: "off",
};
onKey(KEYS, (outcome) => {
  if (!model.oneByOne || model.over() || correcting !== null) return false;
  const counted = !model.mixed || !model.setup.onlyIn;
  if (counted || outcome !== "on") record(() => model.addThrow(counted || outcome === "in" ? outcome : "missed"));
  return true;
});

// A block of a plan that is closed by hand goes on to the next one.
wire(model, outbox, undo, () => (planned ? draw() : leave(summaryOf(model.run))));
draw();
const { stakes } = model.setup;
if (stakes?.shotClock) {
  clock = new ShotClock(stakes.shotClock, stakes.countDown);
  clock.recorded(model);
}
outbox.flush();
