// A run begun on this device, without the server: chosen here, then recorded like any other. The outbox holds all of it
// until the server has it. Without the network this page also stands in for that of a run it began.

import { $, el, t } from "./dom.js";
import { isoNow, uuidv7 } from "./ids.js";
import { Outbox } from "./outbox.js";
import { sender } from "./post.js";

const TRIES = ["placement", "situation"]; // drills that are recorded try by try, by tries.js
const SESSION_GAP = 3 * 60 * 60 * 1000; // milliseconds; a longer pause begins a new session, as on the server

const root = $("run");
const boot = JSON.parse(root.dataset.run);
const outbox = new Outbox(sender(boot.token, t("run.send.pair")), () => {});
const asked = /^\/runs\/([^/]+)$/.exec(location.pathname)?.[1] ?? location.hash.slice(1);
const runs = outbox.known().filter(({ type, player }) => type === "run" && player === boot.player);
const begun = runs.find(({ run }) => run === decodeURIComponent(asked));

if (begun) record(begun);
else choose();

function choose() {
  atBoards(false);
  $("entry").replaceChildren(
    el("h2", {}, t(asked === "" ? "throw.choose" : "throw.elsewhere")),
    el("p", {}, t("throw.about")),
    el("div", { class: "tiles" }, ...boot.ready.map((one) => el("button", {
      type: "button", class: "tile", "data-drill": one.start.drill, click: () => begin(one),
    }, el("strong", {}, one.name), el("span", { class: "small quiet" }, one.says)))),
    el("p", {}, el("a", { class: "button", href: "/" }, t("run.leave"))));
}

function begin({ start }) {
  const { drill, warmUp, opponent, setup } = start;
  const operation = {
    type: "run", op: uuidv7(), run: uuidv7(), session: session(), drill, startedAt: isoNow(), warmUp, opponent,
    target: setup.target ?? null, game: null, setup,
  };
  try {
    outbox.keep(boot.player, operation);
  } catch {
    $("problem").textContent = t("run.device.full");
    $("problem").hidden = false;
    return;
  }
  history.replaceState(null, "", `/throw#${operation.run}`);
  record(operation);
}

/** Shows or hides what belongs to a run. */
function atBoards(shown) {
  for (const part of [".run-bar", ".score", "#needed", "#stakes", "#setup", "#rounds"]) document.querySelector(part).hidden = !shown;
}

/** The session under way, as far as this device knows, or a new one. */
function session() {
  const last = runs.map(({ session: id, startedAt }) => ({ id, startedAt })).concat(boot.last ? [boot.last] : [])
    .sort((a, b) => Date.parse(a.startedAt) - Date.parse(b.startedAt)).pop();
  return last && Date.now() - Date.parse(last.startedAt) < SESSION_GAP ? last.id : uuidv7();
}

function record({ run: id, session: of, drill, startedAt, warmUp, opponent, target, game, setup }) {
  const ready = boot.ready.find(({ start }) => start.drill === drill);
  const run = { id, session: of, drill, startedAt, warmUp, opponent, target, game, finishedAt: null, setup };
  const tries = TRIES.includes(drill);
  root.dataset.run = JSON.stringify({
    player: boot.player, token: boot.token, bags: boot.bags, run, begunHere: true,
    ...(tries ? { tries: [], rates: ready?.rates ?? {}, plan: null }
      : { rounds: [], ghost: ready?.ghost ?? "", standing: ready?.start.standing ?? null }),
  });
  if (tries) $("rounds").setAttribute("aria-label", t("try.list"));
  document.querySelector("h1").textContent = t(`drill.${drill}`);
  atBoards(true);
  import(tries ? "./tries.js" : "./run.js");
}
