/**
 * What a league makes of its games: league points, the table with a reason for every position, and the chances of a game
 * under way. Players are names; results are immutable values, and their order never matters. Knows no records: what a
 * player will probably throw comes in as a plain distribution.
 */
@NullMarked
package boardside.engine.league;

import org.jspecify.annotations.NullMarked;
