// A run of tries as the page knows it: what the server gave, with what this device has not yet sent on top. No drawing.

import { holds, textOf, widthOf } from "./board.js";
import { isoNow, uuidv7 } from "./ids.js";
import { standingOf } from "./trystanding.js";

const BAGS = 4; // of a bag set, before they are fetched
const KEPT = "boardside.tries.";
const MOST_UNDOS = 50;
const NOTHING_SAID = { face: null, approach: null, conditions: null, stakes: null };

export class TryModel {
  constructor(boot, outbox, storage = localStorage) {
    this.player = boot.player;
    this.run = boot.run;
    this.setup = { ...NOTHING_SAID, ...boot.run.setup };
    this.bags = boot.bags;
    this.rates = boot.rates;
    this.tries = new Map(boot.tries.map((one) => [one.number, one]));
    this.ops = new Map(boot.tries.map((one) => [one.number, one.op]));
    this.finished = Boolean(boot.run.finishedAt);
    this.outbox = outbox;
    this.storage = storage;
    for (const operation of outbox.known()) this.take(operation);
    this.forgetOtherRuns();
    const kept = JSON.parse(storage.getItem(this.key) || "{}");
    this.undos = kept.undos || [];
    // What the player called, whose turn it was made, and a chain begun anew: until something else is said.
    this.said = kept.said || {};
  }

  get key() {
    return KEPT + this.run.id;
  }

  // The steps of other runs are not needed any more, unless something was said for what comes next in one.
  forgetOtherRuns() {
    const keys = Array.from({ length: this.storage.length }, (_, i) => this.storage.key(i));
    for (const key of keys.filter((k) => k.startsWith(KEPT) && k !== this.key)) {
      const { said = {} } = JSON.parse(this.storage.getItem(key));
      if (Object.keys(said).length === 0) this.storage.removeItem(key);
    }
  }

  get exercise() {
    return { targets: [], shots: [], chain: false, call: "mine", situation: "", partner: "", ...this.setup.exercise };
  }

  get isPlacement() {
    return this.run.drill === "placement";
  }

  get chained() {
    return this.exercise.chain;
  }

  get width() {
    return widthOf(this.setup.board);
  }

  bagName(id) {
    return this.bags.find((bag) => bag.id === id)?.name || "";
  }

  /** Tries there are, in order. */
  played() {
    return [...this.tries.values()].filter((one) => one.played).sort((a, b) => a.number - b.number);
  }

  last() {
    const played = this.played();
    return played.length === 0 ? null : played[played.length - 1];
  }

  nextNumber() {
    return Math.max(0, ...this.tries.keys()) + 1;
  }

  /** How the tries stand, see trystanding.js. */
  standing() {
    return standingOf(this.setup, this.played());
  }

  /** Tries, or goes at the chain that are over, of a side, and how many worked. */
  sums(side = "me") {
    return this.standing().sums[side];
  }

  over() {
    const { until = null, tries = null } = this.exercise;
    const { sums, end } = this.standing();
    if (end > 0) return true;
    if (this.link()?.step > 1) return false; // a chain is played to its end, or begun anew
    const bothThrew = this.exercise.partner === "" || sums.versus.tries >= sums.me.tries;
    return bothThrew && ((until !== null && sums.me.worked >= until) || (tries !== null && sums.me.tries >= tries));
  }

  /** Whether the next try is the planned last one of its side, and must work. */
  mustWork() {
    const { tries = null } = this.exercise;
    return Boolean(this.setup.stakes?.lastBag) && tries !== null && this.sums(this.side()).tries === tries - 1;
  }

  /** Whether the next bag follows at once, with nothing to fetch or to lay first. */
  get goesOn() {
    if (this.played().length % BAGS === 0) return false;
    return this.called().position.bags.length === 0 || (this.link()?.step > 1 && !this.byHand());
  }

  /** Bags thrown before something is recorded. */
  get bagsAtOnce() {
    return 1;
  }

  // What comes next

  /** Whose turn it is: two who share a set-up take turns, try by try or go by go. */
  side() {
    if (this.exercise.partner === "") return "me";
    if (this.said.side) return this.said.side;
    const last = this.last();
    if (!last) return "me";
    const goOn = this.chained && this.link().step > 1;
    return goOn ? last.played.side : last.played.side === "me" ? "versus" : "me";
  }

