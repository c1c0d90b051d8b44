/** Players that learn by a stated law, made up for the tests of the engine and for bench. */
@NullMarked
package boardside.engine.plan.simulated;

import org.jspecify.annotations.NullMarked;
