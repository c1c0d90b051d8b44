package boardside.engine.plan;

import java.util.List;
import java.util.Map;

/**
 * How a player practises.
 *
 * @param bags names of their bag sets, the one thrown most of late first
 * @param pace bags a minute by activity, as far as known, each above 0
 * @param refused by {@link Block#choice()}, how often it was refused of late: each refusal counts 1, and half after 28 days
 * @param usualSession bags of a usual day with bags, 0 where unknown
 * @param leftThisWeek bags until the week has risen sharply over the usual one, 0 or more; infinite where no usual one is known
 */
public record Habits(
        List<String> bags,
        Map<Activity, Double> pace,
        Map<String, Double> refused,
        double usualSession,
        double leftThisWeek) {
    /** Ten rounds of four in six to eight minutes: common practice, no source. */
    static final double USUAL_PACE = 40.0 / 7;

    /** Walking up, picking up and walking back takes so many minutes of a round of four at that pace; chosen. */
    private static final double COLLECTING = 26.0 / 60;

    private static final double PER_BAG = 4.0 / 60;

    /** Bags that a plan may take however much was thrown this week: a light day, not none (twenty minutes). Chosen. */
    private static final int LIGHT = 120;

    /** A session this much over a usual one is much; the player's energy moves it. Chosen. */
    private static final double MORE = 1.25;

    /** Copied. */
    public Habits {
        bags = List.copyOf(bags);
        pace = Map.copyOf(pace);
        refused = Map.copyOf(refused);
        if (!(usualSession >= 0 && leftThisWeek >= 0)) {
            throw new IllegalArgumentException("bags of a session and of a week are 0 or more");
        }
    }

    /** Nothing known. */
    public static final Habits NONE = new Habits(List.of(), Map.of(), Map.of(), 0, Double.POSITIVE_INFINITY);

    /** Bags a minute: the player's own pace, else the usual one for so many bag sets. */
    double pace(Activity activity, int bagSets) {
        Double own = pace.get(activity);
        if (own != null) {
            return own;
        }
        double fours = 4.0 * bagSets / (COLLECTING + 4.0 * bagSets * PER_BAG);
        double of = switch (activity) {
            // Targets are called and tapped; bags are set up again for each try; others throw in turn.
            case PLACEMENT -> 0.8;
            case SITUATION, DUEL -> 0.6;
            case SLIDE -> 0.5;
            default -> 1;
        };
        return of * fours;
    }

    /** The most bags a plan may take. */
    int mostBags(Energy energy) {
        double session =
                Math.max(energy.mostBags(), MORE * usualSession * energy.mostBags() / Energy.NORMAL.mostBags());
        return (int) Math.max(LIGHT, Math.min(session, leftThisWeek));
    }
}
