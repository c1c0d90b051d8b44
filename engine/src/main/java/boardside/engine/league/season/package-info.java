/**
 * A season that is run here: who plays in which division, whose week it is, what was thrown and fixed, who leaves, and the
 * play-off. A season is an immutable value; every change makes another one. What time it is, and the ids of what is new, are
 * told by the caller.
 */
@NullMarked
package boardside.engine.league.season;

import org.jspecify.annotations.NullMarked;
