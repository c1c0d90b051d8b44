package boardside.engine.skill.simulated;

import java.util.Locale;

/**
 * A kind of player and log to draw from.
 *
 * @param rounds rounds of four in the log
 * @param span days from the first run to the last
 * @param outings days with throws, spread over the span
 * @param bags bag sets
 * @param use which bag is thrown when
 * @param drift how skill moves
 * @param effects law of the effects of bags, and of bags with an approach
 * @param bagSpread standard deviation of a bag's effect on either logit, on average over players; 0.2 makes about 0.4
 *     points a round. A player's own is uniform from a quarter of it to seven quarters
 * @param days law of good and bad days
 * @param daySpread standard deviation of a day's effect on either logit, likewise
 * @param plain whether there is nothing but bags and days: no narrow boards, leagues, faces, volume drills
 */
public record Regime(
        int rounds,
        int span,
        int outings,
        int bags,
        Use use,
        Drift drift,
        Spread effects,
        double bagSpread,
        Spread days,
        double daySpread,
        boolean plain) {

    /** Which bag is thrown when. */
    public enum Use {
        /** As often early as late. */
        EVEN,
        /** Each bag has its time: the later the log, the more of some and the less of others. */
        CONFOUNDED,
        /** Of two bags, the first is thrown 80 % in the first half, the second 80 % in the second. */
        HALVES
    }

    /** A log of so many rounds as most players keep it: an outing about every third day, three bags. */
    public static Regime usual(int rounds, Drift drift, Spread effects, double daySpread) {
        int outings = Math.max(1, Math.min(rounds / 10, 130));
        return new Regime(
                rounds,
                Math.max(0, Math.min(3 * (outings - 1), 365)),
                outings,
                3,
                Use.CONFOUNDED,
                drift,
                effects,
                0.2,
                effects,
                daySpread,
                false);
    }

    /** The same with other bags. */
    public Regime withBags(int number, double spread) {
        return new Regime(rounds, span, outings, number, use, drift, effects, spread, days, daySpread, plain);
    }

    /** Two bags, each thrown 80 % in one half of the log, a drift of 1 PPR, and nothing else but days. */
    public Regime halves() {
        return new Regime(rounds, 365, outings, 2, Use.HALVES, Drift.RISE, effects, bagSpread, days, daySpread, true);
    }

    @Override
    public String toString() {
        return rounds + " rounds, " + outings + " days, " + bags + " bags, drift " + word(drift) + ", effects "
                + word(effects) + " " + bagSpread + ", days " + daySpread + ", use " + word(use);
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
