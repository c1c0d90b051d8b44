// On every page but the one at the boards: sends what a run left behind on this device, shows the page anew with it, says what was
// refused, and has the pages kept that are wanted when there is no network.

import { kept, keepPages } from "./keep.js";
import { Outbox } from "./outbox.js";
import { sender } from "./post.js";

const mark = document.getElementById("unsent");
const notStored = document.getElementById("not-stored");

function show() {
  const waiting = outbox.pending().length;
  mark.hidden = waiting === 0;
  mark.textContent = outbox.problem || mark.dataset.said.replace("{0}", waiting);
  const why = outbox.refused();
  notStored.hidden = why.length === 0;
  document.getElementById("not-stored-list").replaceChildren(...why.map(({ message }) => {
    const item = document.createElement("li");
    item.textContent = message;
    return item;
  }));
}

// Pages at the boards that were kept before more was sent are kept anew; then what was sent need not be known here any more.
async function keepForLater() {
  if (kept) return;
  outbox.forgetSentBut(mark.dataset.player);
  if (outbox.pending().length > 0 || mark.dataset.player === undefined) return;
  const addressOf = (run) => `/runs/${encodeURIComponent(run)}`;
  const runs = outbox.runsSent();
  const open = [...document.querySelectorAll("a[data-keep]")].map((link) => link.getAttribute("href"));
  const there = await keepPages(["/", "/throw", ...open], runs.map(addressOf));
  for (const run of runs) if (there.includes(addressOf(run))) outbox.forgetSent(run);
}

const outbox = new Outbox(sender(mark.dataset.token, mark.dataset.out), show);
document.getElementById("not-stored-read").addEventListener("click", () => outbox.forgetRefused());
show();
if (outbox.pending().length > 0) {
  window.addEventListener("online", () => outbox.flush());
  // Whoever is on the way to another page is not called back.
  let leaving = false;
  window.addEventListener("beforeunload", () => { leaving = true; });
  const sent = setInterval(() => {
    if (outbox.pending().length > 0) return;
    clearInterval(sent);
    // A form under way is not thrown away for it, nor a reason that was not read.
    if (!leaving && !document.activeElement?.matches("input, textarea, select") && outbox.refused().length === 0) location.reload();
  }, 100);
  outbox.flush();
}
keepForLater();
navigator.serviceWorker?.addEventListener("controllerchange", keepForLater);
