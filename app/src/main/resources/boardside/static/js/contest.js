// Duels and real games at the boards: whose bag is next, both sides' finishes, the score, and a final score as told.

import { $, bag, el, outcomeButton, picker, t } from "./dom.js";
import { roundPoints } from "./standing.js";

/** What a side is called. */
export function sideName(model, side) {
  if (side === "versus") return model.run.opponent || t("side.versus");
  return t(`side.${side}`);
}

/** A side with how it throws, in a few words. */
function sideWays(model, side) {
  const way = model.way(side);
  const parts = side === "versus" ? [] : [model.bagName(way.bag), way.face ? t(`face.${way.face}`) : "", way.approach ? t(`approach.${way.approach}`) : ""];
  return parts.filter((part) => part !== "").join(", ");
}

/** The score, or that it is not known. */
export function contestScore(model) {
  const { game, known, result } = model.standingNow();
  if (model.score && result !== "open" && game.result === "open") return `${model.score.mine}\u2013${model.score.theirs}`;
  return known ? `${game.mine}\u2013${game.theirs}` : "?";
}

/** Which round, and who throws first in it. */
export function contestWhere(model) {
  const { game, known } = model.standingNow();
  const { number } = model.turn();
  if (model.contest.doubles) return t("run.where.doubles", number);
  if (!known || model.sides.length < 2) return t("run.where.open", number);
  return t("run.where.first", number, sideName(model, game.meFirst ? model.sides[0] : model.sides[1]));
}

/** Who plays whom. */
export function contestAgainst(model) {
  const other = model.contest.alone ? "b" : "versus";
  const names = t("run.contest.names", sideName(model, model.sides[0]), sideName(model, other));
  const lead = model.contest.headStart;
  if (lead === 0) return names;
  return `${names} \u00b7 ${t("run.contest.lead", sideName(model, lead > 0 ? model.sides[0] : other), Math.abs(lead))}`;
}

/** What is needed, or why there is no score. */
export function contestNeeded(model) {
  const { game, known, result } = model.standingNow();
  if (result !== "open") return "";
  if (model.contest.doubles) return t("run.contest.doubles", netOf(model));
  if (!known || model.sides.length < 2) return t("run.contest.unknown");
  const other = model.contest.alone ? "b" : "versus";
  const left = (points) => Math.max(0, (model.setup.target || 21) - points);
  return t("run.needed.contest", sideName(model, model.sides[0]), left(game.mine), sideName(model, other), left(game.theirs));
}

// My points less theirs over the rounds of which both are known, with its sign.
function netOf(model) {
  let net = 0;
  for (const mine of model.played("me")) {
    const theirs = model.round(mine.number, "versus");
    if (theirs) net += Math.max(-12, roundPoints(mine) - roundPoints(theirs));
  }
  return net > 0 ? `+${net}` : String(net).replace("-", "\u2212");
}

/** A round in the list of rounds: both sides' points. */
export function contestRound(model, number) {
  return model.sides.map((side) => {
    const round = model.round(number, side);
    return round ? String(roundPoints(round)) : "\u2013";
  }).join(":");
}

// One tab a side; the pressed one is the side that the next tap records.
function tabs(model, now, number, choose, extra) {
  const { game, known } = model.standingNow();
  const first = known && model.sides.length === 2 ? model.sides[game.meFirst ? 0 : 1] : null;
  return el("div", { class: "sides", role: "group", "aria-label": t("run.contest.sides") }, ...model.sides.map((side) => {
    const round = model.round(number, side);
    const ways = sideWays(model, side);
    return el("button", {
      type: "button", "data-side": side, "aria-pressed": String(side === now), click: () => choose(side),
    }, el("b", {}, sideName(model, side)), round ? el("span", {}, t("run.contest.points", roundPoints(round)))
      : ways ? el("span", { class: "small" }, ways) : null,
    side === first && !round ? el("span", { class: "small first" }, t("run.contest.first")) : null);
  }), extra);
}

