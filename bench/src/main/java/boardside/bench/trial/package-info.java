/** Trials thrown by thousands of simulated players: where the boundaries come from, and what the procedure then does. */
@NullMarked
package boardside.bench.trial;

import org.jspecify.annotations.NullMarked;
