// Where a match comes from as it changes: server-sent events, each the whole match, so that nothing is missing after a failure.

const AGAIN = 10_000;
const QUIET = 3000;

/** Calls `draw` with each new state of the match at `address`, and `lost` with whether the connection has been away a while. */
export function follow(address, draw, lost = () => {}) {
  let source = null;
  let quiet = null;
  let again = null;

  function away() {
    if (quiet === null) quiet = setTimeout(() => lost(true), QUIET);
  }

  function back() {
    clearTimeout(quiet);
    quiet = null;
    lost(false);
  }

  function connect() {
    clearTimeout(again);
    source?.close();
    source = new EventSource(address);
    source.onopen = back;
    source.onmessage = (event) => draw(JSON.parse(event.data));
    source.onerror = () => {
      away();
      // The browser tries again by itself, unless it was refused.
      if (source.readyState === EventSource.CLOSED) again = setTimeout(connect, AGAIN);
    };
  }

  // A phone that slept may hold a connection that is gone without knowing.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") connect();
  });
  window.addEventListener("online", connect);
  connect();
}
