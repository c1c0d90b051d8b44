// A run as the page knows it: what the server gave, with what this device has not yet sent on top. No drawing here.

import { isoNow, uuidv7 } from "./ids.js";
import { playAll, points } from "./scoring.js";
import { opOf } from "./outbox.js";

const RUN = "boardside.run.";
const MOST_UNDOS = 50;
const GAMES = new Set(["race", "climb"]);
const BAG_COUNTS = new Set(["volume", "casual"]);

// The server leaves out what is not said.
const NOTHING_SAID = { face: null, approach: null, conditions: null, rounds: null, ghost: null, target: null, fallBack: null, skunk: null };

function complete(round) {
  return { ...round, lines: round.lines.map((line) => ({ in: null, on: null, off: null, ...line })) };
}

export class RunModel {
  constructor(boot, outbox, storage = localStorage) {
    this.player = boot.player;
    this.run = boot.run;
    this.setup = { ...NOTHING_SAID, ...boot.run.setup };
    this.bags = boot.bags;
    this.standing = boot.standing;
    this.rounds = new Map(boot.rounds.filter((r) => r.side === "me").map((r) => [r.number, complete(r)]));
    this.finished = Boolean(boot.run.finishedAt);
    this.outbox = outbox;
    this.storage = storage;
    for (const operation of outbox.pending()) this.take(operation);
    this.forgetOtherRuns();
    const kept = JSON.parse(storage.getItem(this.key) || "{}");
    this.undos = kept.undos || [];
    this.throws = kept.throws || [];
    this.taps = kept.taps || {};
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

  get isGame() {
    return GAMES.has(this.run.drill);
  }

  /** Rounds are counted set by set rather than as one of 15 finishes. */
  get bySets() {
    return BAG_COUNTS.has(this.run.drill);
  }

  /** The bag sets in play; one without a name when none is chosen. */
  get sets() {
    return this.setup.bags.length > 0 ? this.setup.bags : [""];
  }

  get rules() {
    const target = this.setup.target || 21;
    return {
      target,
      exact: this.setup.exact,
      fallBack: this.setup.fallBack ?? Math.max(0, target - 6),
      skunk: this.setup.skunk || 0,
      firstThrow: "keep",
    };
  }

  bagName(id) {
    return this.bags.find((bag) => bag.id === id)?.name || "";
  }

  /** Rounds with bags, by number. */
  played() {
    return [...this.rounds.values()].filter((r) => r.lines.length > 0).sort((a, b) => a.number - b.number);
  }

  nextNumber() {
    const played = this.played();
    return played.length === 0 ? 1 : played[played.length - 1].number + 1;
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

  /** The game against the ghost so far. */
  game() {
    return this.gameAfter(this.played());
  }

  gameAfter(rounds) {
    return playAll(this.rules, rounds.map((r) => [roundPoints(r), r.lines[0].ghost ?? this.setup.ghost ?? 0]));
  }

  /** Whether no further round can be thrown: the game is over, or the planned rounds are. */
  over() {
    if (this.isGame) return this.game().result !== "open";
    return this.setup.rounds !== null && this.played().length >= this.setup.rounds;
  }

  line(bag, counts) {
    const s = this.setup;
    return {
      bag, face: s.face, approach: s.approach, board: s.board, setting: s.setting, conditions: s.conditions,
      ghost: this.isGame ? s.ghost : null,
      thrown: counts.thrown ?? counts.in + counts.on + counts.off,
      in: counts.in ?? null, on: counts.on ?? null, off: counts.off ?? null,
      misses: counts.misses || {}, at: isoNow(), note: "",
    };
  }

  /** Stores a round of this device; without lines, takes it back. */
  putRound(number, lines, thrown = []) {
    this.remember({ kind: "rounds", rounds: [this.asItIs(number)] });
    this.write(number, lines, thrown);
    this.settle();
  }

  /** Sets the bags of a round that was stored before; how it was thrown stays as it was. */
  correct(number, index, counts) {
    const before = this.rounds.get(number);
    const lines = before.lines.map((line, i) => i === index
      ? { ...line, thrown: counts.thrown ?? counts.in + counts.on + counts.off, in: counts.in ?? null,
          on: counts.on ?? null, off: counts.off ?? null, misses: {} }
      : line);
    const later = this.isGame ? this.playedAfterTheEnd(number, lines) : [];
    this.remember({ kind: "rounds", rounds: [number, ...later].map((n) => this.asItIs(n)) });
    for (const n of later.reverse()) this.write(n, [], []);
    this.write(number, lines, []);
    this.settle();
  }

  /** Numbers of the rounds that would follow the game's end if this round had ended so. */
  playedAfterTheEnd(number, lines) {
    const rounds = this.played().map((r) => (r.number === number ? { ...r, lines } : r));
    const end = rounds.findIndex((_, i) => this.gameAfter(rounds.slice(0, i + 1)).result !== "open");
    return end < 0 ? [] : rounds.slice(end + 1).map((r) => r.number);
  }

  asItIs(number) {
    const round = this.rounds.get(number);
    return { number, lines: round?.lines || [], thrown: round?.thrown || [] };
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
    if (step.kind === "rounds") step.rounds.forEach((r) => this.write(r.number, r.lines, r.thrown));
    if (step.kind === "setup") this.writeSetup(step.setup);
    this.settle();
    return true;
  }

  canUndo() {
    return this.throws.length > 0 || Object.keys(this.taps).length > 0 || this.undos.length > 0
      || this.played().length > 0;
  }

  // On a device that did not record the run, undo takes the last round back.
  lastRoundAsStep() {
    const played = this.played();
    return played.length === 0 ? null : {
      kind: "rounds", rounds: [{ number: played[played.length - 1].number, lines: [], thrown: [] }],
    };
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

  addThrow(outcome) {
    this.throws.push({ outcome, miss: "" });
    this.keep();
    if (this.throws.length === 4) this.putThrows();
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

  putThrows() {
    const count = (what) => this.throws.filter((t) => t.outcome === what).length;
    const missed = (where) => this.throws.filter((t) => t.miss === where).length;
    const bag = this.sets[0];
    const misses = this.throws.some((t) => t.miss !== "")
      ? { left: missed("left"), right: missed("right"), shortOf: missed("short"), past: missed("long") }
      : {};
    const line = this.line(bag, { in: count("in"), on: count("on"), off: count("off"), misses });
    const thrown = this.throws.map((t) => ({
      bag, face: this.setup.face, outcome: t.outcome, miss: t.miss, shot: "", aim: null, land: null, rest: null,
    }));
    this.throws = [];
    this.putRound(this.nextNumber(), [line], thrown);
  }

  // Set by set

  /** One tap for one bag set; the round is stored when every set in play has one. */
  tapSet(bag, counts) {
    this.taps[bag] = counts;
    this.keep();
    if (this.sets.every((set) => this.taps[set])) {
      const lines = this.sets.map((set) => this.line(set, this.taps[set]));
      this.taps = {};
      this.putRound(this.nextNumber(), lines);
    }
  }

  // What all changes share

  remember(step) {
    this.undos.push(step);
    this.undos = this.undos.slice(-MOST_UNDOS);
  }

  write(number, lines, thrown) {
    const before = this.rounds.get(number);
    const round = { number, side: "me", op: uuidv7(before?.op || ""), lines, thrown };
    this.rounds.set(number, round);
    this.outbox.add(this.player, { type: "round", run: this.run.id, round });
  }

  writeSetup(setup) {
    this.setup = setup;
    this.outbox.add(this.player, { type: "setup", op: uuidv7(), run: this.run.id, setup });
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
    this.storage.setItem(this.key, JSON.stringify({ undos: this.undos, throws: this.throws, taps: this.taps }));
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
        const known = this.rounds.get(operation.round.number);
        if (!known || known.op < opOf(operation)) this.rounds.set(operation.round.number, operation.round);
        break;
      }
      case "setup": this.setup = operation.setup; break;
      case "finish": this.finished = true; break;
      case "reopen": this.finished = false; break;
      default: break;
    }
  }
}

/** Points of one round before cancellation, or null where only the bags in were counted. */
export function roundPoints(round) {
  return round.lines.reduce((sum, line) => (sum === null || line.on === null ? null : sum + points(line)), 0);
}
