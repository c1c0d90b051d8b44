// A trial at the boards: who is thrown next, and how it stands after every block. Follows boardside.engine.trial.Procedure
// step by step, so that it goes on without network; ScriptsTest holds the two against each other.
//
// A unit is [candidate, in, on] of eight bags; runs are lists of units.

const ROUNDS = 2;
const BAGS = 8;
const POWER = 0.25;
const NINETY = 1.6448536269514722;

const points = ([, inside, on]) => 3 * inside + on;

function variance(inside, on) {
  const mean = 3 * inside + on;
  return 9 * inside + on - mean * mean;
}

/** What blocks say of some candidates: { points, deviation, blocks } with points a round of each, in their order. */
function look(trial, inPlay, blocks) {
  const a = inPlay.length;
  const n = blocks.length;
  const sums = Array(a).fill(0);
  let total = 0, squares = 0, blockSquares = 0, thrown = 0, inside = 0, on = 0;
  for (const block of blocks) {
    let sum = 0;
    for (const unit of block) {
      const place = inPlay.indexOf(unit[0]);
      if (place < 0) continue;
      const y = points(unit);
      sums[place] += y;
      squares += y * y;
      sum += y;
      thrown += BAGS;
      inside += unit[1];
      on += unit[2];
    }
    total += sum;
    blockSquares += sum * sum;
  }
  const candidateSquares = sums.reduce((all, sum) => all + sum * sum, 0);
  const residual = squares - blockSquares / a - candidateSquares / n + total * total / (a * n);
  const luck = BAGS * variance((inside + 0.5) / (thrown + 1.5), (on + 0.5) / (thrown + 1.5));
  const weight = trial.limits.luckWeight;
  const spread = (weight * luck + Math.max(0, residual)) / (weight + (n - 1) * (a - 1));
  return { points: sums.map((sum) => sum / (n * ROUNDS)), deviation: Math.sqrt(spread) / ROUNDS, blocks: n };
}

const error = (seen) => seen.deviation * Math.sqrt(2 / seen.blocks);
const best = (seen) => seen.points.reduce((top, p, c) => (p > seen.points[top] ? c : top), 0);
const worst = (seen) => seen.points.reduce((low, p, c) => (p <= seen.points[low] ? c : low), 0);
const apart = (seen) => seen.points[best(seen)] - seen.points[worst(seen)];
const shape = (trial, blocks) => Math.pow(blocks / trial.longest, -POWER);

/** How a trial stands: { ending, inPlay, blocks, rest, dropped, lead, needed }; see the engine's TrialState. */
export function stateOf(trial, runs) {
  const inPlay = Array.from({ length: trial.candidates.length }, (_, c) => c);
  const last = new Map();
  let number = 0;
  for (const run of runs) for (const [candidate] of run) last.set(candidate, number++);
  const blocks = [];
  const dropped = [];
  let block = [];
  let ending = "under-way";
  const winner = (count) => trial.limits.winner[count - 2];

  const complete = () => {
    blocks.push(block);
    block = [];
    const n = blocks.length;
    let seen = look(trial, inPlay, blocks);
    while (apart(seen) / error(seen) >= winner(inPlay.length) * shape(trial, n)) {
      const [gone] = inPlay.splice(worst(seen), 1);
      dropped.push({ candidate: gone, after: n });
      if (inPlay.length === 1) {
        ending = "winner";
        return;
      }
      seen = look(trial, inPlay, blocks);
    }
    if (apart(seen) + trial.limits.equal * shape(trial, n) * error(seen) <= trial.margin) ending = "as-good-as-equal";
    else if (n >= trial.longest) ending = "not-settled";
  };

  // A candidate comes again before all were thrown: those that never come again had dropped out before.
  const repeated = (at) => {
    const missing = inPlay.filter((candidate) => !block.some((unit) => unit[0] === candidate));
    const gone = missing.every((candidate) => (last.get(candidate) ?? -1) < at);
    if (!gone || block.length < 2 || blocks.length === 0) {
      block = [];
      return;
    }
    for (const candidate of missing) {
      dropped.push({ candidate, after: blocks.length });
      inPlay.splice(inPlay.indexOf(candidate), 1);
    }
    complete();
  };

  number = 0;
  for (const run of runs) {
    block = [];
    for (const unit of run) {
      const at = number++;
      const open = () => ending === "under-way" && inPlay.includes(unit[0]);
      if (!open()) continue;
      if (block.some((other) => other[0] === unit[0])) repeated(at);
      if (!open()) continue;
      block = [...block, unit];
      if (inPlay.every((candidate) => block.some((other) => other[0] === candidate))) complete();
    }
  }
  return { ending, inPlay, blocks: blocks.length, rest: block.map((unit) => unit[0]), dropped, ...lead(trial, inPlay, dropped, blocks) };
}

