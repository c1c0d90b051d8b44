package boardside.engine.plan;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.TypicalPlayer;
import boardside.engine.odds.Worth;
import boardside.engine.rules.Finish;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What better bags are worth against the rivals that matter: {@link Worth}, averaged over them by weight. */
final class Gains {
    private static final double HUNDRED = 100;

    /** A player nobody knows is taken for one of this level, who meets a ghost of it; chosen. */
    static final int UNKNOWN_LEVEL = 4;

    private final ChanceRange range;
    private final boolean known;
    private final List<Rival> rivals;
    private final List<Worth> worths;

    private Gains(ChanceRange range, boolean known, List<Rival> rivals) {
        this.range = range;
        this.known = known;
        this.rivals = rivals;
        this.worths = List.of(range.likely(), range.low(), range.high()).stream()
                .map(this::worth)
                .toList();
    }

    static Gains of(PlayerState player) {
        BagChances typical = TypicalPlayer.ofLevel(UNKNOWN_LEVEL);
        ChanceRange range = player.form().chances().orElse(new ChanceRange(typical, typical, typical));
        List<Rival> rivals = player.rivals().isEmpty() ? List.of(Rival.ghost(UNKNOWN_LEVEL)) : player.rivals();
        return new Gains(range, player.form().chances().isPresent(), rivals);
    }

    private Worth worth(BagChances bag) {
        double weights = rivals.stream().mapToDouble(Rival::weight).sum();
        return Worth.of(
                bag,
                moved -> rivals.stream()
                        .mapToDouble(rival -> rival.weight() / weights * rival.win(moved))
                        .sum());
    }

    BagChances bag() {
        return range.likely();
    }

    ChanceRange range() {
        return range;
    }

    boolean known() {
        return known;
    }

    /** Whoever matters most. */
    Rival chief() {
        return rivals.stream().max(Comparator.comparingDouble(Rival::weight)).orElseThrow();
    }

    /** Days until the next of them. */
    double horizon() {
        return Math.max(1, rivals.stream().mapToDouble(Rival::days).min().orElse(Rival.NO_DATE));
    }

    private static double per(OptionalDouble gain) {
        return gain.orElse(0) / Worth.STEP;
    }

    private double kept() {
        return bag().in() + bag().on();
    }

    private double share() {
        return kept() > 0 ? bag().in() / kept() : 0;
    }

    /** Games in a hundred for one logit more of kept bags in. */
    double finish() {
        return HUNDRED * kept() * share() * (1 - share()) * per(worths.get(0).onToIn());
    }

    /** Games in a hundred for one logit more of bags kept. */
    double control() {
        Worth worth = worths.get(0);
        double one = share() * per(worth.offToIn()) + (1 - share()) * per(worth.offToOn());
        return HUNDRED * kept() * (1 - kept()) * one;
    }

    /** Points a round for one logit more of both. */
    double pointsPerLogit() {
        double share = share();
        double points = 2 * kept() * share * (1 - share) + (1 + 2 * share) * kept() * (1 - kept());
        return Math.max(0.1, Finish.BAGS * points);
    }

    /** Games in a hundred when every bag did what it was meant to and not the next worse. */
    double everyBag() {
        Worth worth = worths.get(0);
        return HUNDRED * Math.max(per(worth.onToIn()), per(worth.offToOn()));
    }

    /** Games more won in a hundred when one bag in a hundred goes in (or stays on), as far as is known. */
    Interval wins(boolean toIn) {
        Function<Worth, OptionalDouble> move = toIn ? Worth::onToIn : Worth::offToOn;
        double[] all = worths.stream()
                .mapToDouble(worth -> HUNDRED * move.apply(worth).orElse(0))
                .toArray();
        double low = Math.min(all[0], Math.min(all[1], all[2]));
        double high = Math.max(all[0], Math.max(all[1], all[2]));
        return new Interval(all[0], low, high);
    }
}
