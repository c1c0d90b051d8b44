package boardside.app.practice;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import org.jspecify.annotations.Nullable;

/**
 * Bags of one set and face, thrown by one side in one round.
 *
 * @param bag id of the bag set, or empty
 * @param face the face down, or null
 * @param approach the approach, or null
 * @param board the kind of board
 * @param setting what was at stake
 * @param conditions how the boards played, or null
 * @param ghost the ghost's points in the round, 0..12, or null
 * @param thrown bags thrown, 0..100
 * @param in bags in, or null where nothing but the bags thrown was counted
 * @param on bags on, or null where only the bags in were counted
 * @param off bags off, null exactly where {@code on} is
 * @param misses where bags that missed went, as far as recorded
 * @param at the instant, ISO-8601 with offset, or empty
 * @param note free text, or empty
 */
public record Line(
        String bag,
        @Nullable Face face,
        @Nullable Approach approach,
        BoardKind board,
        Setting setting,
        @Nullable Conditions conditions,
        @Nullable Integer ghost,
        int thrown,
        @Nullable Integer in,
        @Nullable Integer on,
        @Nullable Integer off,
        Misses misses,
        String at,
        String note) {
    /**
     * Checks that the counts agree.
     *
     * @throws IllegalArgumentException naming the counts that disagree
     */
    public Line {
        if (!(thrown >= 0 && thrown <= 100)) {
            throw new IllegalArgumentException("0 to 100 bags thrown, not " + thrown);
        }
        if ((on == null) != (off == null)) {
            throw new IllegalArgumentException("give both on and off, or neither");
        }
        if (in != null && !(in >= 0 && in <= thrown)) {
            throw new IllegalArgumentException("bags in lie between 0 and the " + thrown + " thrown, not " + in);
        }
        if (on != null && off != null) {
            if (in == null) {
                throw new IllegalArgumentException("on and off were counted, so give in, too");
            }
            if (!(on >= 0 && off >= 0 && in + on + off == thrown)) {
                throw new IllegalArgumentException(
                        in + " in, " + on + " on, " + off + " off do not make the " + thrown + " bags thrown");
            }
        }
        if (ghost != null && !(ghost >= 0 && ghost <= 12)) {
            throw new IllegalArgumentException("a ghost scores 0 to 12 a round, not " + ghost);
        }
    }

    /**
     * Where bags that missed went; null where not recorded.
     *
     * @param left to the thrower's left, 0 or more
     * @param right to the thrower's right
     * @param shortOf in front
     * @param past behind
     */
    public record Misses(
            @Nullable Integer left,
            @Nullable Integer right,
            @Nullable Integer shortOf,
            @Nullable Integer past) {
        /** None recorded. */
        public static final Misses NONE = new Misses(null, null, null, null);
    }

    /** 3 in + on, or null where on was not counted. */
    public @Nullable Integer points() {
        return in == null || on == null ? null : 3 * in + on;
    }
}
