// Taps are kept on this device first and sent on: every operation is one entry of localStorage until the server has
// said what became of it. Entries are sent oldest first; a repeated one changes nothing on the server.
//
// Where pages are kept for when there is no network (keep.js), what was sent stays beside it as well, until the page of its run
// was loaded anew: a page that was kept before does not hold it.

const PREFIX = "boardside.op.";
const SENT = "boardside.sent.";
const REFUSED = "boardside.refused.";

export class Outbox {
  /** `send(player, operations)` resolves to [{ op, result: "stored" | "repeated" | "refused", message }] or rejects. */
  constructor(send, changed, storage = localStorage, pagesAreKept = () => Boolean(navigator.serviceWorker?.controller)) {
    this.pagesAreKept = pagesAreKept;
    this.send = send;
    this.changed = changed;
    this.storage = storage;
    this.problem = "";
    this.wait = 0;
    this.timer = null;
    this.sending = false;
  }

  /** Operations not yet acknowledged, oldest first. */
  pending() {
    return this.entries(PREFIX);
  }

  /** Operations that a page kept earlier may not hold: those sent since and those not yet acknowledged, oldest first. */
  known() {
    return [...this.entries(SENT), ...this.pending()].sort((a, b) => (opOf(a) < opOf(b) ? -1 : 1));
  }

  /** Ids of the runs that hold more than what may be kept of their pages. */
  runsSent() {
    return [...new Set(this.entries(SENT).map(({ run }) => run).filter((run) => run))];
  }

  /** Drops what was sent of a run, whose page has just been given by the server. */
  forgetSent(run) {
    for (const operation of this.entries(SENT)) {
      if ((operation.run ?? run) === run) this.storage.removeItem(SENT + opOf(operation));
    }
  }

  /** Drops what was sent for anybody but a player: of nobody else a page is kept. */
  forgetSentBut(player) {
    for (const operation of this.entries(SENT)) {
      if (String(operation.player) !== player) this.storage.removeItem(SENT + opOf(operation));
    }
  }

  /** What the server refused, with its reasons; kept, so that nothing is lost. */
  refused() {
    return this.entries(REFUSED);
  }

  entries(prefix) {
    const keys = [];
    for (let i = 0; i < this.storage.length; i++) {
      const key = this.storage.key(i);
      if (key.startsWith(prefix)) keys.push(key);
    }
    return keys.sort().map((key) => JSON.parse(this.storage.getItem(key)));
  }

  /** Keeps a player's operation on this device and starts to send. Throws where the device cannot keep it. */
  add(player, operation) {
    this.keep(player, operation);
    this.changed();
    this.flush();
  }

  /** Keeps a player's operation on this device, to be sent later. Throws where the device cannot keep it. */
  keep(player, operation) {
    this.storage.setItem(PREFIX + opOf(operation), JSON.stringify({ ...operation, player }));
  }

  /** Drops refused operations after the player has read why. */
  forgetRefused() {
    for (const { operation } of this.refused()) this.storage.removeItem(REFUSED + opOf(operation));
    this.changed();
  }

  /** Sends what waits; tries again by itself, a little later each time. */
  async flush() {
    if (this.sending) return;
    this.sending = true;
    clearTimeout(this.timer);
    try {
      // A player of somebody else, who was signed in here before, waits for them and holds up nobody.
      const strangers = new Map();
      const rest = () => this.pending().filter((operation) => !strangers.has(operation.player));
      for (let waiting = rest(); waiting.length > 0; waiting = rest()) {
        const { player } = waiting[0];
        const others = waiting.findIndex((operation) => operation.player !== player);
        const batch = waiting.slice(0, Math.min(50, others < 0 ? 50 : others));
        try {
          this.settle(batch, await this.send(player, batch));
        } catch (failure) {
          if (!failure.stranger) throw failure;
          strangers.set(player, failure);
        }
      }
      const [failure] = strangers.values();
      if (failure) throw failure;
      this.problem = "";
      this.wait = 0;
    } catch (failure) {
      this.problem = failure.said || "";
      this.wait = Math.min(30000, this.wait * 2 || 1000);
      this.timer = setTimeout(() => this.flush(), this.wait);
    } finally {
      this.sending = false;
      this.changed();
    }
  }

  keepSent(operation) {
    try {
      this.storage.setItem(SENT + opOf(operation), JSON.stringify(operation));
    } catch {
      // No room left: the server has it, and the page is right once it is loaded from there.
    }
  }

  settle(batch, results) {
    const byOp = new Map(results.map((result) => [result.op, result]));
    let settled = 0;
    for (const operation of batch) {
      const result = byOp.get(opOf(operation));
      if (!result) continue;
      if (result.result === "refused") {
        this.storage.setItem(REFUSED + result.op, JSON.stringify({ operation, message: result.message }));
      }
      this.storage.removeItem(PREFIX + result.op);
      if (result.result !== "refused" && this.pagesAreKept()) this.keepSent(operation);
      settled++;
    }
    if (settled === 0) throw new Error("the server answered for none of the operations sent");
    this.changed();
  }
}

/** The id of an operation; a round carries it itself. */
export function opOf(operation) {
  return operation.type === "round" ? operation.round.op : operation.op;
}
