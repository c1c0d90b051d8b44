/**
 * What lies on the board, what is thrown at it, and how often that works: positions, targets, shots and situations, and the
 * rates of placement and situation tries.
 *
 * <p>Lengths are inches on the board's surface: x to the thrower's right from the centre line, y up the board from the
 * front edge. The rates know no records: they are told tries and what worked, group by group.
 */
@NullMarked
package boardside.engine.tactics;

import org.jspecify.annotations.NullMarked;
