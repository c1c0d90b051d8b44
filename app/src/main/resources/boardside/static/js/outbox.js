// Taps are kept on this device first and sent on: every operation is one entry of localStorage until the server has
// said what became of it. Entries are sent oldest first; a repeated one changes nothing on the server.

const PREFIX = "boardside.op.";
const REFUSED = "boardside.refused.";

export class Outbox {
  /** `send(player, operations)` resolves to [{ op, result: "stored" | "repeated" | "refused", message }] or rejects. */
  constructor(send, changed, storage = localStorage) {
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
    this.storage.setItem(PREFIX + opOf(operation), JSON.stringify({ ...operation, player }));
    this.changed();
    this.flush();
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
