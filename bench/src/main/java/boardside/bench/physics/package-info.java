/**
 * Throws: the engine's simulator beside general-purpose 2D engines that are given the same friction and hole rules, and
 * beside fine steps of the same contact model.
 */
@NullMarked
package boardside.bench.physics;

import org.jspecify.annotations.NullMarked;
