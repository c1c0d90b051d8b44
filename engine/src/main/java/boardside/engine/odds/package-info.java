/**
 * Exact chances for every way the game is played: a race from any score, a player's level, the climb, totals, league
 * matches, head starts, and what a better bag is worth. Takes distributions of what a round gives, never records; an
 * opponent is a {@link RoundDistribution} too, be it a ghost, a player's chances, or anybody's rounds of the past.
 *
 * <p>Nothing is simulated. Answers are right to 1e-12: recursions and eliminations add and multiply non-negative numbers
 * only, so that nothing cancels.
 */
@NullMarked
package boardside.engine.odds;

import org.jspecify.annotations.NullMarked;
