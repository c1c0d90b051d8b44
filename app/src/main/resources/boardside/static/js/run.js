// The page at the boards: draws the run and turns taps and keys into changes of the model.

import {
  contestAgainst, contestBags, contestCorrection, contestDone, contestEntry, contestNeeded, contestRound, contestScore,
  contestWhere, scoreSheet,
} from "./contest.js";
import { $, bag, bags, counts, el, one, outcomeButton, picker, t } from "./dom.js";
import { calledName, mixedEntry } from "./mixed.js";
import { RunModel } from "./model.js";
import { Night, nightDone } from "./night.js";
import { Outbox } from "./outbox.js";
import { sender } from "./post.js";
import { say, speechReady } from "./speech.js";
import { ShotClock, stakesSaid } from "./stakes.js";
import { ghostIn, roundPoints } from "./standing.js";

const root = document.getElementById("run");
const boot = JSON.parse(root.dataset.run);

const outbox = new Outbox(sender(boot.token, t("run.send.pair")), () => drawSent());
const model = new RunModel(boot, outbox);
const night = boot.night ? new Night(boot.night, model, t) : null;
let correcting = null; // { number, side } while an earlier round is being corrected
let clock = null; // the shot clock, where one is at stake
let spoken = localStorage.getItem("boardside.spoken") === "yes";

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
  const chips = $("setup");
  const side = setupSide();
  const way = model.way(side);
  const names = (side === "b" ? [way.bag] : model.sets).map((id) => model.bagName(id)).filter((name) => name !== "");
  const parts = [
    model.contest?.alone ? t(`side.${side}`) : null,
    names.length > 0 ? names.join(", ") : t("run.set.unnamed"),
    way.face ? t(`face.${way.face}`) : null,
    way.approach ? t(`approach.${way.approach}`) : null,
    s.board === "narrow" ? t("board.narrow") : null,
    s.conditions ? t(`conditions.${s.conditions}`) : null,
    s.setting === "practice" ? null : t(`setting.${s.setting}`),
  ].filter((part) => part !== null);
  const tell = openScore
    ? el("button", { type: "button", id: "tell-score", click: openScore, "aria-haspopup": "dialog" }, t("run.score.tell")) : null;
  chips.replaceChildren(...[tell].concat(parts.map((part) => el("button", { type: "button", click: openSetup, "aria-haspopup": "dialog" }, part)))
    .filter((chip) => chip !== null));
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
  } else if (model.over()) {
    entry.replaceChildren(done());
  } else if (model.bySets) {
    entry.replaceChildren(setsEntry());
  } else if (model.mixed) {
    entry.replaceChildren(mixedEntry(model, { record }));
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
  if (model.contest) {
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
    el("a", { class: "button main", id: "summary", href: `/runs/${encodeURIComponent(model.run.id)}/summary` }, t("run.done.summary")));
}

function drawSent() {
  night?.settled();
  const waiting = outbox.pending().length;
  const refused = outbox.refused();
  const mark = $("sent");
  mark.dataset.state = refused.length > 0 ? "refused" : waiting > 0 ? "waiting" : "sent";
  mark.textContent = refused.length > 0 ? t("run.refused", refused.length)
    : waiting > 0 ? outbox.problem || t("run.waiting", waiting) : t("run.sent");
  const list = $("refused");
  list.hidden = refused.length === 0;
  $("refused-list").replaceChildren(...refused.map((r) => el("li", {}, r.message)));
  const link = $("summary");
  if (link) link.toggleAttribute("data-waiting", waiting > 0);
}

// Changing

function record(change) {
  try {
    change();
  } catch (failure) {
    $("problem").textContent = t("run.device.full");
    $("problem").hidden = false;
    throw failure;
  }
  changed(true);
}

function changed(speak) {
  draw();
  clock?.recorded(model);
  if (!speak || !spoken) return;
  const next = model.mixed && !model.over() ? calledName(model) : "";
  if (model.throws.length === 0) say([spokenScore(), next].filter((part) => part !== "").join(". "));
  else if (model.mixed) say(next);
}

