package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Tally;
import boardside.engine.skill.NarrowAnswer.BeforeAndAfter;
import boardside.engine.skill.NarrowAnswer.Narrow;
import boardside.engine.skill.SwingAnswer.Swing;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Why totals swing, and what the narrow board did, asked of simulated players of whom both are known. */
class QuestionsTest {
    private static final int DAYS = 300;
    private static final int ROUNDS = 10;

    private static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    /** A player who keeps 8 bags in 10 on a usual day, of which so many by log-odds go in; days differ by a deviation. */
    private record Player(IntToDoubleFunction in, double mood) {
        double[] chances(int daysAgo, ContinuousDistribution.Sampler normal) {
            double kept = logistic(Math.log(4) + mood * normal.sample());
            double in = kept * logistic(in().applyAsDouble(daysAgo) + mood * normal.sample());
            return new double[] {in, kept - in};
        }
    }

    private static Swing swing(Player player, long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        ContinuousDistribution.Sampler normal = NormalDistribution.of(0, 1).createSampler(random);
        List<RunCount> counts = new ArrayList<>();
        for (int daysAgo = DAYS; daysAgo > 0; daysAgo--) {
            double[] chances = player.chances(daysAgo, normal);
            counts.add(Practice.thrown(random, daysAgo, "red", chances[0], chances[1], ROUNDS));
        }
        return (Swing) Skill.of(counts, Practice.TODAY).swing();
    }

    /** Variance of totals that are thrown anew on every one of those days, and the part of it that bags alone make. */
    private static double[] variance(Player player) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(99);
        ContinuousDistribution.Sampler normal = NormalDistribution.of(0, 1).createSampler(random);
        double luck = 0;
        double sum = 0;
        double squares = 0;
        int many = 1000;
        for (int daysAgo = DAYS; daysAgo > 0; daysAgo--) {
            for (int i = 0; i < many; i++) {
                double[] c = player.chances(daysAgo, normal);
                double mean = 3 * c[0] + c[1];
                sum += mean / (DAYS * many);
                squares += mean * mean / (DAYS * many);
                luck += 4 * ROUNDS * (9 * c[0] + c[1] - mean * mean) / (DAYS * many);
            }
        }
        return new double[] {16 * ROUNDS * ROUNDS * (squares - sum * sum) + luck, luck};
    }

    /** A range holds what it is of nine times in ten: of eight players, fewer than six would hardly happen. */
    @Test
    void goodAndBadDaysAreToldFromLuck() {
        Player moody = new Player(daysAgo -> 0, 0.3);
        double[] truth = variance(moody);
        double luck = truth[1] / truth[0];
        int held = 0;
        double deviations = 0;
        double lucks = 0;
        double days = 0;
        int players = 8;
        for (int seed = 1; seed <= players; seed++) {
            Swing swing = swing(moody, seed);
            held += swing.luck().contains(luck) ? 1 : 0;
            deviations += swing.deviation().estimate() / players;
            lucks += swing.luck().estimate() / players;
            days += swing.days().estimate() / players;
            assertThat(swing.change().estimate()).isLessThan(0.05);
        }
        assertThat(held).isGreaterThanOrEqualTo(6);
        assertThat(deviations).isCloseTo(Math.sqrt(truth[0]), within(0.05 * Math.sqrt(truth[0])));
        assertThat(lucks).isCloseTo(luck, within(0.05));
        assertThat(days).isCloseTo(1 - luck, within(0.05));
    }

    /** Shares cannot lie below nothing, so that nothing is found to be a little. */
    @Test
    void aSteadyPlayerIsLucky() {
        Swing steady = swing(new Player(daysAgo -> 0, 0), 7);
        assertThat(steady.rounds()).isEqualTo(ROUNDS);
        assertThat(steady.luck().estimate()).isGreaterThan(0.8);
        assertThat(steady.luck().high()).isGreaterThan(0.9);
        assertThat(steady.change().estimate()).isLessThan(0.05);
        assertThat(steady.sentence()).contains("totals of 10 rounds");
    }

    /** From 27 to 73 % of kept bags in, by the same step each day. */
    @Test
    void aRisingPlayerChanges() {
        Player player = new Player(daysAgo -> 1 - daysAgo * 2.0 / DAYS, 0);
        double[] truth = variance(player);
        double change = 1 - truth[1] / truth[0];
        int held = 0;
        double changes = 0;
        double deviations = 0;
        int players = 4;
        for (int seed = 1; seed <= players; seed++) {
            Swing rising = swing(player, seed);
            held += rising.change().contains(change) ? 1 : 0;
            changes += rising.change().estimate() / players;
            deviations += rising.deviation().estimate() / players;
            assertThat(rising.change().estimate())
                    .isGreaterThan(4 * rising.days().estimate());
        }
        assertThat(held).isGreaterThanOrEqualTo(3);
        assertThat(changes).isCloseTo(change, within(0.04));
        assertThat(deviations).isCloseTo(Math.sqrt(truth[0]), within(0.05 * Math.sqrt(truth[0])));
    }

    private static BeforeAndAfter trained(IntToDoubleFunction in) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(3);
        List<RunCount> counts = new ArrayList<>();
        for (int daysAgo = 200; daysAgo > 0; daysAgo--) {
            double chance = in.applyAsDouble(daysAgo);
            counts.add(Practice.thrown(random, daysAgo, "red", chance, 0.3, 2 * ROUNDS));
            if (daysAgo <= 100 && daysAgo % 10 == 0) {
                counts.add(Practice.run(daysAgo, "slim", BoardKind.NARROW, new Tally(10, 10, 20), Practice.none()));
            }
        }
        return (BeforeAndAfter) ((Narrow) Skill.of(counts, Practice.TODAY).narrow()).training();
    }

    /** A bag is worth 3 in the hole; four a round. Level before the narrow board and a tenth more in since, or the reverse. */
    @Test
    void progressBeforeAndSinceTheNarrowBoardIsTold() {
        double gained = 4 * 3 * 0.2;
        BeforeAndAfter since = trained(daysAgo -> daysAgo > 100 ? 0.3 : 0.5 - daysAgo * 0.2 / 100);
        assertThat(since.from()).isEqualTo(Practice.TODAY.minusDays(100));
        assertThat(since.days()).isEqualTo(99);
        assertThat(since.before().estimate()).isCloseTo(0, within(0.5));
        assertThat(since.after().estimate()).isCloseTo(gained, within(0.6));
        assertThat(since.probabilityFaster()).isGreaterThan(0.95);
        BeforeAndAfter before = trained(daysAgo -> daysAgo <= 100 ? 0.5 : 0.5 - (daysAgo - 100) * 0.2 / 100);
        assertThat(before.before().estimate()).isCloseTo(gained, within(0.6));
        assertThat(before.after().estimate()).isCloseTo(0, within(0.5));
        assertThat(before.probabilityFaster()).isLessThan(0.05);
        assertThat(before.difference().estimate())
                .isCloseTo(before.after().estimate() - before.before().estimate(), within(0.2));
    }
}
