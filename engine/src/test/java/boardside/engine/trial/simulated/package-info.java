/**
 * Throwers made up to hold trials against: the truth is known, and days, streaks, warming up and tiring are as bad as one
 * may expect. The tests use few of them; {@code boardside.bench.trial} thousands.
 */
@NullMarked
package boardside.engine.trial.simulated;

import org.jspecify.annotations.NullMarked;
