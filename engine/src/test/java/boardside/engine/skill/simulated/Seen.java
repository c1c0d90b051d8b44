package boardside.engine.skill.simulated;

import boardside.engine.skill.ComparisonAnswer;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.Difference;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Skill;
import boardside.engine.skill.TotalForecast;
import boardside.engine.skill.Trait;
import boardside.engine.skill.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.jspecify.annotations.Nullable;

/**
 * What was said of one simulated player, held against the truth.
 *
 * @param points whether the range of points per round held it
 * @param change whether the range of the change over 30 days held it
 * @param quarter likewise over 90 days
 * @param total whether the next total of ten rounds lay in the middle 90 % of its forecast
 * @param bags what was said of the bags, or null where fewer than two were compared
 * @param stated chances, and whether what they were of came true
 */
public record Seen(
        boolean points,
        boolean change,
        boolean quarter,
        boolean total,
        @Nullable Bags bags,
        List<Stated> stated) {
    /**
     * What was said of bags.
     *
     * @param difference whether the range of the difference between the first two, by number, held it
     * @param signal whether the verdict was signal
     * @param adjusted the estimated difference less the true one
     * @param raw the difference of plain averages less the true one
     */
    public record Bags(boolean difference, boolean signal, double adjusted, double raw) {
        /** Draws a player and asks about bags alone; null where fewer than two were compared. */
        public static @Nullable Bags of(Regime regime, long seed) {
            SimulatedPlayer player = new SimulatedPlayer(regime, RandomSource.XO_RO_SHI_RO_128_PP.create(seed));
            Skill skill = Skill.of(player.log(), SimulatedPlayer.TODAY);
            return bags(skill, player, skill.compare(List.of(Trait.BAG)), new ArrayList<>());
        }
    }

    /** A chance that was named. */
    public record Stated(Of of, double chance, boolean happened) {}

    /** What a chance was of. */
    public enum Of {
        /** That a bag set is the best. */
        BEST,
        /** That form has risen. */
        BETTER,
        /** That the next ten rounds make so many points. */
        TOTAL
    }

    /** Draws a player, asks the model, and compares. The same seed gives the same result. */
    public static Seen of(Regime regime, long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        SimulatedPlayer player = new SimulatedPlayer(regime, random);
        Skill skill = Skill.of(player.log(), SimulatedPlayer.TODAY);
        Form form = (Form) skill.form(30);
        List<Stated> stated = new ArrayList<>();
        double now = player.points(SimulatedPlayer.TODAY);
        double change = now - player.points(SimulatedPlayer.TODAY.minusDays(30));
        double quarter = now - player.points(SimulatedPlayer.TODAY.minusDays(90));
        Form overQuarter = (Form) skill.form(90);
        if (Math.abs(change) > 1e-9) {
            stated.add(new Stated(Of.BETTER, form.trend().probabilityBetter(), change > 0));
        }
        Bags bags = bags(skill, player, skill.compare(List.of(Trait.BAG)), stated);
        boolean total = true;
        if (skill.total(10).isPresent()) {
            TotalForecast forecast = skill.total(10).get();
            int next = player.nextTotal(10);
            // Totals are whole: at the ends of the range a coin with the right odds decides.
            double place = forecast.atMost(next - 1)
                    + random.nextDouble() * forecast.chances().get(next);
            total = place > 0.05 && place < 0.95;
            for (double share : new double[] {0.15, 0.5, 0.85}) {
                int points = forecast.quantile(share);
                stated.add(new Stated(Of.TOTAL, forecast.atLeast(points), next >= points));
            }
        }
        return new Seen(
                form.pointsPerRound().contains(now),
                form.trend().change().contains(change),
                overQuarter.trend().change().contains(quarter),
                total,
                bags,
                stated);
    }

    private static @Nullable Bags bags(
            Skill skill, SimulatedPlayer player, ComparisonAnswer answer, List<Stated> stated) {
        if (!(answer instanceof Comparison comparison) || comparison.groups().size() < 2) {
            return null;
        }
        List<Integer> numbers = IntStream.range(0, player.bags())
                .filter(number -> group(comparison, player, number) != null)
                .boxed()
                .toList();
        List<Double> truths = numbers.stream().map(player::points).toList();
        double best = truths.stream().mapToDouble(d -> d).max().orElseThrow();
        // Bags that are all the same have no best one.
        if (truths.stream().filter(truth -> truth > best - 1e-9).count() == 1) {
            for (int i = 0; i < truths.size(); i++) {
                Group group = Objects.requireNonNull(group(comparison, player, numbers.get(i)));
                stated.add(new Stated(Of.BEST, group.probabilityBest(), truths.get(i) == best));
            }
        }
        int a = numbers.get(0);
        int b = numbers.get(1);
        Difference difference = skill.difference(
                        List.of(Trait.BAG), List.of(player.bagName(b)), List.of(player.bagName(a)))
                .orElseThrow();
        double truth = truths.get(1) - truths.get(0);
        return new Bags(
                difference.lead().contains(truth),
                comparison.verdict() == Verdict.SIGNAL,
                difference.lead().estimate() - truth,
                player.raw(b) - player.raw(a) - truth);
    }

    private static @Nullable Group group(Comparison comparison, SimulatedPlayer player, int number) {
        return comparison.groups().stream()
                .filter(group -> group.key().equals(List.of(player.bagName(number))))
                .findFirst()
                .orElse(null);
    }
}
