package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.skill.Skill;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

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

    /** Rounds that somebody must have been seen to throw before anything is said of them. */
    public static final int LEAST_ROUNDS = 10;

    /**
     * Somebody by name: another player of the same account or household, else somebody whose rounds were recorded in games and duels before.
     *
     * @param me whose games those are
     * @param skills what is known of a player of the store
     * @return empty where too little is known
     */
    public static Optional<RoundDistribution> named(
            Records records, Player me, String name, Function<Player, Skill> skills) {
        Optional<RoundDistribution> known = records.household(me.id()).stream()
                .filter(other -> other.id() != me.id() && other.name().equals(name))
                .findFirst()
                .flatMap(other -> skills.apply(other).chances())
                .map(chances -> RoundDistribution.of(chances.likely()));
        return known.or(() -> seen(records.theirFinishes(me.id(), name)));
    }

    private static Optional<RoundDistribution> seen(double[] finishes) {
        return Arrays.stream(finishes).sum() < LEAST_ROUNDS
                ? Optional.empty()
                : Optional.of(RoundDistribution.ofFinishes(finishes));
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
