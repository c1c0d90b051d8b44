// On every page but the one at the boards: sends what a run left behind on this device, and shows the page anew with it.

import { Outbox } from "./outbox.js";
import { sender } from "./post.js";

const mark = document.getElementById("unsent");

function show() {
  const waiting = outbox.pending().length;
  mark.hidden = waiting === 0;
  mark.textContent = outbox.problem || mark.dataset.said.replace("{0}", waiting);
}

const outbox = new Outbox(sender(mark.dataset.token, mark.dataset.out), show);
if (outbox.pending().length > 0) {
  show();
  window.addEventListener("online", () => outbox.flush());
  const sent = setInterval(() => {
    if (outbox.pending().length > 0) return;
    clearInterval(sent);
    // A form under way is not thrown away for it.
    if (!document.activeElement?.matches("input, textarea, select")) location.reload();
  }, 100);
  outbox.flush();
}
