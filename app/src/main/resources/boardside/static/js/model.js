// A run as the page knows it: what the server gave, with what this device has not yet sent on top. No drawing here.

import { isoNow, uuidv7 } from "./ids.js";
import { mineNext, points } from "./scoring.js";
import { againstGhost, contestOf, ghostIn, sidesOf, standingOf } from "./standing.js";
import { shuffled } from "./order.js";
import { opOf } from "./outbox.js";
import { TrialRun } from "./trial.js";

const RUN = "boardside.run.";
const MOST_UNDOS = 50;
const BAG_COUNTS = new Set(["volume", "casual"]);

// The server leaves out what is not said.
const NOTHING_SAID = {
  face: null, approach: null, conditions: null, rounds: null, ghost: null, target: null, fallBack: null, skunk: null,
  order: null, ghostPlay: null, contest: null, stakes: null,
};

const key = (number, side) => `${number} ${side}`;

function complete(round) {
  return { ...round, lines: round.lines.map((line) => ({ in: null, on: null, off: null, ...line })) };
}

export class RunModel {
  constructor(boot, outbox, storage = localStorage) {
    this.player = boot.player;
    this.bags = boot.bags;
    this.standing = boot.standing;
    this.trial = boot.trial ? new TrialRun(boot.trial) : null;
    this.outbox = outbox;
    this.storage = storage;
    this.begin(boot.run, boot.rounds);
  }

  /** Takes up a run, with the rounds the server gave; later another one, without loading a page. */
  begin(run, rounds) {
    this.run = run;
    this.setup = { ...NOTHING_SAID, ...run.setup };
    this.score = run.score ?? null;
    this.rounds = new Map(rounds.map((r) => [key(r.number, r.side), complete(r)]));
    this.finished = Boolean(run.finishedAt);
    for (const operation of this.outbox.known()) this.take(operation);
    this.forgetOtherRuns();
    const kept = JSON.parse(this.storage.getItem(this.key) || "{}");
    this.undos = kept.undos || [];
    // What an older page kept of a round half tapped says no side and no bags.
    this.throws = (kept.throws || []).map((thrown) => ({ side: "me", bag: this.sets[0], ...thrown }));
    this.taps = kept.taps || {};
    this.skipped = kept.skipped || [];
    this.chosen = null;
  }

  get key() {
    return RUN + this.run.id;
  }

  // The steps of other runs are not needed any more, unless a round was left half tapped.
  forgetOtherRuns() {
    const keys = Array.from({ length: this.storage.length }, (_, i) => this.storage.key(i));
    for (const key of keys.filter((k) => k.startsWith(RUN) && k !== this.key)) {
      const { throws = [], taps = {} } = JSON.parse(this.storage.getItem(key));
      if (throws.length === 0 && Object.keys(taps).length === 0) this.storage.removeItem(key);
    }
  }

  /** The two sides of a duel or a game, or null. */
  get contest() {
    return contestOf(this.run.drill, this.setup, this.all());
  }

  /** The sides whose bags are recorded, the first side first. */
  get sides() {
    return sidesOf(this.contest);
  }

  get isGame() {
    return againstGhost(this.run.drill) || this.contest !== null;
  }

  /** Bag sets are called bag by bag, in random order. */
  get mixed() {
    return BAG_COUNTS.has(this.run.drill) && this.setup.order === "mixed";
  }

  /** Rounds are counted set by set rather than as one of 15 finishes. */
  get bySets() {
    return BAG_COUNTS.has(this.run.drill) && !this.mixed;
  }

  /** Bags are recorded one at a time. */
  get oneByOne() {
    return this.mixed || (!this.bySets && (this.setup.bagByBag || Boolean(this.setup.stakes?.lastBag)));
  }

  /** Whether the next bag follows at once, with nothing to fetch first. */
  get goesOn() {
    return this.oneByOne && this.throws.length > 0;
  }

  /** Bags thrown before something is recorded. */
  get bagsAtOnce() {
    return this.oneByOne ? 1 : 4 * this.sides.length;
  }

  /** The bag sets in play; one without a name when none is chosen. */
  get sets() {
    return this.setup.bags.length > 0 ? this.setup.bags : [""];
  }

  bagName(id) {
    return this.bags.find((bag) => bag.id === id)?.name || "";
  }

  /** All rounds with bags, of all sides. */
  all() {
    return [...this.rounds.values()].filter((r) => r.lines.length > 0);
  }

  /** Rounds of a side with bags, by number. */
  played(side = this.sides[0]) {
    return this.all().filter((r) => r.side === side).sort((a, b) => a.number - b.number);
  }

  /** One side's round, if it has bags. */
  round(number, side = this.sides[0]) {
    const round = this.rounds.get(key(number, side));
    return round && round.lines.length > 0 ? round : undefined;
  }

