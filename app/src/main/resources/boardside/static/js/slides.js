// A slide test by taps: the first tap is where a bag landed, the next where it stopped. The text field holds the slides, so
// what is tapped can be read and mended, and sent without this script. Taps stay on the phone until the test is sent; the
// test itself stays in the outbox until the server has it, and its answer is worked out here meanwhile.

import { measure } from "./boards.js";
import { $, el, t } from "./dom.js";
import { isoNow, uuidv7 } from "./ids.js";
import { Outbox } from "./outbox.js";
import { sender } from "./post.js";

// Today's slides that were not sent yet.
const KEPT = "boardside.slides";
const SLID = /^([+-]?\d*\.?\d+),([+-]?\d*\.?\d+)>(?:(in|off)|([+-]?\d*\.?\d+),([+-]?\d*\.?\d+))$/;
const HOLE = { x: 0, y: 39, radius: 3 };
const LENGTH = 48;
const CM = 2.54;

const form = $("slides-form");
const boot = JSON.parse(form.dataset.boot);
const text = $("slides");
const fault = $("slides-fault");
const today = new Date().toDateString();
let landing = null;
// The test that was sent and has no word from the server yet.
let sent = null;

const outbox = new Outbox(sender($("unsent").dataset.token, $("unsent").dataset.out), follow);

function keep() {
  if (text.value.trim() === "") localStorage.removeItem(KEPT);
  else localStorage.setItem(KEPT, JSON.stringify({ day: today, slides: text.value }));
}

function recall() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT));
    return kept !== null && kept.day === today ? kept.slides : "";
  } catch {
    return "";
  }
}

const tenth = (value) => Math.round(value * 10) / 10;
const parts = () => text.value.split(/\s+/).filter((part) => part !== "");
const chosen = (name) => form.querySelector(`input[name="${name}"]:checked`)?.value ?? "";
const halfWidth = () => (chosen("board") === "narrow" ? 6 : 12);

/** A slide of the text; null where it is none. */
function slideOf(part) {
  const found = SLID.exec(part);
  if (!found) return null;
  const point = (i) => ({ x: Number(found[i]), y: Number(found[i + 1]) });
  return { outcome: found[3] ?? "on", landing: point(1), rest: found[3] ? null : point(4) };
}

function shape(name, kind, attributes) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", name);
  made.setAttribute("class", kind);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  $("tap-marks").append(made);
}

function draw() {
  $("tap-marks").replaceChildren();
  $("tap-wood").setAttribute("x", -halfWidth());
  $("tap-wood").setAttribute("width", 2 * halfWidth());
  const dot = (kind, { x, y }) => shape("circle", kind, { cx: x, cy: -y, r: 1 });
  for (const slide of parts().map(slideOf).filter((one) => one !== null)) {
    const end = slide.rest ?? (slide.outcome === "in" ? HOLE : null);
    if (end) shape("path", "way", { d: `M${slide.landing.x} ${-slide.landing.y}L${end.x} ${-end.y}` });
    dot("landed", slide.landing);
    if (end) dot("stopped", end);
  }
  if (landing !== null) dot("landed", landing);
  $("tap-next").textContent = t(landing === null ? "slides.tap.landed" : "slides.tap.stopped");
  for (const id of ["tap-in", "tap-off"]) $(id).disabled = landing === null;
  $("tap-undo").disabled = landing === null && parts().length === 0;
}

function changed() {
  keep();
  draw();
}

function end(where) {
  text.value = [...parts(), `${landing.x},${landing.y}>${where}`].join(" ");
  landing = null;
  changed();
}

