package boardside.engine.league;

import boardside.engine.rules.Word;
import java.util.ArrayList;
import java.util.List;

/**
 * A round robin: who meets whom in which week. Every pair meets once, or twice with the first throw exchanged; nobody plays
 * twice in a week; with an odd number of players one has a bye each week. Immutable.
 *
 * <p>The order is that of the Berger tables (FIDE Handbook, C.05, annex 1): with n players, n even, and all numbers taken
 * modulo n - 1 as 1..n - 1, in week r the last player meets p = (r + 1) / 2 if r is odd (p throws first), else
 * p = (n + r) / 2 (the last player throws first); for k = 1, 2, ... player p + k throws first against p - k. With an odd
 * number the bye takes the last place.
 *
 * @param players how many, {@value #FEWEST} to {@value #MOST}; they are numbered from 1
 * @param weeks what is played in each week, the first first
 */
public record Schedule(int players, List<List<Pairing>> weeks) {
    /** The fewest players of a league. */
    public static final int FEWEST = 2;

    /** The most players of one division: a season of more would take longer than ten years of weeks. */
    public static final int MOST = 500;

    /** Lists copied. */
    public Schedule {
        if (!(players >= FEWEST && players <= MOST)) {
            throw new IllegalArgumentException("a league has " + FEWEST + " to " + MOST + " players, not " + players);
        }
        weeks = weeks.stream().map(List::copyOf).toList();
    }

    /**
     * Two who meet.
     *
     * @param first number of the player named first, who throws first; 1 or more
     * @param second number of the other
     */
    public record Pairing(int first, int second) {
        /** The same with the first throw exchanged. */
        public Pairing turned() {
            return new Pairing(second, first);
        }
    }

    /** How often every pair meets. */
    public enum Meetings implements Word {
        /** Once. */
        SINGLE,
        /** Twice: the second time in the same order of weeks, with the first throw exchanged. */
        DOUBLE
    }

    /**
     * The schedule of a league.
     *
     * @param players how many, {@value #FEWEST} to {@value #MOST}
     * @throws IllegalArgumentException if there are fewer or more
     */
    public static Schedule of(int players, Meetings meetings) {
        List<List<Pairing>> weeks = new ArrayList<>();
        int even = players + players % 2;
        for (int week = 1; week < even; week++) {
            weeks.add(week(players, even, week));
        }
        if (meetings == Meetings.DOUBLE) {
            for (List<Pairing> week : List.copyOf(weeks)) {
                weeks.add(week.stream().map(Pairing::turned).toList());
            }
        }
        return new Schedule(players, weeks);
    }

    private static List<Pairing> week(int players, int even, int week) {
        List<Pairing> pairings = new ArrayList<>();
        boolean odd = week % 2 == 1;
        int middle = odd ? (week + 1) / 2 : (even + week) / 2;
        if (players == even) {
            pairings.add(odd ? new Pairing(middle, even) : new Pairing(even, middle));
        }
        for (int k = 1; k < even / 2; k++) {
            pairings.add(new Pairing(around(middle + k, even - 1), around(middle - k, even - 1)));
        }
        return pairings;
    }

    /** A number modulo n, as 1..n. */
    private static int around(int number, int n) {
        return Math.floorMod(number - 1, n) + 1;
    }

    /** Who has a bye in a week, 0 if nobody has. */
    public int bye(int week) {
        int sum = players * (players + 1) / 2;
        for (Pairing pairing : weeks.get(week - 1)) {
            sum -= pairing.first() + pairing.second();
        }
        return sum;
    }
}
