package boardside.app.practice;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Face;
import boardside.engine.rules.Tally;
import org.jspecify.annotations.Nullable;

/**
 * What a throw model reads of counts: one bag set's face on one kind of board. Misses are told only of lines whose sides
 * agree with the bags off.
 *
 * @param bag id of the bag set, or empty
 * @param face the face, or null
 * @param board the kind of board
 * @param known bags whose in, on and off were counted
 * @param left of those off, bags told to have gone left
 * @param right bags told to have gone right
 * @param shortOf bags told to have fallen short
 * @param past bags told to have gone long
 * @param notIn further bags that did not go in, on and off not counted
 * @param inOnly further bags in, on and off not counted
 */
public record ThrowTally(
        String bag,
        @Nullable Face face,
        BoardKind board,
        Tally known,
        int left,
        int right,
        int shortOf,
        int past,
        int notIn,
        int inOnly) {}
