/**
 * What the records say about a player: today's shares in, on and off, points per round, whether they change, which of
 * several ways to throw is better, and how unusual a total was. Every number comes with a range.
 *
 * <p>A bag is kept (on or in) or not; a kept bag is in or not. Either has a logit that is the sum of a level that drifts
 * as a random walk over days, effects of the day and of the run (which move both logits, and may move them together),
 * of the bag set and of the bag set with the approach, all with learned variances, and of approach, face, board, setting,
 * conditions and drill, with weak priors. Bags of which only those in were counted inform the product of both chances.
 * {@link boardside.engine.skill.Log} lays this out, {@link boardside.engine.skill.Laplace} approximates the marginal
 * likelihood on the sparse factor of {@link boardside.engine.skill.Arrow}, {@link boardside.engine.skill.Fit} learns the
 * variances and keeps several values of them, so that what is not known of them reaches every range, and {@link
 * boardside.engine.skill.Draws} from the joint posterior carry it into the answers. {@code docs/skill.md} says why.
 *
 * <p>Callers ask {@link boardside.engine.skill.Skill} and know nothing of how it answers.
 */
@NullMarked
package boardside.engine.skill;

import org.jspecify.annotations.NullMarked;
