// The rules a page needs while it records: a small mirror of boardside.engine.rules, held against a file of cases
// generated from there (scoring-vectors.json in the tests).

export const BAGS = 4;

/** Points before cancellation: 3 a bag in, 1 a bag on. */
export function points(counts) {
  return 3 * counts.in + counts.on;
}

/** The 15 finishes of four bags: fewest in first, then fewest on. */
export function finishes() {
  const all = [];
  for (let inside = 0; inside <= BAGS; inside++) {
    for (let on = 0; on <= BAGS - inside; on++) {
      all.push({ in: inside, on, off: BAGS - inside - on });
    }
  }
  return all;
}

/** A new game: rules are { target, exact, fallBack, skunk, firstThrow: "keep" | "swap" }. */
export function start(rules, meFirst = true, mine = 0, theirs = 0) {
  return { rules, mine, theirs, meFirst, rounds: 0, result: "open" };
}

function won(rules, score, other) {
  return (rules.exact ? score === rules.target : score >= rules.target)
    || (rules.skunk > 0 && other === 0 && score >= rules.skunk);
}

function after(rules, score, gain) {
  return rules.exact && score + gain > rules.target ? rules.fallBack : score + gain;
}

/** Whether the next bag of a round is the first side's, after so many thrown by both: they alternate. */
export function mineNext(meFirst, thrown) {
  return (thrown % 2 === 0) === meFirst;
}

/** The game after a round of raw points; only the better side scores, and only the difference. */
export function play(game, mine, theirs) {
  const net = mine - theirs;
  const next = { ...game, rounds: game.rounds + 1 };
  if (net > 0) {
    next.mine = after(game.rules, game.mine, net);
    next.meFirst = true;
  } else if (net < 0) {
    next.theirs = after(game.rules, game.theirs, -net);
    next.meFirst = false;
  } else {
    next.meFirst = (game.rules.firstThrow !== "swap") === game.meFirst;
  }
  if (won(game.rules, next.mine, next.theirs)) {
    next.result = "won";
  } else if (won(game.rules, next.theirs, next.mine)) {
    next.result = "lost";
  }
  return next;
}
