/** Matches thrown live, with spectators, asked of a running server from outside. */
@NullMarked
package boardside.bench.live;

import org.jspecify.annotations.NullMarked;
