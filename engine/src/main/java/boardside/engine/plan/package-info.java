/**
 * What to practise: a session out of the minutes, bag sets, boards and company at hand, chosen by a written objective
 * (docs/plan.md) that {@link boardside.engine.plan.Planner} solves exactly; and goals, with what the records foretell of
 * them. Knows no records: what a player can do, what a rival throws and what is due come in as plain values.
 */
@NullMarked
package boardside.engine.plan;

import org.jspecify.annotations.NullMarked;
