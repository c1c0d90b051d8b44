package boardside.app.record;

import boardside.app.practice.Challenge;
import boardside.engine.league.Reach;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Race;
import boardside.engine.odds.RaceAnswer;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.Finish;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * Deals surprise challenges from a player's own numbers, each at about even odds. The same player, day and deal give the
 * same challenge: what is thrown on the day does not count for it yet.
 */
public final class Dealer {
    /** How far from even a challenge may be. */
    private static final double WIDEST = 0.17;

    private static final List<Integer> SHORT = List.of(3, 5);
    private static final List<Integer> LONG = List.of(3, 5, 10);
    private static final int LONGEST_STREAK = 5;

    private final Skill skill;
    private final List<BagChances> steps;
    private final String day;
    private final List<Challenge> dealt = new ArrayList<>();

    private Dealer(Skill skill, List<BagChances> steps, String day) {
        this.skill = skill;
        this.steps = steps;
        this.day = day;
    }

    /**
     * A challenge for a day.
     *
     * @param deal 0 for the first one, 1 for another one, and so on; after the last it begins again
     * @return empty where no records tell what is even
     */
    public static Optional<Challenge> deal(Records records, int player, LocalDate day, int deal) {
        Skill before = Skills.of(records, player, day.minusDays(1));
        Skill skill = before.chances().isPresent() ? before : Skills.of(records, player, day);
        List<Challenge> all = skill.chances()
                .map(range -> new Dealer(skill, range.steps(), day.toString()).all())
                .orElse(List.of());
        if (all.isEmpty()) {
            return Optional.empty();
        }
        // java.util.Random and Collections.shuffle are specified to the number, so that a day's order stays.
        Collections.shuffle(all, new Random(31L * day.toEpochDay() + player));
        return Optional.of(all.get(Math.floorMod(deal, all.size())));
    }

    private List<Challenge> all() {
        for (int rounds : LONG) {
            points(rounds);
            fours(rounds);
        }
        for (int rounds : SHORT) {
            int bags = Finish.BAGS * rounds;
            count(Challenge.Kind.BAGS_IN, rounds, bags, BagChances::in, true);
            count(Challenge.Kind.FEW_OFF, rounds, bags, bag -> 1 - bag.in() - bag.on(), false);
        }
        race();
        return dealt;
    }

    private void points(int rounds) {
        LeagueNight.reach(skill, rounds).ifPresent(reach -> {
            int need = 1;
            for (int points = 1; points < reach.likely().size(); points++) {
                need = nearer(
                                reach.atLeast(points).likely(),
                                reach.atLeast(need).likely())
                        ? points
                        : need;
            }
            Reach.Chance chance = reach.atLeast(need);
            add(Challenge.Kind.POINTS, rounds, 0, need, new double[] {chance.likely(), chance.low(), chance.high()});
        });
    }

    private static boolean nearer(double one, double other) {
        return Math.abs(one - 0.5) < Math.abs(other - 0.5);
    }

    /** The chance to name first, then the least and the most it may well be. */
    private double[] range(ToDoubleFunction<BagChances> chance) {
        double[] all = steps.stream().mapToDouble(chance).toArray();
        double low = all[0];
        double high = all[0];
        for (double one : all) {
            low = Math.min(low, one);
            high = Math.max(high, one);
        }
        return new double[] {all[0], low, high};
    }

    private void count(Challenge.Kind kind, int rounds, int bags, ToDoubleFunction<BagChances> chance, boolean orMore) {
        int best = orMore ? 1 : 0;
        double[] found = null;
        for (int need = best; need < bags; need++) {
            int number = need;
            double[] now = range(bag -> {
                double p = Math.min(1, Math.max(0, chance.applyAsDouble(bag)));
                return orMore ? atLeast(bags, p, number) : 1 - atLeast(bags, p, number + 1);
            });
            if (found == null || nearer(now[0], found[0])) {
                found = now;
                best = need;
            }
        }
        if (found != null) {
            add(kind, rounds, 0, best, found);
        }
    }

    private void fours(int rounds) {
        for (int need = 1; need <= LONGEST_STREAK; need++) {
            int number = need;
            add(
                    Challenge.Kind.FOUR_BAGGERS,
                    rounds,
                    0,
                    need,
                    range(bag -> atLeast(rounds, Math.pow(bag.in(), Finish.BAGS), number)));
        }
    }

    private void race() {
        int best = 0;
        double[] found = null;
        for (int ghost = 0; ghost <= RoundDistribution.MOST; ghost++) {
            int points = ghost;
            double[] now = range(bag -> win(bag, points));
            if (found == null || nearer(now[0], found[0])) {
                found = now;
                best = ghost;
            }
        }
        if (found != null) {
            add(Challenge.Kind.RACE, 0, best, 1, found);
        }
    }

    private static double win(BagChances bag, int ghost) {
        RaceAnswer answer = Race.solve(GameRules.STANDARD, RoundDistribution.of(bag), RoundDistribution.ghost(ghost))
                .from(0, 0, true);
        return answer instanceof RaceAnswer.Ends ends ? ends.winProbability() : 0.5;
    }

    private void add(Challenge.Kind kind, int rounds, int ghost, int need, double[] chance) {
        if (Math.abs(chance[0] - 0.5) <= WIDEST) {
            dealt.add(new Challenge(
                    "", day, kind, rounds, ghost, need, chance[0], Math.max(0, chance[1]), Math.min(1, chance[2]), ""));
        }
    }

    /** The chance of that many or more of n, each by itself with chance p. */
    static double atLeast(int n, double p, int least) {
        double[] chances = new double[n + 1];
        chances[0] = 1;
        for (int i = 0; i < n; i++) {
            for (int k = i + 1; k > 0; k--) {
                chances[k] = chances[k] * (1 - p) + chances[k - 1] * p;
            }
            chances[0] *= 1 - p;
        }
        double sum = 0;
        for (int k = Math.max(0, least); k <= n; k++) {
            sum += chances[k];
        }
        return Math.min(1, sum);
    }
}