// The first two with how far they are apart, and how far the last must be behind to drop out.
function lead(trial, inPlay, dropped, blocks) {
  if (blocks.length === 0) return { first: inPlay[0], second: inPlay[1], lead: null, needed: 0 };
  let order = [...inPlay];
  let needed = 0;
  if (inPlay.length > 1) {
    const seen = look(trial, inPlay, blocks);
    order = [...inPlay].sort((a, b) => seen.points[inPlay.indexOf(b)] - seen.points[inPlay.indexOf(a)]);
    needed = trial.limits.winner[inPlay.length - 2] * shape(trial, blocks.length) * error(seen);
  }
  order.push(...dropped.map((drop) => drop.candidate).reverse());
  const [first, second] = order;
  const gone = dropped.find((drop) => drop.candidate === second);
  const compared = gone ? [...inPlay, second] : inPlay;
  const seen = look(trial, compared, gone ? blocks.slice(0, gone.after) : blocks);
  const measured = seen.points[compared.indexOf(first)] - seen.points[compared.indexOf(second)];
  const before = trial.limits.usualDifference ** 2;
  const weight = Math.max(before / (before + error(seen) ** 2), 1 - trial.limits.mostPull * error(seen) / Math.abs(measured));
  const half = NINETY * Math.sqrt(weight) * error(seen);
  return { first, second, lead: { estimate: weight * measured, low: weight * measured - half, high: weight * measured + half }, needed };
}

/** The candidate that a round was thrown with, -1 where it was none. */
function candidateOf(trial, { lines }) {
  const [line] = lines;
  if (lines.length !== 1 || line.thrown !== 4 || line.on === null || line.on === undefined) return -1;
  return trial.candidates.findIndex((c) => c.bag === line.bag && (c.face ?? null) === (line.face ?? null)
    && (c.approach ?? null) === (line.approach ?? null));
}

/** The units of a run's rounds, in parts where there was a longer break. */
export function partsOf(trial, rounds) {
  const parts = [];
  let part = [];
  let last = "";
  let before = 0;
  const longBreak = (from, to) => from !== "" && to !== "" && Date.parse(to) - Date.parse(from) > trial.breakMillis;
  for (let i = 0; i + 1 < rounds.length; i++) {
    const [first, second] = [rounds[i], rounds[i + 1]];
    if (first.number % 2 === 0 || second.number !== first.number + 1) continue;
    const at = (round) => round.lines[0].at ?? "";
    const candidate = candidateOf(trial, first);
    const unit = candidate >= 0 && candidate === candidateOf(trial, second);
    if (!unit || first.number !== before + 1 || longBreak(last, at(first)) || longBreak(at(first), at(second))) {
      parts.push(part);
      part = [];
    }
    if (unit) part.push([candidate, first.lines[0].in + second.lines[0].in, first.lines[0].on + second.lines[0].on]);
    last = at(second);
    before = second.number;
  }
  return [...parts, part].filter((units) => units.length > 0);
}

/** A run of a trial: how the trial stands with its rounds, and what is thrown next. */
export class TrialRun {
  /** `trial` as the server tells it, with the units thrown `before` this run. */
  constructor(trial) {
    this.trial = trial;
    this.known = "";
  }

  /** How the trial stands after some rounds of the run, in order. */
  state(rounds) {
    const known = JSON.stringify(rounds.map((round) => [round.number, round.lines]));
    if (known !== this.known) {
      this.known = known;
      this.now = stateOf(this.trial, [...this.trial.before, ...partsOf(this.trial, rounds)]);
    }
    return this.now;
  }

  /** What is thrown in round `number`: { candidate, round (1 or 2), block, left (rounds of the block from here on) }. */
  next(rounds, number) {
    const state = this.state(rounds);
    const block = state.blocks + 1;
    const left = ROUNDS * (state.inPlay.length - state.rest.length);
    const first = rounds.find((round) => round.number === number - 1);
    if (number % 2 === 0 && first && candidateOf(this.trial, first) >= 0) {
      return { candidate: candidateOf(this.trial, first), round: 2, block, left: left - 1 };
    }
    const order = (this.trial.order[state.inPlay.length] ?? [])[state.blocks] ?? [];
    const candidate = order.map((place) => state.inPlay[place]).find((one) => !state.rest.includes(one));
    return { candidate: candidate ?? state.inPlay[0], round: 1, block, left };
  }

  /** A candidate's way to throw: { bag, face, approach, name }. */
  way(candidate) {
    return { face: null, approach: null, ...this.trial.candidates[candidate] };
  }
}
