// On a page whose answer is still being worked out: asks the server until it is there, and only then shows the page anew.

const PAUSE = 600;
const WORKING = 202;
// Whoever is on the way to another page is not called back; who is still here so long after was not, as when a link leads to a file.
const ON_THE_WAY = 10_000;
let left = -ON_THE_WAY;

window.addEventListener("beforeunload", () => { left = performance.now(); });

async function ask() {
  try {
    const answer = await fetch(location.href);
    if (answer.status !== WORKING && performance.now() - left >= ON_THE_WAY) {
      location.reload();
      return;
    }
  } catch {
    // The network is away for now.
  }
  setTimeout(ask, PAUSE);
}

setTimeout(ask, PAUSE);
