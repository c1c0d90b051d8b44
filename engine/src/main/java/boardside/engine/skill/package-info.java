/**
 * What the records say about a player: today's shares in, on and off, points per round, whether they change, which of
 * several ways to throw is better, and how unusual a total was. Every number comes with a range.
 *
 * <p>The model behind the answers is the simplest that is honest. Bags are independent within a day; days differ by more
 * than chance, and the ranges are widened by as much as the records show; nothing is adjusted for anything else. It will
 * be replaced by a fuller one behind the same questions, so callers ask {@link boardside.engine.skill.Skill} and know
 * nothing of how it answers.
 */
@NullMarked
package boardside.engine.skill;

import org.jspecify.annotations.NullMarked;
