package boardside.app.practice;

import boardside.engine.odds.LeaguePoints;
import java.time.DateTimeException;
import java.time.ZoneId;

/**
 * A league that somebody else runs and the player throws in.
 *
 * @param id any non-blank text, unique for the player; empty for a new one
 * @param name what it is called
 * @param me the player's name in its fixtures
 * @param zone the time zone its deadlines are in, an IANA name such as Europe/Berlin
 * @param games games of a match, 1..9
 * @param rounds rounds of four a game, 1..100
 * @param points what a game is worth
 * @param note free text
 * @param deleted whether it was deleted (and can be brought back)
 */
public record League(
        String id,
        String name,
        String me,
        String zone,
        int games,
        int rounds,
        LeaguePoints points,
        String note,
        boolean deleted) {
    /** Games of a match unless said. */
    public static final int USUAL_GAMES = 3;

    /** Rounds of a game unless said. */
    public static final int USUAL_ROUNDS = 10;

    /** Most games of a match. */
    public static final int MOST_GAMES = 9;

    /** Most rounds of a game. */
    public static final int MOST_ROUNDS = 100;

    /** Checked. */
    public League {
        if (!(games >= 1 && games <= MOST_GAMES)) {
            throw new IllegalArgumentException("a match has 1 to " + MOST_GAMES + " games, not " + games);
        }
        if (!(rounds >= 1 && rounds <= MOST_ROUNDS)) {
            throw new IllegalArgumentException("a game has 1 to " + MOST_ROUNDS + " rounds, not " + rounds);
        }
        try {
            ZoneId.of(zone);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                    "\"" + zone + "\" is no time zone; write it like Europe/Berlin or America/Chicago", e);
        }
    }

    /** The highest total of a game. */
    public int mostPoints() {
        return 12 * rounds;
    }

    /** The same under another id. */
    public League withId(String other) {
        return new League(other, name, me, zone, games, rounds, points, note, deleted);
    }

    /** The same, deleted or brought back. */
    public League deleted(boolean gone) {
        return new League(id, name, me, zone, games, rounds, points, note, gone);
    }
}
