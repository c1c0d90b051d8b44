// What the pages at the boards share beside their entry: the set-up sheet, the sheet behind More, the mark that says what
// is stored, the voice, and a screen that stays on.

import { $, el, t } from "./dom.js";
import { reachable } from "./reach.js";
import { say, speechReady } from "./speech.js";

const SPOKEN = "boardside.spoken";

/** Shows how much of a run is stored, and what was refused. */
export function drawSent(outbox) {
  const waiting = outbox.pending().length;
  const refused = outbox.refused();
  const mark = $("sent");
  mark.dataset.state = refused.length > 0 ? "refused" : waiting > 0 ? "waiting" : "sent";
  mark.textContent = refused.length > 0 ? t("run.refused", refused.length)
    : waiting > 0 ? outbox.problem || t("run.waiting", waiting) : t("run.sent");
  $("refused").hidden = refused.length === 0;
  $("refused-list").replaceChildren(...refused.map((r) => el("li", {}, r.message)));
  $("summary")?.toggleAttribute("data-waiting", waiting > 0);
}

/** Where a run's summary is. */
export function summaryOf(run) {
  return `/runs/${encodeURIComponent(run.id)}/summary`;
}

/** Once the server knows a run begun here, the page has its address, so that loading it again shows it. */
export function addressed(model) {
  const waits = model.outbox.pending().some((operation) => operation.type === "run" && operation.run === model.run.id);
  const here = `/runs/${encodeURIComponent(model.run.id)}`;
  if (!waits && location.pathname !== here) history.replaceState(null, "", here);
}

/** Goes to another page; where the server cannot be reached to load it, says so and stays, as nothing here is lost. */
export async function leave(href) {
  $("problem").hidden = true;
  if (await reachable()) {
    location.assign(href);
  } else {
    $("problem").textContent = t("run.offline");
    $("problem").hidden = false;
    $("problem").scrollIntoView({ block: "center" });
  }
}

/** Makes a change; says so where this device has no room left to keep it. */
export function keepOrSay(change) {
  try {
    change();
  } catch (failure) {
    $("problem").textContent = t("run.device.full");
    $("problem").hidden = false;
    throw failure;
  }
}

/** What the player wants said aloud, as the box behind More has it. */
export class Voice {
  constructor() {
    this.on = localStorage.getItem(SPOKEN) === "yes";
    const box = $("spoken");
    box.checked = this.on && speechReady();
    box.disabled = !speechReady();
    box.addEventListener("change", () => {
      this.on = box.checked;
      localStorage.setItem(SPOKEN, this.on ? "yes" : "no");
      this.say(t("run.spoken.on"));
    });
  }

  say(text) {
    if (this.on) say(text);
  }
}

/** Wires what lies around the entry; `undo` takes the last step back, `finished` is told when the run is closed by hand. */
export function wire(model, outbox, undo, finished = () => leave(summaryOf(model.run))) {
  $("undo").addEventListener("click", undo);
  $("more").addEventListener("click", () => $("more-sheet").showModal());
  $("finish").addEventListener("click", () => {
    model.finish();
    $("more-sheet").close();
    finished();
  });
  $("run").addEventListener("click", (event) => {
    const link = event.target.closest("a[href]");
    // Where nothing waits to be sent the server was there a moment ago.
    const there = navigator.onLine && outbox.pending().length === 0;
    if (!link || there || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    leave(link.href);
  });
  $("forget").addEventListener("click", () => outbox.forgetRefused());
  for (const button of document.querySelectorAll("[data-close]")) {
    button.addEventListener("click", () => button.closest("dialog").close());
  }
  $("awake").textContent = t("wakeLock" in navigator ? "run.awake.yes" : "run.awake.no");
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible") return;
    stayAwake();
    outbox.flush();
  });
  window.addEventListener("online", () => outbox.flush());
  stayAwake();
}

// Keeps the screen on where the browser allows it (a secure context).
async function stayAwake() {
  try {
    await navigator.wakeLock?.request("screen");
  } catch {
    // Low battery or the page is hidden; asked again when it shows.
  }
}

/** Keys, so that a pocket clicker works (see the help page): `use(key)` says whether it took a key that has a meaning. */
export function onKey(keys, use) {
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || document.querySelector("dialog[open]")) return;
    if (event.key === "Backspace" || event.key === "u") {
      event.preventDefault();
      $("undo").click();
    } else if (event.key in keys && use(keys[event.key])) {
      event.preventDefault();
    }
  });
}

/**
 * The sheet for what may change from bag to bag.
 *
 * @param model whose bag sets are offered
 * @param now says what is chosen: { bags, face, approach, board, conditions }
 * @param many says whether several bag sets may be chosen
 * @param changed told what was chosen, where anything differs
 * @return opens the sheet
 */
export function setupSheet(model, { now, many = () => false, changed }) {
  const form = $("setup-form");
  form.addEventListener("submit", () => {
    const data = new FormData(form);
    const chosen = data.getAll("bag").filter((id) => id !== "");
    const name = String(data.get("new-bag") || "").trim();
    if (name !== "") {
      const id = model.bags.find((b) => b.name === name)?.id ?? model.nameBag(name);
      if (many()) chosen.push(id);
      else chosen.splice(0, chosen.length, id);
    }
    const changes = { bags: [...new Set(chosen)], board: data.get("board") || "regulation" };
    for (const field of ["face", "approach", "conditions"]) changes[field] = data.get(field) || null;
    const before = now();
    if (Object.keys(changes).some((key) => JSON.stringify(changes[key]) !== JSON.stringify(before[key]))) changed(changes);
  });
  return () => {
    const s = now();
    const several = many();
    const unnamed = several ? [] : [{ id: "", name: t("run.set.unnamed") }];
    $("setup-bags").replaceChildren(...unnamed.concat(model.bags).map((b) => {
      const input = el("input", { type: several ? "checkbox" : "radio", name: "bag", value: b.id });
      input.checked = b.id === "" ? s.bags.length === 0 : s.bags.includes(b.id);
      return el("label", { class: "choice" }, input, el("span", {}, b.name));
    }));
    for (const name of ["face", "approach", "board", "conditions"]) {
      const input = form.querySelector(`input[name="${name}"][value="${s[name] ?? ""}"]`);
      if (input) input.checked = true;
    }
    $("new-bag").value = "";
    $("setup-sheet").showModal();
  };
}

/** The set-up in force as buttons that open its sheet, with `first` before them. */
export function drawChips(parts, open, first = null) {
  const chips = parts.filter((part) => part).map((part) => el("button", { type: "button", click: open, "aria-haspopup": "dialog" }, part));
  $("setup").replaceChildren(...(first ? [first] : []), ...chips);
}