  /** Where the next try stands in a chain; null without one. */
  link() {
    if (!this.chained) return null;
    const steps = this.exercise.shots.length;
    const last = this.last()?.played.chain;
    if (!last) return { go: 1, step: 1, steps };
    if (this.said.anew || last.step >= steps) return { go: last.go + 1, step: 1, steps };
    return { go: last.go, step: last.step + 1, steps };
  }

  /** The target or shot called for the next try: { shot, target, position }. */
  called() {
    const exercise = this.exercise;
    if (this.isPlacement) {
      const target = this.pick(exercise.targets, textOf);
      return { shot: target.depth === "back" ? "back-block" : "block", target, position: { bags: [] } };
    }
    if (this.chained) return exercise.shots[this.link().step - 1];
    return this.pick(exercise.shots, (step) => step.shot);
  }

  pick(things, nameOf) {
    const { call } = this.exercise;
    if (things.length === 1) return things[0];
    if (call === "mine") return things.find((thing) => nameOf(thing) === this.said.call) || things[0];
    // Both who take turns get the same call.
    const turn = this.exercise.partner === "" ? this.nextNumber() : Math.ceil(this.nextNumber() / 2);
    if (call === "order") return things[(turn - 1) % things.length];
    const weights = things.map((thing) => (call === "weakness" ? Math.max(0.05, 1 - (this.rates[nameOf(thing)] ?? 0.5)) ** 2 : 1));
    let left = chance(`${this.run.id}/${turn}`) * weights.reduce((a, b) => a + b, 0);
    return things.find((_, i) => (left -= weights[i]) < 0) || things[things.length - 1];
  }

  /** Whether the bags of the next try lie there by hand, unless something else is said. */
  byHand() {
    if (this.said.byHand !== undefined) return this.said.byHand;
    if (this.called().position.bags.length === 0) return false;
    const link = this.link();
    return link === null || link.step === 1 || !this.last().played.worked;
  }

  /** Says what holds for the next try, or for all until something else is said. */
  say(what) {
    this.said = { ...this.said, ...what };
    this.keep();
  }

  // Changing

  /** Leaves the chain under way; the next try is its first shot again. */
  startOver() {
    this.said = { ...this.said, anew: true };
    this.settle();
  }

  /** A bag thrown at the called target: where it rests, { x, y }, or "in", or off to a side. */
  place(rest) {
    this.add({ worked: this.hits(this.called().target, rest), rest: this.restOf(rest) });
  }

  hits(target, rest) {
    return typeof rest === "object" && holds(target, rest, this.width);
  }

  restOf(rest) {
    if (rest === "in") return { outcome: "in", miss: "", spot: null };
    return typeof rest === "string" ? { outcome: "off", miss: rest, spot: null } : { outcome: "on", miss: "", spot: rest };
  }

  /** A shot tried: whether it did what it was to do. */
  tryShot(worked) {
    this.add({ worked, rest: null });
  }

  add({ worked, rest }) {
    const { shot, target = null, position } = this.called();
    const s = this.setup;
    const number = this.nextNumber();
    this.remember([number]);
    this.write(number, {
      side: this.side(), shot, target, position, situation: this.exercise.situation, chain: this.link(),
      byHand: this.byHand(), worked, rest,
      how: {
        bag: s.bags[0] || "", face: s.face, approach: s.approach, board: s.board, setting: s.setting, conditions: s.conditions,
      },
      at: isoNow(),
    });
    // Whose turn it was and a chain begun anew were said for this try only; what was called stays called.
    const { side, anew, byHand, ...stays } = this.said;
    this.said = this.chained ? stays : { ...stays, ...(byHand === undefined ? {} : { byHand }) };
    this.settle();
  }

  /** Sets where the bag of a try ended; of a placement, that says whether it worked. */
  setRest(number, rest) {
    const { played } = this.tries.get(number);
    const worked = this.isPlacement ? this.hits(played.target, rest) : played.worked;
    this.change(number, { ...played, rest: this.restOf(rest), worked });
  }

  setWorked(number, worked) {
    this.change(number, { ...this.tries.get(number).played, worked });
  }

  takeBack(number) {
    this.change(number, null);
  }

  // A miss that ends the run takes back what was tried after it.
  change(number, played) {
    const changed = this.played().map((one) => (one.number === number ? { number, played } : one)).filter((one) => one.played);
    const { end } = standingOf(this.setup, changed);
    const later = end === 0 ? [] : changed.map((one) => one.number).filter((other) => other > end);
    this.remember([number, ...later]);
    for (const other of [...later].reverse()) this.write(other, null);
    this.write(number, played);
    this.settle();
  }