  /** Numbers of the rounds that have bags. */
  numbers() {
    return [...new Set(this.all().filter((r) => this.sides.includes(r.side)).map((r) => r.number))].sort((a, b) => a - b);
  }

  /** The round and side to record next; a side left out on purpose is not asked for. */
  turn() {
    const sides = this.sides;
    const last = this.numbers().pop() ?? 0;
    const missing = last === 0 ? [] : sides.filter((side) => !this.round(last, side) && !this.isSkipped(last, side));
    const number = missing.length > 0 ? last : last + 1;
    const open = missing.length > 0 ? missing : sides;
    return { number, side: open.includes(this.chosen) ? this.chosen : open[0] };
  }

  nextNumber() {
    return this.turn().number;
  }

  isSkipped(number, side) {
    return side === "versus" && this.skipped.includes(number);
  }

  /** Goes on without the other side's bags of the round under way. */
  skipTheirs() {
    this.remember({ kind: "skip", skipped: this.skipped });
    this.skipped = [...this.skipped, this.turn().number];
    this.chosen = null;
    this.keep();
  }

  /** Records this side of the round under way first. */
  choose(side) {
    this.chosen = side;
  }

  /** Sums over the rounds played; points are null where only the bags in were counted. */
  sums() {
    const sum = { rounds: 0, thrown: 0, in: 0, points: 0 };
    for (const round of this.played()) {
      sum.rounds++;
      for (const line of round.lines) {
        sum.thrown += line.thrown;
        sum.in += line.in ?? 0;
        sum.points = sum.points === null || line.on === null ? null : sum.points + points(line);
      }
    }
    return sum;
  }

  /** How the game stands, see standing.js. */
  standingNow() {
    return this.standingAfter(this.all());
  }

  standingAfter(rounds) {
    return standingOf(this.run.drill, this.setup, this.score, rounds);
  }

  /** Whether no further round can be thrown: the game is over, a sudden death was died, or the planned rounds are thrown. */
  over() {
    if (this.trial) return this.trial.state(this.played()).ending !== "under-way";
    const { result, end } = this.standingNow();
    if (result !== "open" || end > 0) return true;
    const { rounds } = this.setup;
    if (rounds === null || againstGhost(this.run.drill)) return false;
    const { number } = this.turn();
    return this.numbers().filter((n) => n < number).length >= rounds;
  }

  /** How a side throws: { bag, face, approach }. */
  way(side) {
    if (this.trial) {
      const { bag, face, approach } = this.trial.way(this.nextCandidate().candidate);
      return { bag, face, approach };
    }
    if (side === "versus") return { bag: "", face: null, approach: null };
    if (side === "b") return { face: null, approach: null, bag: "", ...this.contest?.other };
    return { bag: this.sets[0], face: this.setup.face, approach: this.setup.approach };
  }

  /** In a trial, whom to throw next: see trial.js. */
  nextCandidate() {
    return this.trial.next(this.played(), this.nextNumber());
  }

  line(way, counts, number) {
    const s = this.setup;
    return {
      bag: way.bag, face: way.face ?? null, approach: way.approach ?? null,
      board: s.board, setting: s.setting, conditions: s.conditions,
      ghost: againstGhost(this.run.drill) ? ghostIn(s, number) : null,
      thrown: counts.thrown ?? counts.in + counts.on + counts.off,
      in: counts.in ?? null, on: counts.on ?? null, off: counts.off ?? null,
      misses: counts.misses || {}, at: isoNow(), note: "",
    };
  }

  /** Stores the finish of the round and side whose turn it is. */
  putFinish(finish) {
    const { number, side } = this.turn();
    this.chosen = null;
    this.putRound(number, [this.line(this.way(side), finish, number)], [], side);
  }

  /** Stores a round of this device; without lines, takes it back. */
  putRound(number, lines, thrown = [], side = this.sides[0]) {
    this.remember({ kind: "rounds", rounds: [this.asItIs(number, side)] });
    this.write(number, lines, thrown, side);
    this.settle();
  }

  /** Sets the bags of a round that was stored before, or was left out; how it was thrown stays as it was. */
  correct(number, index, counts, side = this.sides[0]) {
    const before = this.round(number, side);
    const lines = !before ? [this.line(this.way(side), counts, number)] : before.lines.map((line, i) => i === index
      ? { ...line, thrown: counts.thrown ?? counts.in + counts.on + counts.off, in: counts.in ?? null,
          on: counts.on ?? null, off: counts.off ?? null, misses: {} }
      : line);
    const later = this.afterTheEnd(number, side, lines);
    const corrected = [{ number, side }, ...later];
    this.remember({ kind: "rounds", rounds: corrected.map((r) => this.asItIs(r.number, r.side)) });
    for (const r of later.reverse()) this.write(r.number, [], [], r.side);
    this.write(number, lines, [], side);
    this.settle();
  }

