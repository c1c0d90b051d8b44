// How a run's tries stand: sums by side, and where sudden death ended it. The server does the same (TryStanding).

/**
 * @param setup the run's
 * @param tries those there are, in order: [{ number, played }]
 * @return sums by side ({ tries, worked, last }: tries, or goes at the chain that are over, and whether the last one worked,
 *     null without any); end, the number of the try with which sudden death ended the run, or 0
 */
export function standingOf(setup, tries) {
  const sides = { me: side(), versus: side() };
  const misses = setup.stakes?.misses ?? null;
  const alone = !setup.exercise?.partner;
  let end = 0;
  for (const { number, played } of tries) {
    count(sides[played.side], played);
    const out = Object.values(sides).some((one) => misses !== null && one.tries - one.worked >= misses);
    // Two who take turns throw equally often.
    if (end === 0 && out && (alone || sides.versus.tries >= sides.me.tries)) end = number;
  }
  const sums = ({ tries: all, worked, last }) => ({ tries: all, worked, last });
  return { sums: { me: sums(sides.me), versus: sums(sides.versus) }, end };
}

function side() {
  return { tries: 0, worked: 0, last: null, go: 0, over: false };
}

// A go at a chain fails with the first shot that does not work or is laid by hand, and works with its last shot.
function count(sum, played) {
  const link = played.chain;
  if (!link) {
    add(sum, played.worked);
    return;
  }
  if (sum.go !== link.go) Object.assign(sum, { go: link.go, over: false });
  if (sum.over) return;
  const failed = !played.worked || (link.step > 1 && played.byHand);
  if (failed || link.step === link.steps) {
    add(sum, !failed);
    sum.over = true;
  }
}

function add(sum, worked) {
  sum.tries++;
  sum.worked += worked ? 1 : 0;
  sum.last = worked;
}
