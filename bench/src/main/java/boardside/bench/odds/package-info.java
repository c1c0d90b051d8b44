/** Races and levels, against the ways a general library, or a first idea, would solve them. */
@NullMarked
package boardside.bench.odds;

import org.jspecify.annotations.NullMarked;
