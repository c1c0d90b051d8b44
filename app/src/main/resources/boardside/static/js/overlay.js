// A match over a video: few words, large, on nothing.

import { $, bags, el, t } from "./dom.js";
import { follow } from "./events.js";
import { SIDES, current, latest, thrower, total, won } from "./matchview.js";

const root = $("overlay");

function draw(match) {
  const game = current(match);
  const newest = latest(match);
  const games = won(match);
  root.replaceChildren(...SIDES.map((side, i) => el("p", { class: `lay-side lay-${side}` },
    el("span", { class: "lay-name" }, thrower(match, side)),
    el("span", { class: "lay-games" }, String(games[i])),
    el("b", { class: "lay-points" }, String(total(game, side))),
    newest?.side === side ? bags(newest.round) : el("span", { class: "bags" }))),
  el("p", { class: "lay-where" }, newest === null ? t("live.game", game.game) : t("live.where", game.game, newest.round.round)));
}

draw(JSON.parse(root.dataset.state));
follow(root.dataset.events, draw);