  /** The rounds that would follow the game's end if this round had ended so. */
  afterTheEnd(number, side, lines) {
    const rounds = this.all().filter((r) => r.number !== number || r.side !== side).concat({ number, side, lines });
    const { end } = this.standingAfter(rounds);
    return end === 0 ? [] : this.all().filter((r) => r.number > end).sort((a, b) => a.number - b.number);
  }

  asItIs(number, side) {
    const round = this.rounds.get(key(number, side));
    return { number, side, lines: round?.lines || [], thrown: round?.thrown || [] };
  }

  changeSetup(changes) {
    this.remember({ kind: "setup", setup: this.setup });
    this.writeSetup({ ...this.setup, ...changes });
    this.settle();
  }

  /** Takes the last step back; false when there is none. A bag of the round under way goes first. */
  undo() {
    if (this.throws.length > 0) {
      this.throws.pop();
      this.keep();
      return true;
    }
    if (Object.keys(this.taps).length > 0) {
      this.taps = {};
      this.keep();
      return true;
    }
    const step = this.undos.pop() || this.lastRoundAsStep();
    if (!step) return false;
    this.chosen = null;
    if (step.kind === "rounds") step.rounds.forEach((r) => this.write(r.number, r.lines, r.thrown, r.side));
    if (step.kind === "setup") this.writeSetup(step.setup);
    if (step.kind === "score") this.writeScore(step.score);
    if (step.kind === "skip") this.skipped = step.skipped;
    // A round that was tapped bag by bag comes back but for its last bag.
    if (step.throws) this.throws = step.throws.slice(0, -1);
    this.settle();
    return true;
  }

  canUndo() {
    return this.throws.length > 0 || Object.keys(this.taps).length > 0 || this.undos.length > 0
      || this.numbers().length > 0;
  }

  // On a device that did not record the run, undo takes the last round back.
  lastRoundAsStep() {
    const last = this.numbers().pop();
    return last === undefined ? null : {
      kind: "rounds", rounds: this.sides.filter((side) => this.round(last, side)).map((side) => ({ number: last, side, lines: [], thrown: [] })),
    };
  }

  /** Keeps a game's final score as the player tells it, { mine, theirs }; null takes it back. */
  tellScore(score) {
    this.remember({ kind: "score", score: this.score });
    this.writeScore(score);
    this.settle();
  }

  nameBag(name) {
    const id = uuidv7();
    this.outbox.add(this.player, { type: "bag", op: uuidv7(), bag: id, name });
    this.bags = [...this.bags, { id, name }];
    return id;
  }

  /** Closes the run, with the bags of a round under way. */
  finish() {
    if (this.throws.length > 0) this.putThrows();
    if (this.finished) return;
    this.finished = true;
    this.outbox.add(this.player, { type: "finish", op: uuidv7(), run: this.run.id, at: isoNow() });
    this.keep();
  }

  // Bag by bag

  /** Bags of a round, of all sides together. */
  get bagsARound() {
    return this.mixed ? this.sets.length * this.setup.bagsPerSet : 4 * this.sides.length;
  }

  /** Whose bag is next, how it is thrown, and whether it must go in: { side, bag, face, approach, must }. */
  nextThrow() {
    const thrown = this.throws.length;
    const two = this.sides.length === 2;
    const side = two && !mineNext(this.standingNow().game.meFirst, thrown) ? this.sides[1] : this.sides[0];
    const way = this.way(side);
    if (this.mixed) way.bag = this.order()[thrown] ?? "";
    const last = thrown >= this.bagsARound - this.sides.length;
    return { ...way, side, must: last && Boolean(this.setup.stakes?.lastBag) };
  }

  /** The bag sets of the round under way in the order they are called: by chance, the same on every device. */
  order() {
    const bags = this.sets.flatMap((bag) => Array(this.setup.bagsPerSet).fill(bag));
    return shuffled(bags, `${this.run.id} ${this.nextNumber()}`);
  }

  addThrow(outcome) {
    const { side, bag, face, approach } = this.nextThrow();
    this.throws.push({ side, bag, face, approach, outcome, miss: "" });
    this.keep();
    if (this.throws.length >= this.bagsARound) this.putThrows();
  }

  /** Turns the outcome of a bag of the round under way into the next one. */
  turnThrow(index) {
    const outcomes = ["in", "on", "off"];
    const thrown = this.throws[index];
    thrown.outcome = outcomes[(outcomes.indexOf(thrown.outcome) + 1) % outcomes.length];
    thrown.miss = "";
    this.keep();
  }

