// The service worker: keeps what the pages are made of, and the last pages seen, so that a run is begun and recorded without the
// network. It answers no question of a script (/api/...) and stores nothing that was sent; that is the outbox's.
//
// "VERSION" and FILES are filled in where this is served: a new version of the program is another text, which the browser
// installs beside this one and which begins with nothing kept.

const VERSION = "{version}";
const FILES = [/* files */];

const SHELL = `boardside-shell-${VERSION}`;
const PAGES = `boardside-pages-${VERSION}`;
const WHOSE = "/.whose"; // the entry that says whose pages are kept
const KEPT_AT = "Boardside-Kept";
const PATIENCE = 5000; // milliseconds until a page that is kept is shown instead of one that is still on its way
const FRESH = 5 * 60 * 1000; // milliseconds a kept page is not asked for again behind the player's back
const MOST_PAGES = 80;

// About signing in, accounts and devices: never kept.
const NEVER = /^\/(account|accounts|devices|invitation|pair|reset|sign-in|static)(\/|$)/;
// Forms after which this device may show somebody else's records.
const LEAVING = /^\/(account|devices|pair|players|sign-in)(\/|$)/;

// Grows when what was kept is thrown away, so that an answer that was on its way then is not kept after all.
let generation = 0;

self.addEventListener("install", (event) => {
  self.skipWaiting();
  event.waitUntil(caches.open(SHELL).then((shell) => shell.addAll(FILES)));
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith("boardside-") && name !== SHELL && name !== PAGES) await caches.delete(name);
    }
    await self.clients.claim();
  })());
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  if (request.mode === "navigate") {
    event.respondWith(request.method === "GET" ? page(event, url) : form(request, url));
  } else if (request.method === "GET" && url.pathname.startsWith("/static/")) {
    event.respondWith(file(request));
  }
});

// A page that asks for some to be kept as they are now; told which are.
self.addEventListener("message", (event) => {
  const { keep: paths } = event.data;
  event.waitUntil((async () => {
    const kept = [];
    for (const { path, at } of paths) {
      if (await keepNow(new URL(path, self.location), at)) kept.push(path);
    }
    event.ports[0].postMessage(kept);
  })());
});

async function file(request) {
  const shell = await caches.open(SHELL);
  return (await shell.match(request)) ?? fetch(request);
}

/** A page from the network; from what is kept where the network fails, or takes too long. */
async function page(event, url) {
  const before = generation;
  const network = fetch(event.request).then((answer) => ({ answer, copy: answer.clone() }));
  event.waitUntil(network.then(({ copy }) => keep(url, copy, before), () => {}));
  const kept = await keptPage(url);
  try {
    const { answer } = await (kept ? Promise.race([network, late()]) : network);
    return answer;
  } catch {
    return kept ? marked(kept) : instead(url);
  }
}

function late() {
  return new Promise((resolve, reject) => setTimeout(() => reject(new Error("late")), PATIENCE));
}

/** Where a form cannot be sent: what begins a run leads to where one is begun without the network. */
async function form(request, url) {
  if (LEAVING.test(url.pathname)) await forget();
  try {
    return await fetch(request);
  } catch {
    return url.pathname === "/runs" && (await keptPage(new URL("/throw", url))) ? Response.redirect("/throw", 303) : offline();
  }
}

async function instead(url) {
  const boards = /^\/(throw|start\/[^/]+|runs\/[^/]+)$/.test(url.pathname) && await keptPage(new URL("/throw", url));
  return boards ? marked(boards) : offline();
}

async function offline() {
  const shell = await caches.open(SHELL);
  const found = await shell.match("/offline");
  return found ? new Response(found.body, { status: 503, headers: found.headers }) : Response.error();
}

/** The same page, saying in its first tag how old it is. */
async function marked(kept) {
  const headers = new Headers(kept.headers);
  headers.delete("Content-Encoding");
  headers.delete("Content-Length");
  const text = await kept.text();
  return new Response(text.replace("<html ", `<html data-kept="${kept.headers.get(KEPT_AT)}" `), { status: 200, headers });
}

function addressOf(url) {
  const address = new URL(url);
  address.hash = "";
  address.searchParams.delete("said");
  return address.href;
}

async function keptPage(url) {
  if (NEVER.test(url.pathname)) return undefined;
  const pages = await caches.open(PAGES);
  return pages.match(addressOf(url));
}

async function forget() {
  generation++;
  await caches.delete(PAGES);
}

/** Keeps a page; where it is another player's than what was kept so far, throws that away first. */
async function keep(url, answer, before) {
  const whose = answer.headers.get("Boardside-Whose");
  if (whose === null || answer.type !== "basic" || before !== generation) return false;
  let pages = await caches.open(PAGES);
  const known = await pages.match(WHOSE);
  if (known && (await known.text()) !== whose) {
    await forget();
    pages = await caches.open(PAGES);
  }
  await pages.put(WHOSE, new Response(whose));
  const html = (answer.headers.get("Content-Type") ?? "").startsWith("text/html");
  if (answer.status !== 200 || answer.redirected || !html || NEVER.test(url.pathname)) return false;
  const headers = new Headers(answer.headers);
  headers.set(KEPT_AT, new Date().toISOString());
  const address = addressOf(url);
  await pages.delete(address);
  await pages.put(address, new Response(answer.body, { status: 200, headers }));
  const keys = (await pages.keys()).filter((one) => new URL(one.url).pathname !== WHOSE);
  for (const old of keys.slice(0, Math.max(0, keys.length - MOST_PAGES))) await pages.delete(old);
  return true;
}

/** Fetches a page and keeps it, unless what is kept is as new as `at` (milliseconds), or new enough anyway. */
async function keepNow(url, at) {
  const kept = await keptPage(url);
  const since = at ?? Date.now() - FRESH;
  if (kept && Date.parse(kept.headers.get(KEPT_AT)) > since) return true;
  const before = generation;
  try {
    return await keep(url, await fetch(url), before);
  } catch {
    return false;
  }
}
