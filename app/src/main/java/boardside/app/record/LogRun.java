package boardside.app.record;

import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Side;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A run read from a log kept elsewhere, to be stored as a whole.
 *
 * @param id any non-blank text, unique for the player
 * @param session any non-blank text
 * @param opponent a name, or empty where nothing is said
 * @param target points to reach, or null where nothing is said
 * @param game 1, 2, ..., or null where nothing is said
 * @param trial id of a trial, or empty where nothing is said
 * @param warmUp kept but not counted
 * @param source where it was first met
 * @param rounds by number and side
 */
public record LogRun(
        String id,
        String session,
        Drill drill,
        Moment start,
        String opponent,
        @Nullable Integer target,
        @Nullable Integer game,
        String trial,
        boolean warmUp,
        Source source,
        List<LogRound> rounds) {
    /** Lists copied. */
    public LogRun {
        rounds = List.copyOf(rounds);
    }

    /** One side of one round. */
    public record LogRound(int number, Side side, List<LogLine> lines) {
        /** Lists copied. */
        public LogRound {
            lines = List.copyOf(lines);
        }
    }

    /**
     * Bags of one set and face.
     *
     * @param line its {@code bag} is the name of the bag set, not yet its id
     */
    public record LogLine(Line line, Source source) {}

    /** A place in a log: which file, and which line of it, from 1. */
    public record Source(String file, int line) {}
}
