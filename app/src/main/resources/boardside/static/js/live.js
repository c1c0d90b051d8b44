// A match for spectators: both sides' rounds against each other, whenever each was thrown, kept up to date.

import { $, bags, el, t } from "./dom.js";
import { follow } from "./events.js";
import { SIDES, current, latest, pointsOf, sum, thrower, total, won } from "./matchview.js";

const SAID_EVERY = 6000;
const root = $("live");
let match = JSON.parse(root.dataset.state);
let saidAt = 0;
let toSay = null;
let last = key(latest(match));

function key(one) {
  return one === null ? "" : `${one.game.game} ${one.side} ${one.round.round} ${one.round.in}-${one.round.on}-${one.round.off}`;
}

function time(at) {
  return at ? new Date(at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" }) : "";
}

function mark(round) {
  const marks = [];
  if (round.way === "late") marks.push(t("live.late", time(round.at)));
  if (round.way === "typed") marks.push(t("live.typed"));
  if (round.edited) marks.push(t("live.edited"));
  return marks.length === 0 ? null : el("small", { class: "mark" }, marks.join(", "));
}

function cell(round, newest) {
  if (!round) return el("td", { class: "round" }, el("span", { class: "visually-hidden" }, t("live.open.round")));
  return el("td", { class: newest ? "round newest" : "round", title: time(round.at) || null },
    el("span", { class: "visually-hidden" }, t("live.finish", round.in, round.on, round.off)),
    el("b", { }, String(pointsOf(round))), bags(round), mark(round));
}

function gameView(game, newest) {
  const find = (side, number) => game[side].find((round) => round.round === number);
  const rows = Array.from({ length: match.roundsAGame }, (_, i) => i + 1).filter((n) => SIDES.some((side) => find(side, n)));
  const names = SIDES.map((side) => thrower(match, side));
  const head = el("h3", {}, t("live.game", game.game), " ", el("span", { class: "game-total" }, `${told(game, "first")}–${told(game, "second")}`));
  if (rows.length === 0) {
    return el("section", { class: "game" }, head, game.totals.every((one) => one === null) ? el("p", { class: "small quiet" }, t("live.nothing")) : null);
  }
  const body = rows.map((n) => {
    const both = SIDES.every((side) => find(side, n));
    return el("tr", {}, el("th", { scope: "row" }, String(n)),
      cell(find("first", n), newest === find("first", n)),
      el("td", { class: "score" }, both ? `${sum(game, "first", n)}–${sum(game, "second", n)}` : ""),
      cell(find("second", n), newest === find("second", n)));
  });
  return el("section", { class: "game" }, head, el("table", { class: "thrown" },
    el("caption", { class: "visually-hidden" }, t("live.game", game.game)),
    el("thead", {}, el("tr", {}, el("th", { scope: "col" }, el("span", { class: "visually-hidden" }, t("live.round"))),
      el("th", { scope: "col" }, names[0]), el("th", { scope: "col" }, el("span", { class: "visually-hidden" }, t("live.score"))),
      el("th", { scope: "col" }, names[1]))),
    el("tbody", {}, ...body)));
}

// A total that rounds do not add up to was told by somebody: both are shown.
function told(game, side) {
  const of = game.totals[SIDES.indexOf(side)];
  return of === null ? (game[side].length === 0 ? "?" : String(sum(game, side))) : String(of);
}

function edits() {
  if (match.edits.length === 0) return null;
  const who = (edit) => (edit.by === "organiser" ? t("live.organiser") : thrower(match, edit.by));
  const counts = (text) => (text === "" ? t("live.none") : text);
  return el("details", { id: "edits" }, el("summary", {}, t("live.edits", match.edits.length)),
    el("p", { class: "small quiet" }, t("live.edits.about")),
    el("ul", { class: "plain-list" }, ...match.edits.map((edit) => el("li", {}, t("live.edit",
      new Date(edit.at).toLocaleString([], { dateStyle: "short", timeStyle: "short" }), who(edit), edit.game, thrower(match, edit.side),
      edit.round, counts(edit.earlier), counts(edit.later))))));
}

function legend() {
  const all = match.games.flatMap((game) => SIDES.flatMap((side) => game[side]));
  const some = [["late", (r) => r.way === "late"], ["typed", (r) => r.way === "typed"], ["edited", (r) => r.edited]]
    .filter(([, has]) => all.some(has)).map(([name]) => t(`live.${name}.about`));
  return some.length === 0 ? null : el("p", { class: "small quiet", id: "marks" }, some.join(" "));
}

function draw() {
  const opened = $("edits")?.open ?? false;
  const game = current(match);
  const newest = latest(match)?.round;
  const games = won(match);
  root.replaceChildren(
    el("p", { class: "live-names" }, ...SIDES.map((side) => el("span", {}, thrower(match, side)))),
    el("p", { class: "live-now", id: "live-now" }, el("b", {}, String(total(game, "first"))), el("span", {}, t("live.game", game.game)),
      el("b", {}, String(total(game, "second")))),
    el("p", { class: "small quiet", id: "live-games" }, t("live.games", games[0], games[1]), "; ", t(`hosted.state.${match.state}`), "."),
    ...match.games.map((one) => gameView(one, newest)),
    ...[legend(), edits()].filter((part) => part !== null));
  const list = $("edits");
  if (list) list.open = opened;
}

// What is new is said once in a while, so that nobody is talked to all the time: the newest only.
function say() {
  const one = latest(match);
  if (key(one) === last || one === null) return;
  last = key(one);
  clearTimeout(toSay);
  toSay = setTimeout(() => {
    saidAt = Date.now();
    $("live-said").textContent = t("live.said", thrower(match, one.side), one.game.game, one.round.round, pointsOf(one.round),
      total(one.game, "first"), total(one.game, "second"));
  }, Math.max(0, saidAt + SAID_EVERY - Date.now()));
}

draw();
follow(root.dataset.events, (state) => {
  match = state;
  draw();
  say();
}, (away) => { $("live-lost").textContent = away ? t("live.lost") : ""; });