$("tap-board").addEventListener("click", (event) => {
  const box = $("tap-board").getBoundingClientRect();
  const x = tenth(((event.clientX - box.left) / box.width) * 24 - 12);
  const y = tenth(LENGTH - ((event.clientY - box.top) / box.height) * LENGTH);
  if (Math.abs(x) > halfWidth()) return;
  if (landing === null) {
    landing = { x, y };
    changed();
  } else {
    end(Math.hypot(x - HOLE.x, y - HOLE.y) < HOLE.radius ? "in" : `${x},${y}`);
  }
});
$("tap-in").addEventListener("click", () => end("in"));
$("tap-off").addEventListener("click", () => end("off"));
$("tap-undo").addEventListener("click", () => {
  if (landing !== null) landing = null;
  else text.value = parts().slice(0, -1).join(" ");
  changed();
});
text.addEventListener("input", changed);
form.addEventListener("change", (event) => {
  if (event.target.name === "board") draw();
});

function complain(...sentences) {
  fault.replaceChildren(...sentences.map((sentence) => el("p", {}, sentence)));
  if (sentences.length > 0) text.setAttribute("aria-invalid", "true");
  else text.removeAttribute("aria-invalid");
}

/** What is wrong with the slides, in sentences. */
function faults() {
  if (parts().length === 0) return [t("slides.none")];
  return parts().flatMap((part) => {
    const slide = slideOf(part);
    if (slide === null) return [t("slides.fault", part)];
    const off = [slide.landing, slide.rest].some((at) => at && !(Math.abs(at.x) <= halfWidth() && at.y >= 0 && at.y <= LENGTH));
    return off ? [t("slides.fault.off", part)] : [];
  });
}

const per = boot.units === "cm" ? CM : 1;
const length = ({ estimate, low, high }) => `${Math.round(per * estimate)} (${Math.round(per * low)}\u2013${Math.round(per * high)})`;
const percent = (chance) => (chance > 0.995 ? "over 99 %" : `${Math.round(100 * chance)} %`);

/** The answer in sentences; none where nothing is known of the bag yet. */
function answers(models, tapped) {
  if (!models) return [];
  const day = measure(models, tapped.slides, tapped.conditions, halfWidth());
  const by = (factor) => {
    const more = 100 * (factor - 1);
    return t(more < 0 ? "slides.by.faster" : "slides.by.slower", Math.abs(more).toFixed(1));
  };
  const slower = day.slower > 0.5;
  return [
    t("slides.length", day.slides, length(day.slide), t(`throws.unit.${boot.units}`)),
    t(slower ? "slides.slower" : "slides.faster", Math.abs(100 * (day.factor.estimate - 1)).toFixed(1),
      percent(slower ? day.slower : 1 - day.slower), by(day.factor.low), by(day.factor.high)),
  ];
}

form.addEventListener("submit", (event) => {
  event.preventDefault();
  const wrong = faults();
  complain(...wrong);
  if (wrong.length > 0) return;
  const value = form.elements.bag.value;
  const colon = value.indexOf(":");
  const tapped = {
    at: isoNow(),
    bag: value.slice(colon + 1),
    face: value.slice(0, colon) || null,
    board: chosen("board"),
    conditions: chosen("conditions") || null,
    slides: parts().map(slideOf),
  };
  const operation = { type: "slide-test", op: uuidv7(), test: uuidv7(), tapped };
  sent = { ...operation, text: text.value };
  try {
    outbox.add(boot.player, operation);
  } catch {
    sent = null;
    complain(t("slides.full"));
    return;
  }
  text.value = "";
  changed();
  $("measured").replaceChildren(...answers(boot.models[value], tapped).map((answer) => el("p", { class: "said" }, answer)),
    el("p", { class: "notice" }, t(boot.models[value] ? "slides.away" : "slides.away.unknown")));
});

/** Goes on to the test once the server has it; says why where it was refused. */
function follow() {
  if (sent === null) return;
  const refused = outbox.refused().find(({ operation }) => operation.op === sent.op);
  if (refused) {
    text.value = sent.text;
    sent = null;
    outbox.forgetRefused();
    $("measured").replaceChildren();
    complain(refused.message);
    changed();
  } else if (!outbox.pending().some(({ op }) => op === sent.op)) {
    location.assign(`/slides/${sent.test}`);
    sent = null;
  }
}

window.addEventListener("online", () => outbox.flush());
if (text.value === "") text.value = recall();
$("tapping").hidden = false;
draw();
