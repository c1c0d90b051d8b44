// The page at the boards: draws the run and turns taps and keys into changes of the model.

import { Outbox } from "./outbox.js";
import { sender } from "./post.js";
import { RunModel, roundPoints } from "./model.js";
import { points, finishes } from "./scoring.js";
import { say, speechReady } from "./speech.js";

const root = document.getElementById("run");
const boot = JSON.parse(root.dataset.run);
const texts = JSON.parse(root.dataset.texts);
const $ = (id) => document.getElementById(id);

function t(key, ...args) {
  const text = texts[key];
  if (text === undefined) throw new Error(`no text ${key}`);
  return text.replace(/\{(\d)\}/g, (_, i) => args[i]);
}

const outbox = new Outbox(sender(boot.token, t("run.send.pair")), () => drawSent());
const model = new RunModel(boot, outbox);
let correcting = null; // { number, index } while an earlier round is being corrected
let spoken = localStorage.getItem("boardside.spoken") === "yes";

// Drawing

function el(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name === "click") node.addEventListener("click", value);
    else if (value !== null && value !== undefined && value !== false) node.setAttribute(name, value);
  }
  node.append(...children.filter((child) => child !== null));
  return node;
}

const SVG = "http://www.w3.org/2000/svg";

function bag(outcome) {
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("class", `bag bag-${outcome}`);
  svg.setAttribute("viewBox", "0 0 12 12");
  svg.setAttribute("aria-hidden", "true");
  const use = document.createElementNS(SVG, "use");
  use.setAttribute("href", `#shape-${outcome}`);
  svg.append(use);
  return svg;
}

function bags(counts) {
  const shapes = el("span", { class: "bags" });
  for (const outcome of ["in", "on", "off"]) {
    for (let i = 0; i < (counts[outcome] ?? 0); i++) shapes.append(bag(outcome));
  }
  return shapes;
}

function finishName(f) {
  return t("run.finish", f.in, f.on, f.off, points(f));
}

function one(number) {
  return Number.isInteger(number) ? String(number) : number.toFixed(1);
}

function draw() {
  drawScore();
  drawSetup();
  drawRounds();
  drawEntry();
  drawSent();
  $("undo").disabled = !model.canUndo();
}

function drawScore() {
  const sums = model.sums();
  if (model.isGame) {
    const game = model.game();
    $("score").textContent = `${game.mine}–${game.theirs}`;
    $("where").textContent = t("run.where.race", model.setup.ghost, Math.min(game.rounds + 1, 999));
    $("needed").textContent = neededInGame(game);
    return;
  }
  $("score").textContent = sums.points === null || model.bySets ? String(sums.in) : String(sums.points);
  const next = sums.rounds + 1;
  const planned = model.setup.rounds;
  $("where").textContent = planned === null ? t("run.where.open", next)
    : t("run.where.of", Math.min(next, planned), planned);
  if (model.bySets) $("needed").textContent = sums.thrown === 0 ? "" : t("run.bags.in", sums.in, sums.thrown);
  else $("needed").textContent = needed(sums);
  $("against").textContent = against();
}

// The best and the usual to measure against.
function against() {
  const { best, usual } = model.standing ?? {};
  if (!best) return "";
  return model.bySets ? t("run.against.bags", best.total, best.thrown) : t("run.against", best.total, one(usual));
}

function neededInGame(game) {
  if (game.result !== "open") return "";
  const target = model.rules.target;
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
  const names = model.sets.map((id) => model.bagName(id)).filter((name) => name !== "");
  const parts = [
    names.length > 0 ? names.join(", ") : t("run.set.unnamed"),
    s.face ? t(`face.${s.face}`) : null,
    s.approach ? t(`approach.${s.approach}`) : null,
    s.board === "narrow" ? t("board.narrow") : null,
    s.conditions ? t(`conditions.${s.conditions}`) : null,
    s.setting === "practice" ? null : t(`setting.${s.setting}`),
  ].filter((part) => part !== null);
  chips.replaceChildren(...parts.map((part) => el("button", { type: "button", click: openSetup, "aria-haspopup": "dialog" }, part)));
}

