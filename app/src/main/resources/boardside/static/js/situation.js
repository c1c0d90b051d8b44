// The page of a set-up: drawn, named and kept. What is kept goes out like every tap at the boards.

import { $, t } from "./dom.js";
import { Drawing } from "./drawing.js";
import { uuidv7 } from "./ids.js";
import { Outbox } from "./outbox.js";
import { sender } from "./post.js";

const boot = JSON.parse($("draw").dataset.boot);
const outbox = new Outbox(sender(boot.token, t("run.send.pair")), sent);
const drawing = new Drawing();
let keeping = null; // the operation that waits to be stored

function say(problem) {
  $("problem").textContent = problem;
  $("problem").hidden = problem === "";
}

function keep(retired) {
  const name = $("name").value.trim();
  if (name === "") {
    say(t("situations.fault.name"));
    $("name").focus();
    return;
  }
  say("");
  const op = uuidv7(boot.op);
  keeping = op;
  outbox.add(boot.player, {
    type: "situation", op, situation: boot.id || uuidv7(), name, position: { bags: drawing.bags }, retired,
  });
}

/** Once it is stored, on to the list; what is refused is said here and not kept for later. */
function sent() {
  if (keeping === null || outbox.pending().some((operation) => operation.op === keeping)) {
    if (keeping !== null) drawing.say(outbox.problem || t("run.waiting", outbox.pending().length));
    return;
  }
  const refused = outbox.refused().find((one) => one.operation.op === keeping);
  keeping = null;
  if (refused) {
    outbox.forgetRefused();
    say(refused.message);
  } else {
    location.href = "/situations?said=saved";
  }
}

$("keep").addEventListener("click", () => keep(false));
$("retire")?.addEventListener("click", () => keep(true));
window.addEventListener("online", () => outbox.flush());
drawing.begin(boot.position.bags);
