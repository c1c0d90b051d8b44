package boardside.app.record;

import boardside.engine.skill.DayForm;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.OptionalDouble;

/** A season is the twelve months up to today; the one before are the twelve months before those. */
public final class Seasons {
    private static final int DAYS = 365;

    private Seasons() {}

    /** Points a round of the season before, as they were thrown; where it holds none, of the season now. */
    public static OptionalDouble before(Skill skill, LocalDate today) {
        OptionalDouble found = OptionalDouble.empty();
        for (DayForm season : skill.history(DAYS, today.minusDays(2L * DAYS))) {
            boolean before = season.to().isBefore(today);
            if (before || found.isEmpty()) {
                found = OptionalDouble.of(season.pointsPerRound().estimate());
            }
            if (before) {
                return found;
            }
        }
        return found;
    }
}
