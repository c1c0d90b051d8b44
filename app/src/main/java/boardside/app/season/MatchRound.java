package boardside.app.season;

import boardside.engine.rules.Word;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A round of a game of a match, as it came in.
 *
 * @param game number of the game, 1 or more
 * @param side who threw it
 * @param number of the round, 1 or more
 * @param op the client's id of what last set it
 * @param in bags in
 * @param on bags on the board
 * @param off bags off
 * @param thrownAt when it was tapped, by the server's clock as far as the phone's could be set against it; null where it was
 *     typed in without a time
 * @param receivedAt when the server first had it
 * @param way how it came in
 */
public record MatchRound(
        int game,
        MatchSide side,
        int number,
        String op,
        int in,
        int on,
        int off,
        @Nullable Instant thrownAt,
        Instant receivedAt,
        Way way) {
    /** What comes later than this was kept on the phone and is marked as sent late. */
    public static final Duration LATE = Duration.ofSeconds(60);

    /** Four bags are not thrown in less: two rounds of one side closer together were typed in. */
    public static final Duration QUICKEST = Duration.ofSeconds(8);

    /** How long a round may be set right as part of throwing; later changes are shown and logged. */
    public static final Duration GRACE = Duration.ofMinutes(2);

    private static final int MOST_BAGS = 4;

    /** Checked. */
    public MatchRound {
        if (!(game >= 1 && number >= 1)) {
            throw new IllegalArgumentException("games and rounds are numbered from 1, not " + game + " and " + number);
        }
        if (!(in >= 0 && on >= 0 && off >= 0 && in + on + off <= MOST_BAGS)) {
            throw new IllegalArgumentException("a round has at most four bags, not " + in + "-" + on + "-" + off);
        }
    }

    /** How a round came in. */
    public enum Way implements Word {
        /** Sent as it was thrown. */
        LIVE,
        /** Kept on the phone through a failure of the network, and sent later with its own time. */
        LATE,
        /** Typed in afterwards. */
        TYPED
    }

    /**
     * How a round came in, by when it was tapped and when it was received.
     *
     * @param thrownAt by the server's clock, or null where it carries no time
     * @param before when this side's round before it was tapped, or null where there is none
     */
    public static Way way(@Nullable Instant thrownAt, Instant receivedAt, @Nullable Instant before) {
        if (thrownAt == null) {
            return Way.TYPED;
        }
        if (before != null && Duration.between(before, thrownAt).abs().compareTo(QUICKEST) < 0) {
            return Way.TYPED;
        }
        return Duration.between(thrownAt, receivedAt).compareTo(LATE) > 0 ? Way.LATE : Way.LIVE;
    }

    /** Points before cancellation. */
    public int points() {
        return 3 * in + on;
    }

    /** Bags in, on and off, as 3-1-0. */
    public String counts() {
        return in + "-" + on + "-" + off;
    }

    /** Whether it has the bags of another. */
    public boolean sameBags(MatchRound other) {
        return in == other.in && on == other.on && off == other.off;
    }

    /** The same with the bags of another, and by what set them. */
    public MatchRound withBagsOf(MatchRound other) {
        return new MatchRound(game, side, number, other.op, other.in, other.on, other.off, thrownAt, receivedAt, way);
    }
}
