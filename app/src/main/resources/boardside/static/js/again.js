// On a page whose answer is still being worked out: asks the server until it is there, and only then shows the page anew.

const PAUSE = 600;
const WORKING = 202;

async function ask() {
  try {
    const answer = await fetch(location.href);
    if (answer.status !== WORKING) {
      location.reload();
      return;
    }
  } catch {
    // The network is away for now.
  }
  setTimeout(ask, PAUSE);
}

setTimeout(ask, PAUSE);
