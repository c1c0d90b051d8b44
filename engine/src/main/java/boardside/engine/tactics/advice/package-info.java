/**
 * Which shot to throw: candidates from what lies on the board, each pushed through the player's own throw model, the rest of
 * the round by rollouts over base policies, and the end of it by the exact odds of the game.
 *
 * <p>{@link boardside.engine.tactics.advice.Adviser} answers for one position, {@link
 * boardside.engine.tactics.advice.Playbook} for the common ones. Nothing here knows records, a clock or a global random: the
 * same question with the same number of samples gives the same digits on any number of threads.
 */
@NullMarked
package boardside.engine.tactics.advice;

import org.jspecify.annotations.NullMarked;
