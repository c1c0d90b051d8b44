// What makes a run harder: a last bag that must go in, or a last try that must work; sudden death; a clock for every bag.

import { $, t } from "./dom.js";
import { say } from "./speech.js";

const COUNTED = 5;

/** The stakes of a run of rounds, or of tries, in a few words; empty where nothing is at stake. */
export function stakesSaid(stakes, ofTries = false) {
  if (!stakes) return "";
  return [
    stakes.lastBag ? t(ofTries ? "stakes.last-try" : "stakes.last-bag") : "",
    stakes.suddenDeath ? t("stakes.sudden-death.said", stakes.suddenDeath) : "",
    stakes.misses ? missesSaid(stakes.misses) : "",
    stakes.shotClock ? t("stakes.shot-clock.said", stakes.shotClock) : "",
  ].filter((part) => part !== "").join(" \u00b7 ");
}

function missesSaid(misses) {
  return t(misses === 1 ? "stakes.misses.said.one" : "stakes.misses.said", misses);
}

/**
 * A clock for every bag (bag by bag) or every round. It waits for a tap at the start of each round, since the bags have to
 * be fetched first; a bag recorded starts it again. What it shows never changes what is recorded.
 */
export class ShotClock {
  /** `seconds` a bag; `aloud` whether the last ones are said. */
  constructor(seconds, aloud) {
    this.seconds = seconds;
    this.aloud = aloud;
    this.left = null;
    this.timer = null;
    this.button = $("clock");
    this.button.addEventListener("click", () => (this.timer === null ? this.start(this.ready) : this.stop()));
    this.ready = seconds;
    this.stop();
  }

  /** Starts from so many seconds. */
  start(seconds) {
    clearInterval(this.timer);
    this.end = performance.now() + 1000 * seconds;
    this.left = null;
    this.timer = setInterval(() => this.tick(), 100);
    this.tick();
  }

  /** Waits for a tap, with so many seconds to give. */
  stop(seconds = this.ready) {
    clearInterval(this.timer);
    this.timer = null;
    this.ready = seconds;
    this.button.hidden = false;
    this.button.dataset.state = "ready";
    this.button.textContent = t("stakes.clock.start", seconds);
  }

  hide() {
    clearInterval(this.timer);
    this.timer = null;
    this.button.hidden = true;
  }

  tick() {
    const left = Math.max(0, Math.ceil((this.end - performance.now()) / 1000));
    if (left === this.left) return;
    this.left = left;
    this.button.dataset.state = left === 0 ? "over" : left <= COUNTED ? "low" : "running";
    this.button.textContent = left === 0 ? t("stakes.clock.over") : t("stakes.clock.left", left);
    if (this.aloud && left <= COUNTED) say(left === 0 ? t("stakes.clock.over") : String(left));
    if (left === 0) {
      clearInterval(this.timer);
      this.timer = null;
      this.ready = this.seconds;
    }
  }

  /** After something was recorded: on to the next bag, or wait until the bags are fetched and laid. */
  recorded(model) {
    if (model.over()) this.hide();
    else if (model.goesOn) this.start(this.seconds);
    else this.stop(this.seconds * model.bagsAtOnce);
  }
}
