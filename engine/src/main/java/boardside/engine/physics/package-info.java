/**
 * Bags in the air and on the board: flight, landing, slide, contact, hole. One model with stated constants
 * ({@link boardside.engine.physics.Contact}, docs/physics.md), solved from event to event in closed form.
 *
 * <p>At the edges inches on the board (x to the thrower's right from the centre line, y up the board from the front edge),
 * metres a second and degrees; inside, SI. No {@code Math} function that may differ between virtual machines is used, so
 * that the same throw ends in the same bits everywhere.
 */
@NullMarked
package boardside.engine.physics;

import org.jspecify.annotations.NullMarked;
