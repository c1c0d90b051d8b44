package boardside.engine.plan;

import boardside.engine.rules.Word;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Something a player wants to reach.
 *
 * @param kind what is counted
 * @param value how much of it: bags in of a hundred, a level, points a round, points of ten rounds
 * @param by the day by which
 */
public record Goal(Kind kind, double value, LocalDate by) {
    /** What is counted. */
    public enum Kind implements Word {
        /** Bags in of a hundred, on an ordinary day. */
        IN(1, 100),
        /** The ghost beaten half the time. */
        LEVEL(1, 12),
        /** Points a round above those of the season before. */
        SEASON(0, 12),
        /** Ten rounds of four with so many points, once. */
        TOTAL(1, 120);

        private final double least;
        private final double most;

        Kind(double least, double most) {
            this.least = least;
            this.most = most;
        }
    }

    /** A goal farther ahead than this many years says nothing. */
    private static final int YEARS = 3;

    /**
     * Checked.
     *
     * @throws IllegalArgumentException with the first of {@link #faults} that does not depend on the day
     */
    public Goal {
        if (!(value >= kind.least && value <= kind.most)) {
            throw new IllegalArgumentException(range(kind, value));
        }
    }

    private static String range(Kind kind, double value) {
        String what = switch (kind) {
            case IN -> "bags in of a hundred are 1 to 100";
            case LEVEL -> "a level is 1 to 12";
            case SEASON -> "points a round are 0 to 12";
            case TOTAL -> "ten rounds of four make 1 to 120 points";
        };
        return what + ", not " + (value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value));
    }

    /** What is wrong with such a goal on a day, in words that say what to give instead; empty where nothing is. */
    public static List<String> faults(Kind kind, double value, LocalDate by, LocalDate today) {
        List<String> faults = new ArrayList<>();
        if (!(value >= kind.least && value <= kind.most)) {
            faults.add(range(kind, value));
        }
        if (!by.isAfter(today)) {
            faults.add("a goal is for a day to come, not " + by);
        } else if (by.isAfter(today.plusYears(YEARS))) {
            faults.add("a goal is for a day within " + YEARS + " years, not " + by);
        }
        return faults;
    }

    /** Whether a block of such an activity may serve it. */
    public boolean servedBy(Activity activity) {
        return switch (activity) {
            case VOLUME, TOTAL -> true;
            case RACE, CLIMB, DUEL -> themes().contains(Theme.Kind.PRESSURE);
            default -> false;
        };
    }

    /** Themes of a plan that serve it. */
    public Set<Theme.Kind> themes() {
        return switch (kind) {
            case IN -> Set.of(Theme.Kind.FINISH);
            case LEVEL -> Set.of(Theme.Kind.FINISH, Theme.Kind.CONTROL, Theme.Kind.PRESSURE);
            case SEASON, TOTAL -> Set.of(Theme.Kind.FINISH, Theme.Kind.CONTROL);
        };
    }
}
