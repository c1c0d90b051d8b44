// A match as it is thrown, in numbers: what the page for spectators and the one over a video have in common.

export const SIDES = ["first", "second"];

/** Points of a round. */
export const pointsOf = (round) => 3 * round.in + round.on;

/** Points of a side in a game, over its rounds up to one, or all of them. */
export function sum(game, side, upTo = Infinity) {
  return game[side].reduce((points, round) => points + (round.round <= upTo ? pointsOf(round) : 0), 0);
}

/** What a side has in a game: its total as told, else the points so far. */
export function total(game, side) {
  return game.totals[SIDES.indexOf(side)] ?? sum(game, side);
}

/** The round that was thrown last, as { game, side, round }; null before the first. */
export function latest(match) {
  let found = null;
  for (const game of match.games) {
    for (const side of SIDES) {
      for (const round of game[side]) {
        if (found === null || (round.at ?? "") >= (found.round.at ?? "")) found = { game, side, round };
      }
    }
  }
  return found;
}

/** The game to look at: the one thrown last, else the first that is not over. */
export function current(match) {
  return latest(match)?.game ?? match.games.find((game) => game.totals.some((one) => one === null)) ?? match.games[0];
}

/** Games won by each side, head start included, of those both have thrown. */
export function won(match) {
  const games = [0, 0];
  for (const { totals: [one, other] } of match.games) {
    if (one === null || other === null) continue;
    const lead = one + match.headStart - other;
    if (lead > 0) games[0]++;
    if (lead < 0) games[1]++;
  }
  return games;
}

/** Who throws for a side. */
export function thrower(match, side) {
  return match[`${side}Substitute`] || match[side];
}
