// Without the network: registers the service worker where the browser has one (HTTPS, or this machine itself), says how old a page
// is that it kept, and has the pages kept that are wanted at the boards.

const root = document.documentElement;

/** Whether this page came from what is kept on this device. */
export const kept = root.dataset.kept !== undefined;

const said = document.getElementById("kept");
if (kept && said) {
  said.textContent = said.dataset.said.replace("{0}", new Date(root.dataset.kept).toLocaleString(root.lang, {
    weekday: "short", hour: "2-digit", minute: "2-digit",
  }));
  said.hidden = false;
}

navigator.serviceWorker?.register("/worker.js").catch(() => {
  // A certificate that the browser does not trust by itself, or no room left: everything else works.
});

/**
 * Has pages kept as they are now: `runs` those that hold more by now than what may be kept of them. Resolves to the addresses
 * that are kept; to none without a service worker.
 */
export function keepPages(addresses, runs = []) {
  const worker = navigator.serviceWorker?.controller;
  if (!worker) return Promise.resolve([]);
  const now = Date.now();
  const keep = addresses.map((path) => ({ path })).concat(runs.map((path) => ({ path, at: now })));
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.addEventListener("message", (event) => resolve(event.data));
    channel.port1.start();
    worker.postMessage({ keep }, [channel.port2]);
  });
}