  setMiss(miss) {
    const last = this.throws[this.throws.length - 1];
    last.miss = last.miss === miss ? "" : miss;
    this.keep();
  }

  /** A bag thrown earlier in this round was pushed in: the latest one on the board, else the latest one off. */
  earlierWentIn() {
    const candidates = this.throws.slice(0, -1).filter((t) => t.outcome !== "in");
    const bag = candidates.filter((t) => t.outcome === "on").pop() || candidates.pop();
    if (!bag) return false;
    bag.outcome = "in";
    bag.miss = "";
    this.keep();
    return true;
  }

  /** Stores the bags of the round under way, each side's as a round of its own. */
  putThrows() {
    const { number } = this.turn();
    const throws = this.throws;
    const sides = this.sides.filter((side) => throws.some((t) => t.side === side));
    this.remember({ kind: "rounds", rounds: sides.map((side) => this.asItIs(number, side)), throws });
    this.throws = [];
    for (const side of sides) {
      const own = throws.filter((t) => t.side === side);
      // What was only counted as in or not in is no throw with an outcome of its own.
      const thrown = own.some((t) => t.outcome === "missed") ? [] : own.map((t) => ({
        bag: t.bag, face: t.face ?? null, outcome: t.outcome, miss: t.miss, shot: "", aim: null, land: null, rest: null,
      }));
      this.write(number, this.linesOf(own, number), this.setup.onlyIn && this.mixed ? [] : thrown, side);
    }
    this.settle();
  }

  linesOf(throws, number) {
    const groups = new Map();
    for (const t of throws) {
      const group = key(t.bag, t.face ?? "");
      groups.set(group, [...(groups.get(group) ?? []), t]);
    }
    return [...groups.values()].map((own) => {
      const count = (what) => own.filter((t) => t.outcome === what).length;
      const missed = (where) => own.filter((t) => t.miss === where).length;
      const misses = own.some((t) => t.miss !== "")
        ? { left: missed("left"), right: missed("right"), shortOf: missed("short"), past: missed("long") }
        : {};
      const counts = this.mixed && this.setup.onlyIn ? { thrown: own.length, in: count("in") }
        : { in: count("in"), on: count("on"), off: count("off"), misses };
      return this.line(own[own.length - 1], counts, number);
    });
  }

  // Set by set

  /** One tap for one bag set; the round is stored when every set in play has one. */
  tapSet(bag, counts) {
    this.taps[bag] = counts;
    this.keep();
    if (this.sets.every((set) => this.taps[set])) {
      const number = this.nextNumber();
      const lines = this.sets.map((set) => this.line({ ...this.way("me"), bag: set }, this.taps[set], number));
      this.taps = {};
      this.putRound(number, lines);
    }
  }

  // What all changes share

  remember(step) {
    this.undos.push(step);
    this.undos = this.undos.slice(-MOST_UNDOS);
  }

  write(number, lines, thrown, side = "me") {
    const before = this.rounds.get(key(number, side));
    const round = { number, side, op: uuidv7(before?.op || ""), lines, thrown };
    this.rounds.set(key(number, side), round);
    this.outbox.add(this.player, { type: "round", run: this.run.id, round });
  }

  writeSetup(setup) {
    this.setup = setup;
    this.outbox.add(this.player, { type: "setup", op: uuidv7(), run: this.run.id, setup });
  }

  writeScore(score) {
    this.score = score;
    this.outbox.add(this.player, { type: "score", op: uuidv7(), run: this.run.id, score });
  }

  // Closes the run with its last round, opens it again when that is taken back.
  settle() {
    if (this.over() && !this.finished) {
      this.finish();
    } else if (!this.over() && this.finished) {
      this.finished = false;
      this.outbox.add(this.player, { type: "reopen", op: uuidv7(), run: this.run.id });
    }
    this.keep();
  }

  keep() {
    this.storage.setItem(this.key, JSON.stringify({
      undos: this.undos, throws: this.throws, taps: this.taps, skipped: this.skipped,
    }));
  }

  /** Puts an operation that the server may not have seen on top of what it gave. */
  take(operation) {
    if (operation.type === "bag") {
      if (!this.bags.some((bag) => bag.id === operation.bag)) {
        this.bags = [...this.bags, { id: operation.bag, name: operation.name }];
      }
      return;
    }
    if (operation.run !== this.run.id) return;
    switch (operation.type) {
      case "round": {
        const { number, side } = operation.round;
        const known = this.rounds.get(key(number, side));
        if (!known || known.op < opOf(operation)) this.rounds.set(key(number, side), operation.round);
        break;
      }
      case "setup": this.setup = operation.setup; break;
      case "score": this.score = operation.score ?? null; break;
      case "finish": this.finished = true; break;
      case "reopen": this.finished = false; break;
      default: break;
    }
  }
}
