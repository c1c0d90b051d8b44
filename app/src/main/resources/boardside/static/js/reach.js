// Whether the server can be reached: a page that is left without it is lost to the browser's own fault.

const PATIENCE = 4000; // milliseconds

/** Resolves to whether the server answers at all. */
export async function reachable() {
  try {
    await fetch("/api/token", { cache: "no-store", signal: AbortSignal.timeout(PATIENCE) });
    return true;
  } catch {
    return false;
  }
}
