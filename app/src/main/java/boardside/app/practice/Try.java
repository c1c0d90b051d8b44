package boardside.app.practice;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import org.jspecify.annotations.Nullable;

/**
 * One bag thrown at a target or in a situation, with whether it did what it was to do.
 *
 * @param number 1, 2, ... within the run
 * @param op the client's id (UUIDv7) of the upload that last set it
 * @param played what was tried, or null once it was taken back
 */
public record Try(int number, String op, @Nullable Played played) {
    /** Checked. */
    public Try {
        if (!(number >= 1 && number <= 100_000)) {
            throw new IllegalArgumentException("tries are numbered from 1, not " + number);
        }
    }

    /**
     * What was tried, and what came of it.
     *
     * @param side who threw: me, or versus for the other who takes turns
     * @param shot the shot called
     * @param target the part of the board to reach; null where the shot is not to lie anywhere
     * @param position what lay on the board before
     * @param situation id of the situation it was set up from, or empty
     * @param chain where it stands in a chain of shots, or null where it stands alone
     * @param byHand whether the bags on the board were laid there rather than thrown
     * @param worked whether the shot did what it was to do
     * @param rest where the bag ended, or null where that was not kept
     * @param how what was thrown how
     * @param at when, ISO-8601 with offset, or empty
     */
    public record Played(
            Side side,
            Shot shot,
            @Nullable Target target,
            Position position,
            String situation,
            @Nullable Link chain,
            boolean byHand,
            boolean worked,
            @Nullable Rest rest,
            How how,
            String at) {
        /** Checked. */
        public Played {
            if (side != Side.ME && side != Side.VERSUS) {
                throw new IllegalArgumentException("a try is of me or versus, not " + side.word());
            }
            if (shot.placed() && target == null) {
                throw new IllegalArgumentException("a " + shot.word() + " needs a target; call depth and lane");
            }
        }
    }

    /**
     * A step of a chain.
     *
     * @param go which go at the chain in this run, from 1
     * @param step which shot of the chain, 1..{@code steps}
     * @param steps shots in the chain
     */
    public record Link(int go, int step, int steps) {
        /** Checked. */
        public Link {
            if (!(go >= 1 && step >= 1 && step <= steps && steps <= MOST_STEPS)) {
                throw new IllegalArgumentException("a chain has 1 to " + MOST_STEPS
                        + " shots, tried from the first on, not " + step + " of " + steps);
            }
        }
    }

    /** Shots in the longest chain. */
    public static final int MOST_STEPS = 6;

    /**
     * Where a bag ended.
     *
     * @param outcome in, on or off
     * @param miss left, right, short or long for a bag that is off, or empty
     * @param spot where it rests, or null where that was not kept; only of a bag on the board
     */
    public record Rest(
            Outcome outcome, String miss, @Nullable Spot spot) {
        /** Checked. */
        public Rest {
            if (spot != null && (outcome != Outcome.ON || spot.inHole())) {
                throw new IllegalArgumentException(
                        "only a bag that rests on the board has a spot there, outside the hole");
            }
        }
    }

    /** What was thrown how; unnamed bags are empty. */
    public record How(
            String bag,
            @Nullable Face face,
            @Nullable Approach approach,
            BoardKind board,
            Setting setting,
            @Nullable Conditions conditions) {}
}