function drawRounds() {
  const list = $("rounds");
  list.replaceChildren(...model.played().map((round) => {
    const value = roundPoints(round);
    const inside = round.lines.reduce((sum, line) => sum + (line.in ?? 0), 0);
    const shown = value === null || model.bySets ? inside : value;
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
  for (const name of ["finish", "outcome", "count"]) {
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
  $("mode").hidden = model.bySets || model.over() || correcting !== null;
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
  } else if (model.setup.bagByBag) {
    entry.replaceChildren(oneByOneEntry());
  } else {
    entry.replaceChildren(picker((finish) => record(() => model.putRound(model.nextNumber(), [model.line(model.sets[0], finish)]))));
  }
}

// The 15 finishes: a row for each number in, a column for each number on.
function picker(choose, chosen = null) {
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

function oneByOneEntry() {
  const slots = el("p", { class: "slots", role: "img", "aria-label": t("run.bags.thrown", model.throws.length) });
  for (let i = 0; i < 4; i++) slots.append(i < model.throws.length ? bag(model.throws[i].outcome) : el("span", { class: "empty" }));
  const big = (outcome, key) => el("button", {
    type: "button", class: "outcome", "data-outcome": outcome, click: () => record(() => model.addThrow(outcome)),
  }, bag(outcome), t(`outcome.${outcome}`), el("kbd", {}, key));
  const last = model.throws[model.throws.length - 1];
  const missed = last && last.outcome !== "in";
  const misses = el("div", { class: "misses", role: "group", "aria-label": t("run.miss") },
    ...["left", "right", "short", "long"].map((where) => el("button", {
      type: "button", disabled: missed ? null : "", "aria-pressed": String(Boolean(missed) && last.miss === where),
      click: () => record(() => model.setMiss(where)),
    }, t(`miss.${where}`))));
  const earlier = model.throws.slice(0, -1).some((thrown) => thrown.outcome !== "in");
  return el("div", { class: "one-by-one" }, slots, big("in", "1 ↑"), big("on", "2 →"), big("off", "3 ↓"), misses,
    el("button", { type: "button", id: "earlier", disabled: earlier ? null : "", click: () => record(() => model.earlierWentIn()) },
      t("run.earlier")));
}

function counts(most, chosen, choose, label) {
  return el("div", { class: "counts", role: "group", "aria-label": label },
    ...Array.from({ length: most + 1 }, (_, n) => el("button", {
      type: "button", "aria-pressed": String(chosen === n), "data-count": String(n), "aria-label": t("run.count", n, most), click: () => choose(n),
    }, String(n))));
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
  const round = model.rounds.get(correcting.number);
  const stop = () => { correcting = null; draw(); };
  const set = (index, value) => {
    model.correct(correcting.number, index, value);
    correcting = null;
    changed(false);
  };
  const parts = [el("div", { class: "correcting-head" }, el("strong", {}, t("run.correcting", correcting.number)),
    el("button", { type: "button", class: "plain", click: stop }, t("run.correct.leave")))];
  round.lines.forEach((line, index) => {
    if (model.bySets) parts.push(el("h2", {}, model.bagName(line.bag) || t("run.set.unnamed")));
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
  if (model.isGame) {
    const game = model.game();
    said = t(game.result === "won" ? "run.done.won" : "run.done.lost", game.mine, game.theirs, game.rounds);
  } else if (model.bySets || sums.points === null) {
    said = t("run.bags.in", sums.in, sums.thrown);
  } else {
    said = t("run.done.total", sums.points, sums.rounds);
  }
  return el("div", { class: "done" }, el("p", { class: "pop", id: "done-said" }, said),
    el("a", { class: "button main", id: "summary", href: `/runs/${encodeURIComponent(model.run.id)}/summary` }, t("run.done.summary")));
}

function drawSent() {
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
  if (speak && spoken && model.throws.length === 0) say(spokenScore());
}

function spokenScore() {
  const played = model.played();
  if (played.length === 0) return "";
  const last = roundPoints(played[played.length - 1]);
  if (model.isGame) {
    const game = model.game();
    return t("run.spoken.race", last, game.mine, game.theirs);
  }
  const sums = model.sums();
  return sums.points === null || model.bySets ? t("run.bags.in", sums.in, sums.thrown) : t("run.spoken", last, sums.points);
}

$("undo").addEventListener("click", () => {
  correcting = null;
  model.undo();
  draw();
});
$("mode").addEventListener("click", () => {
  if (model.setup.bagByBag && model.throws.length > 0) model.putThrows();
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

function openSetup() {
  const form = $("setup-form");
  const s = model.setup;
  const many = model.bySets;
  $("setup-bags").replaceChildren(...(many ? [] : [{ id: "", name: t("run.set.unnamed") }]).concat(model.bags).map((b) => {
    const input = el("input", { type: many ? "checkbox" : "radio", name: "bag", value: b.id });
    input.checked = many ? s.bags.includes(b.id) : model.sets[0] === b.id;
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
    if (model.bySets) chosen.push(id);
    else chosen.splice(0, chosen.length, id);
  }
  const changes = { bags: [...new Set(chosen)] };
  for (const field of ["face", "approach", "conditions"]) changes[field] = data.get(field) || null;
  changes.board = data.get("board") || "regulation";
  if (Object.keys(changes).some((key) => JSON.stringify(changes[key]) !== JSON.stringify(model.setup[key]))) {
    model.taps = {};
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
  const outcome = KEYS[event.key];
  const oneByOne = model.setup.bagByBag && !model.bySets && !model.over() && correcting === null;
  if (outcome && oneByOne) {
    event.preventDefault();
    record(() => model.addThrow(outcome));
  }
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
outbox.flush();