/** Entry of whole rounds: one tap a side. */
export function contestEntry(model, { record, redraw }) {
  const { number, side } = model.turn();
  const skip = side === "versus" ? el("button", {
    type: "button", id: "skip", click: () => record(() => model.skipTheirs()),
  }, t("run.contest.skip")) : null;
  return [
    model.sides.length > 1 ? tabs(model, side, number, (chosen) => { model.choose(chosen); redraw(); }, skip) : null,
    picker((finish) => record(() => model.putFinish(finish))),
  ].filter((part) => part !== null);
}

/** Entry bag by bag, the sides in turn. */
export function contestBags(model, { record }) {
  const next = model.nextThrow();
  const rows = model.sides.map((side) => {
    const row = el("div", { class: "slots", role: "group", "aria-label": sideName(model, side) },
      el("b", { class: "slots-name" }, sideName(model, side)));
    const own = model.throws.map((thrown, index) => ({ thrown, index })).filter(({ thrown }) => thrown.side === side);
    for (let i = 0; i < 4; i++) {
      const here = own[i];
      row.append(here ? el("button", {
        type: "button", class: "plain", "data-bag": `${side}-${i + 1}`,
        "aria-label": t("run.contest.turn", i + 1, t(`outcome.${here.thrown.outcome}`)),
        click: () => record(() => model.turnThrow(here.index)),
      }, bag(here.thrown.outcome)) : el("span", { class: side === next.side && i === own.length ? "empty next" : "empty" }));
    }
    return row;
  });
  const ways = sideWays(model, next.side);
  return el("div", { class: "one-by-one" }, ...rows,
    el("p", { class: "call", id: "call", "aria-live": "polite" }, el("b", {}, t("run.contest.next", sideName(model, next.side))),
      next.must ? el("b", {}, t("stakes.must")) : ways ? el("span", { class: "small" }, ways) : null),
    outcomeButton("in", "1 \u2191", () => record(() => model.addThrow("in"))),
    outcomeButton("on", "2 \u2192", () => record(() => model.addThrow("on"))),
    outcomeButton("off", "3 \u2193", () => record(() => model.addThrow("off"))));
}

/** Correcting one round: a tab a side, then its finish. */
export function contestCorrection(model, correcting, { set, redraw }) {
  const side = correcting.side ?? model.sides[0];
  const round = model.round(correcting.number, side);
  return [
    tabs(model, side, correcting.number, (chosen) => { correcting.side = chosen; redraw(); }, null),
    picker((finish) => set(0, finish, side), round ? round.lines[0] : null),
  ];
}

/** What the game came to. */
export function contestDone(model) {
  const { game, result } = model.standingNow();
  const other = model.contest.alone ? "b" : "versus";
  const winner = sideName(model, result === "won" ? model.sides[0] : other);
  if (result === "open") return t("run.done.contest.open", contestScore(model));
  const mine = model.score && game.result === "open" ? model.score : game;
  const [best, least] = result === "won" ? [mine.mine, mine.theirs] : [mine.theirs, mine.mine];
  if (best < least) return t("run.done.contest.sudden", winner);
  const me = !model.contest.alone && result === "won";
  return me ? t("run.done.contest.me", best, least) : t("run.done.contest", winner, best, least);
}

/** The sheet in which a game's final score is told. */
export function scoreSheet(model, { record }) {
  const sheet = $("score-sheet");
  $("score-form").addEventListener("submit", (event) => {
    const value = (id) => ($(id).value.trim() === "" ? null : Number($(id).value));
    const [mine, theirs] = [value("score-mine"), value("score-theirs")];
    const clear = mine === null && theirs === null;
    const sound = [mine, theirs].every((n) => Number.isInteger(n) && n >= 0 && n <= 999) && mine !== theirs;
    if (!clear && !sound) {
      event.preventDefault();
      $("score-fault").hidden = false;
      return;
    }
    record(() => {
      model.tellScore(clear ? null : { mine, theirs });
    });
  });
  return () => {
    const { game, known } = model.standingNow();
    $("score-fault").hidden = true;
    $("score-mine").value = model.score?.mine ?? (known ? game.mine : "");
    $("score-theirs").value = model.score?.theirs ?? (known ? game.theirs : "");
    sheet.showModal();
  };
}
