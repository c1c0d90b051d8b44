// A slide test by taps: the first tap is where a bag landed, the next where it stopped. The text field holds the slides, so
// what is tapped can be read, mended and sent without this script. Taps stay on the phone until they are answered: at the
// boards the network may be away.

// Today's slides that have no answer yet.
const KEPT = "boardside.slides";
const PATIENCE = 8000;

const tapping = document.getElementById("tapping");
const board = document.getElementById("tap-board");
const marks = document.getElementById("tap-marks");
const text = document.getElementById("slides");
const next = document.getElementById("tap-next");
const form = text.form;
const away = document.getElementById("tap-away");
const today = new Date().toDateString();
let landing = null;

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

function shape(name, kind, attributes) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", name);
  made.setAttribute("class", kind);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  marks.append(made);
}

function draw() {
  marks.replaceChildren();
  for (const part of parts()) {
    const numbers = part.split(/[,>]/).map(Number);
    if (numbers.length !== 4 || numbers.some(Number.isNaN)) continue;
    const [x1, y1, x2, y2] = numbers;
    shape("path", "way", { d: `M${x1} ${-y1}L${x2} ${-y2}` });
    shape("circle", "landed", { cx: x1, cy: -y1, r: 1 });
    shape("circle", "stopped", { cx: x2, cy: -y2, r: 1 });
  }
  if (landing !== null) shape("circle", "landed", { cx: landing.x, cy: -landing.y, r: 1 });
  next.textContent = landing === null ? tapping.dataset.landed : tapping.dataset.stopped;
}

board.addEventListener("click", (event) => {
  const box = board.getBoundingClientRect();
  const x = tenth(((event.clientX - box.left) / box.width) * 24 - 12);
  const y = tenth(48 - ((event.clientY - box.top) / box.height) * 48);
  if (landing === null) {
    landing = { x, y };
  } else {
    text.value = [...parts(), `${landing.x},${landing.y}>${x},${y}`].join(" ");
    landing = null;
  }
  keep();
  draw();
});

document.getElementById("tap-undo").addEventListener("click", () => {
  if (landing !== null) {
    landing = null;
  } else {
    text.value = parts().slice(0, -1).join(" ");
  }
  keep();
  draw();
});

text.addEventListener("input", () => {
  keep();
  draw();
});

// Asks first, so that a page that cannot be reached never takes this one's place.
form.addEventListener("submit", async (event) => {
  event.preventDefault();
  away.hidden = true;
  const address = `${form.action}?${new URLSearchParams(new FormData(form))}`;
  const giveUp = new AbortController();
  const timer = setTimeout(() => giveUp.abort(), PATIENCE);
  try {
    await fetch(address, { signal: giveUp.signal });
    location.assign(address);
  } catch {
    away.hidden = false;
  } finally {
    clearTimeout(timer);
  }
});

if (document.querySelector(".said") !== null) localStorage.removeItem(KEPT);
else if (text.value === "") text.value = recall();
tapping.hidden = false;
draw();
