/**
 * Fair comparisons: which of several bag sets, faces or approaches makes more points. Candidates are thrown in blocks,
 * each once a block, in the order of Williams squares, so that warming up, tiring and drift fall on all alike; after
 * every block the differences within blocks are held against boundaries that were calibrated by simulation, so that
 * looking often finds no winner among equals more often than it may. {@code docs/trials.md} has the design and what was
 * measured.
 *
 * <p>{@link boardside.engine.trial.Trial} answers; {@link boardside.engine.trial.BlockOrder} says who is next, {@link
 * boardside.engine.trial.Blocks} finds the blocks in what was thrown, {@link boardside.engine.trial.Outlook} says
 * beforehand how long it will take.
 */
@NullMarked
package boardside.engine.trial;

import org.jspecify.annotations.NullMarked;