function spokenScore() {
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

$("undo").addEventListener("click", () => {
  correcting = null;
  model.undo();
  clock?.recorded(model);
  draw();
});
$("mode").addEventListener("click", () => {
  if (model.throws.length > 0) model.putThrows();
  model.changeSetup({ bagByBag: !model.setup.bagByBag });
  draw();
});
$("more").addEventListener("click", () => $("more-sheet").showModal());
$("finish").addEventListener("click", () => {
  model.finish();
  location.assign(`/runs/${encodeURIComponent(model.run.id)}/summary`);
});
$("forget").addEventListener("click", () => outbox.forgetRefused());

const voice = $("spoken");
voice.checked = spoken && speechReady();
voice.disabled = !speechReady();
voice.addEventListener("change", () => {
  spoken = voice.checked;
  localStorage.setItem("boardside.spoken", spoken ? "yes" : "no");
  if (spoken) say(t("run.spoken.on"));
});

// The sheet for what may change between rounds

const openScore = model.run.drill === "game" ? scoreSheet(model, { record }) : null;

function openSetup() {
  const form = $("setup-form");
  const s = { ...model.setup, ...model.way(setupSide()) };
  const many = model.bySets || model.mixed;
  $("setup-bags").replaceChildren(...(many ? [] : [{ id: "", name: t("run.set.unnamed") }]).concat(model.bags).map((b) => {
    const input = el("input", { type: many ? "checkbox" : "radio", name: "bag", value: b.id });
    input.checked = many ? s.bags.includes(b.id) : s.bag === b.id;
    return el("label", { class: "choice" }, input, el("span", {}, b.name));
  }));
  for (const name of ["face", "approach", "board", "conditions"]) {
    const input = form.querySelector(`input[name="${name}"][value="${s[name] ?? ""}"]`);
    if (input) input.checked = true;
  }
  $("new-bag").value = "";
  $("setup-sheet").showModal();
}

$("setup-form").addEventListener("submit", () => {
  const data = new FormData($("setup-form"));
  const chosen = data.getAll("bag").filter((id) => id !== "");
  const name = String(data.get("new-bag") || "").trim();
  if (name !== "") {
    const known = model.bags.find((b) => b.name === name);
    const id = known ? known.id : model.nameBag(name);
    if (model.bySets || model.mixed) chosen.push(id);
    else chosen.splice(0, chosen.length, id);
  }
  const way = { face: data.get("face") || null, approach: data.get("approach") || null };
  const changes = setupSide() === "b"
    ? { contest: { ...model.contest, other: { bag: chosen[0] ?? "", ...way } } }
    : { bags: [...new Set(chosen)], ...way };
  changes.conditions = data.get("conditions") || null;
  changes.board = data.get("board") || "regulation";
  if (Object.keys(changes).some((key) => JSON.stringify(changes[key]) !== JSON.stringify(model.setup[key]))) {
    model.taps = {};
    // Called bags of a round under way are kept: the round goes on anew with what is chosen now.
    if (model.mixed && model.throws.length > 0) model.putThrows();
    model.changeSetup(changes);
  }
  draw();
});
for (const button of document.querySelectorAll("[data-close]")) {
  button.addEventListener("click", () => button.closest("dialog").close());
}

// Keys, so that a pocket clicker works: see the help page
const KEYS = {
  1: "in", ArrowUp: "in", PageUp: "in", 2: "on", ArrowRight: "on", 3: "off", ArrowDown: "off", PageDown: "off",
};
document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || document.querySelector("dialog[open]")) return;
  if (event.key === "Backspace" || event.key === "u") {
    event.preventDefault();
    $("undo").click();
    return;
  }
  const key = KEYS[event.key];
  if (!key || !model.oneByOne || model.over() || correcting !== null) return;
  event.preventDefault();
  const counted = !model.mixed || !model.setup.onlyIn;
  if (counted || key !== "on") record(() => model.addThrow(counted || key === "in" ? key : "missed"));
});

// Keep the screen awake where the browser allows it (a secure context)
async function stayAwake() {
  if (!("wakeLock" in navigator)) return;
  try {
    await navigator.wakeLock.request("screen");
  } catch {
    // Low battery or the page is hidden; asked again when it shows.
  }
}
$("awake").textContent = t("wakeLock" in navigator ? "run.awake.yes" : "run.awake.no");
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") {
    stayAwake();
    outbox.flush();
  }
});
window.addEventListener("online", () => outbox.flush());
stayAwake();
draw();
const { stakes } = model.setup;
if (stakes?.shotClock) {
  clock = new ShotClock(stakes.shotClock, stakes.countDown);
  clock.recorded(model);
}
outbox.flush();
