// How a run's game stands after its rounds: a mirror of boardside.app.record.Games. No state of its own.

import { play, points, start } from "./scoring.js";

const GHOSTS = new Set(["race", "climb"]);
const CONTESTS = new Set(["duel", "game"]);

/** Whether a drill is thrown against a ghost. */
export function againstGhost(drill) {
  return GHOSTS.has(drill);
}

/** Whether a drill has two sides that throw bags. */
export function hasTwoSides(drill) {
  return CONTESTS.has(drill);
}

/** The contest of a run: as set up, else as its rounds show. */
export function contestOf(drill, setup, rounds) {
  if (!hasTwoSides(drill)) return null;
  return setup.contest ?? {
    alone: rounds.some((r) => r.side === "a" || r.side === "b"),
    theirs: true, doubles: false, first: true, firstThrow: "keep", headStart: 0, other: null,
  };
}

/** The sides whose bags are recorded, the first side first. */
export function sidesOf(contest) {
  if (!contest) return ["me"];
  if (contest.alone) return ["a", "b"];
  return contest.theirs ? ["me", "versus"] : ["me"];
}

/** A ghost's points in a round. */
export function ghostIn(setup, number) {
  const play = setup.ghostPlay;
  return play ? play.points[(number - 1) % play.points.length] : setup.ghost ?? 0;
}

function rulesOf(setup, contest) {
  const target = setup.target || 21;
  return {
    target,
    exact: setup.exact,
    fallBack: setup.fallBack ?? (15 < target ? 15 : Math.max(0, target - 6)),
    skunk: setup.skunk || 0,
    firstThrow: contest?.firstThrow ?? "keep",
  };
}

/** Points of one round before cancellation, or null where only the bags in were counted. */
export function roundPoints(round) {
  return round.lines.reduce((sum, line) => (sum === null || line.on === null ? null : sum + points(line)), 0);
}

// Who loses by a round below what sudden death asks for; the first side's is looked at first.
function sudden(stakes, mine, mineToo) {
  const fewest = stakes?.suddenDeath ?? null;
  if (fewest === null) return "open";
  if (mine !== null && mine < fewest) return "lost";
  return mineToo !== null && mineToo < fewest ? "won" : "open";
}

/**
 * The standing after some rounds (of all sides, in any order): { game, known, result, end, beyond }. `known` says whether
 * the score is that of the game, `end` is the number of the round that ended the run, or 0, `beyond` that of the first
 * round after it, or 0.
 */
export function standingOf(drill, setup, score, rounds) {
  const contest = contestOf(drill, setup, rounds);
  const ghost = againstGhost(drill);
  const isGame = ghost || contest !== null;
  const first = contest?.alone ? "a" : "me";
  const other = contest?.alone ? "b" : "versus";
  const lead = contest?.headStart ?? 0;
  const numbers = [...new Set(rounds.map((r) => r.number))].sort((a, b) => a - b);
  let game = start(rulesOf(setup, contest), contest?.first ?? true, Math.max(0, lead), Math.max(0, -lead));
  let known = !contest?.doubles;
  let suddenly = "open";
  let end = 0;
  let beyond = 0;
  for (const number of numbers) {
    if (end > 0) {
      beyond = number;
      break;
    }
    const mine = rounds.find((r) => r.number === number && r.side === first);
    const theirs = rounds.find((r) => r.number === number && r.side === other);
    const points = mine ? roundPoints(mine) : null;
    const against = ghost ? mine?.lines[0].ghost ?? null : theirs ? roundPoints(theirs) : null;
    if (drill === "game" && against === null && number < numbers[numbers.length - 1]) known = false;
    if (isGame && known && points !== null && against !== null) game = play(game, points, against);
    suddenly = sudden(setup.stakes, points, contest?.alone ? against : null);
    if (game.result !== "open" || suddenly !== "open") end = number;
  }
  let result = game.result !== "open" ? game.result : isGame ? suddenly : "open";
  if (result === "open" && score) result = score.mine > score.theirs ? "won" : "lost";
  return { game, known, result, end, beyond };
}
