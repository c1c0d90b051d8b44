/**
 * Players made up to hold the skill model against: what they throw is drawn from stated laws that are not the model's
 * own, and the truth is known. The tests use few of them; {@code boardside.bench.skill.Calibration} thousands.
 */
@NullMarked
package boardside.engine.skill.simulated;

import org.jspecify.annotations.NullMarked;