  /** The bags that lie on the board before the first shot. */
  start() {
    return this.exercise.shots[0]?.position.bags ?? [];
  }

  /** What lies on the board before a shot when it all begins with other bags: in a chain, what earlier shots put there stays. */
  moved(step, bags) {
    const first = this.start();
    const lies = (bag) => first.some((other) => other.x === bag.x && other.y === bag.y && other.side === bag.side);
    return [...bags, ...step.position.bags.filter((bag) => !lies(bag))];
  }

  /** Goes on with other bags on the board; a chain under way begins anew. */
  redraw(bags) {
    const shots = this.exercise.shots.map((step) => ({ ...step, position: { bags: this.moved(step, bags) } }));
    this.undos.push({ setup: this.setup, said: this.said });
    this.said = { ...this.said, anew: true };
    this.writeSetup({ ...this.setup, exercise: { ...this.setup.exercise, situation: "", name: "", shots } });
    this.settle();
  }

  changeSetup(changes) {
    this.undos.push({ setup: this.setup });
    this.writeSetup({ ...this.setup, ...changes });
    this.settle();
  }

  nameBag(name) {
    const id = uuidv7();
    this.outbox.add(this.player, { type: "bag", op: uuidv7(), bag: id, name });
    this.bags = [...this.bags, { id, name }];
    return id;
  }

  canUndo() {
    return this.undos.length > 0 || this.last() !== null;
  }

  /** Takes the last step back; on a device that did not record the run, the last try. */
  undo() {
    const last = this.last();
    const step = this.undos.pop() || (last ? { tries: [{ number: last.number, played: null }] } : null);
    if (!step) return;
    for (const one of step.tries || []) this.write(one.number, one.played);
    if (step.setup) this.writeSetup(step.setup);
    if (step.said) this.said = step.said;
    this.settle();
  }

  finish() {
    if (this.finished) return;
    this.finished = true;
    this.outbox.add(this.player, { type: "finish", op: uuidv7(), run: this.run.id, at: isoNow() });
  }

  remember(numbers) {
    this.undos.push({ tries: numbers.map((number) => ({ number, played: this.tries.get(number)?.played || null })) });
    this.undos = this.undos.slice(-MOST_UNDOS);
  }

  write(number, played) {
    const op = uuidv7(this.ops.get(number) || "");
    this.ops.set(number, op);
    // One taken back that nobody else has seen is as if it had not been: its number is free again.
    if (played === null && number === Math.max(...this.tries.keys())) this.tries.delete(number);
    else this.tries.set(number, { number, op, played });
    this.outbox.add(this.player, { type: "try", op, run: this.run.id, number, played });
  }

  writeSetup(setup) {
    this.setup = setup;
    this.outbox.add(this.player, { type: "setup", op: uuidv7(), run: this.run.id, setup });
  }

  // Closes the run with its last try, opens it again when that is taken back.
  settle() {
    if (this.over()) {
      this.finish();
    } else if (this.finished) {
      this.finished = false;
      this.outbox.add(this.player, { type: "reopen", op: uuidv7(), run: this.run.id });
    }
    this.keep();
  }

  keep() {
    this.storage.setItem(this.key, JSON.stringify({ undos: this.undos, said: this.said }));
  }

  /** Puts an operation that the server may not have seen on top of what it gave. */
  take(operation) {
    if (operation.type === "bag") {
      if (!this.bags.some((bag) => bag.id === operation.bag)) this.bags = [...this.bags, { id: operation.bag, name: operation.name }];
      return;
    }
    if (operation.run !== this.run.id) return;
    if (operation.type === "try") {
      if ((this.ops.get(operation.number) || "") < operation.op) {
        this.ops.set(operation.number, operation.op);
        if (operation.played) this.tries.set(operation.number, operation);
        else this.tries.delete(operation.number);
      }
    } else if (operation.type === "setup") {
      this.setup = operation.setup;
    } else if (operation.type === "finish" || operation.type === "reopen") {
      this.finished = operation.type === "finish";
    }
  }
}

/** A number from 0 to below 1 that a text always gives: a call stays the same when the page is loaded again. */
function chance(text) {
  let hash = 2166136261;
  for (const character of text) hash = Math.imul(hash ^ character.codePointAt(0), 16777619);
  hash = Math.imul(hash ^ (hash >>> 16), 0x45d9f3b);
  hash = Math.imul(hash ^ (hash >>> 16), 0x45d9f3b);
  return ((hash ^ (hash >>> 16)) >>> 0) / 2 ** 32;
}
