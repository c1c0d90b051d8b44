package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.skill.Skill;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Opponents that come out of the records: another player, and one's own past. */
public final class Opponents {
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.ENGLISH);

    private Opponents() {}

    /**
     * A player at the likeliest chances of one bag.
     *
     * @throws Failure.NotFound without rounds that count points
     */
    public static RoundDistribution player(Player player, Skill skill) {
        return skill.chances()
                .map(chances -> RoundDistribution.of(chances.likely()))
                .orElseThrow(() -> new Failure.NotFound(
                        player.name() + " has no counted rounds yet, so there is nothing to set against."));
    }

    /**
     * The full rounds that a player threw in a month, as they were thrown.
     *
     * @throws Failure.NotFound without such rounds
     */
    public static RoundDistribution month(Player player, Skill skill, YearMonth month) {
        return skill.rounds(month)
                .orElseThrow(() -> new Failure.NotFound(
                        "There are no full rounds of " + player.name() + " in " + MONTH.format(month) + "."));
    }
}
