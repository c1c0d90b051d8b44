// Which shot to throw: the bags drawn go with the form; the ranking is asked for again and again, sharper each time.

import { $, el, t } from "./dom.js";
import { Drawing } from "./drawing.js";

const AGAIN = 500; // milliseconds until an answer still being worked out is asked for again
const PATIENCE = 240; // times

const drawing = new Drawing();
const boot = JSON.parse($("draw").dataset.boot);
drawing.begin(boot.bags);
// Bags that lie over each other stand out until something is changed.
for (const wrong of boot.wrong) drawing.lying.children[wrong]?.classList.add("wrong");
$("bags").form.addEventListener("submit", () => {
  $("bags").value = JSON.stringify(drawing.bags);
});

const shots = $("shots");

async function ask(step) {
  for (let times = 0; times < PATIENCE; times++) {
    const answer = await fetch(`/advise/shots?${shots.dataset.query}&step=${step}`);
    if (answer.status === 200) return new DOMParser().parseFromString(await answer.text(), "text/html").querySelector(".ranking");
    if (answer.status !== 202) break;
    await new Promise((resolve) => setTimeout(resolve, AGAIN));
  }
  throw new Error(t("advise.script.failed"));
}

async function sharpen() {
  // Only what is said of the best shot is read out, and only where it changes.
  shots.setAttribute("aria-live", "off");
  const said = el("p", { class: "visually-hidden", role: "status" });
  shots.before(said);
  let last = "";
  for (let step = 0; step >= 0;) {
    const ranking = await ask(step);
    if (ranking === null) return;
    shots.replaceChildren(document.adoptNode(ranking));
    const now = $("advised").textContent;
    if (now !== last) said.textContent = last === "" ? now : t("advise.script.step", now);
    last = now;
    step = Number(ranking.dataset.next);
  }
  shots.dataset.done = "yes";
}

if (shots) {
  sharpen().catch((e) => {
    shots.append(el("p", { class: "fault", role: "alert" }, e.message));
  });
}
