package boardside.engine.tactics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.ReferenceTable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.junit.jupiter.api.Test;

/** Rates against published shrinkage (reference/README-shrinkage.md) and against what can be said by hand. */
class RatePoolTest {
    private static TryCount kind(int worked, int tries, String... groups) {
        return new TryCount(List.of(groups), tries, worked);
    }

    private static List<ReferenceTable.Row> batters() {
        return ReferenceTable.read("03-efron-morris.csv");
    }

    private static RatePool batting() {
        return RatePool.of(
                batters().stream()
                        .map(row -> kind(row.whole("hits_first_45"), row.whole("at_bats")))
                        .toList(),
                List.of());
    }

    @Test
    void shrinksTheEighteenBattersNearlyAsPublished() {
        List<Rate> rates = batting().rates();
        List<ReferenceTable.Row> rows = batters();
        for (int i = 0; i < rows.size(); i++) {
            // The papers take one value of the spread; here it is averaged over, and larger ones shrink less.
            assertThat(rates.get(i).estimate())
                    .as(rows.get(i).text("player"))
                    .isCloseTo(rows.get(i).number("js_linear"), within(0.012))
                    .isCloseTo(rows.get(i).number("js_arcsine"), within(0.015));
        }
    }

    @Test
    void foretellsTheRestOfTheSeasonBetterThanRawAverages() {
        List<Rate> rates = batting().rates();
        List<ReferenceTable.Row> rows = batters();
        double raw = 0;
        double pooled = 0;
        int held = 0;
        for (int i = 0; i < rows.size(); i++) {
            double rest = rows.get(i).number("rest_avg");
            raw += Math.pow(rows.get(i).number("hits_first_45") / 45 - rest, 2);
            pooled += Math.pow(rates.get(i).estimate() - rest, 2);
            held += rates.get(i).low() <= rest && rest <= rates.get(i).high() ? 1 : 0;
        }
        // sum_sq_error_raw_linear and sum_sq_error_js_linear of the summary.
        assertThat(raw).isCloseTo(0.07531695, within(1e-4));
        assertThat(pooled).isCloseTo(0.02130691, within(0.003));
        // Rest-of-season averages are themselves noisy, so a range need not hold all.
        assertThat(held).isGreaterThanOrEqualTo(15);
    }

    @Test
    void aLoneKindIsNearlyWhatItsOwnTriesSay() {
        Rate rate = RatePool.of(List.of(kind(140, 200)), List.of()).rates().get(0);
        // Uniform prior: Beta(141, 61). The prior here is weak too; 200 tries drown either.
        BetaDistribution beta = BetaDistribution.of(141, 61);
        assertThat(rate.estimate()).isCloseTo(beta.getMean(), within(0.004));
        assertThat(rate.low()).isCloseTo(beta.inverseCumulativeProbability(0.05), within(0.004));
        assertThat(rate.high()).isCloseTo(beta.inverseCumulativeProbability(0.95), within(0.004));
    }

    @Test
    void neverOrAlwaysIsNotTakenForCertain() {
        Rate never = RatePool.of(List.of(kind(0, 10)), List.of()).rates().get(0);
        Rate always = RatePool.of(List.of(kind(10, 10)), List.of()).rates().get(0);
        Rate untried = RatePool.of(List.of(kind(0, 0)), List.of()).rates().get(0);
        // Rule of three: after 0 of n the upper 95 % limit is about 3/n (Hanley and Lippman-Hand 1983, JAMA 249,
        // 1743-1745).
        assertThat(never.estimate()).isBetween(0.02, 0.15);
        assertThat(never.high()).isBetween(0.1, 0.35);
        assertThat(always.estimate()).isCloseTo(1 - never.estimate(), within(1e-6));
        assertThat(always.low()).isCloseTo(1 - never.high(), within(1e-6));
        assertThat(untried.estimate()).isCloseTo(0.5, within(1e-6));
        assertThat(untried.high() - untried.low()).isGreaterThan(0.75);
    }

    @Test
    void whatTriesOfAKindLackTheirFamilyLends() {
        List<TryCount> kinds = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            kinds.add(kind(16, 20, "easy"));
            kinds.add(kind(4, 20, "hard"));
        }
        kinds.add(kind(0, 0, "easy"));
        kinds.add(kind(0, 0, "hard"));
        RatePool pool = RatePool.of(kinds, List.of(0));
        Rate easy = pool.rates().get(10);
        Rate hard = pool.rates().get(11);
        assertThat(easy.estimate()).isBetween(0.65, 0.85);
        assertThat(hard.estimate()).isBetween(0.15, 0.35);
        assertThat(pool.better(10, 11)).isGreaterThan(0.9);
        // An untried kind is known less well than those that were tried.
        assertThat(easy.high() - easy.low())
                .isGreaterThan(pool.rates().get(0).high() - pool.rates().get(0).low());
    }

    @Test
    void comparesTwoKindsLikeTwoBetasWhereBothWereTriedOften() {
        RatePool pool = RatePool.of(List.of(kind(124, 200), kind(98, 200)), List.of());
        // Beta(125, 77) against Beta(103, 99): the difference of the means is 2.6 standard errors, 0.996.
        assertThat(pool.better(0, 1)).isBetween(0.98, 0.999);
        assertThat(pool.better(1, 0)).isCloseTo(1 - pool.better(0, 1), within(1e-12));
        assertThat(Verdict.of(pool.better(1, 0))).isEqualTo(Verdict.SIGNAL);
    }

    @Test
    void verdictsTurnAtTheirBounds() {
        assertThat(Verdict.of(0.975)).isEqualTo(Verdict.SIGNAL);
        assertThat(Verdict.of(0.9749)).isEqualTo(Verdict.LEANING);
        assertThat(Verdict.of(0.15)).isEqualTo(Verdict.LEANING);
        assertThat(Verdict.of(0.1501)).isEqualTo(Verdict.OPEN);
    }

    @Test
    void theSameTriesGiveTheSameDigitsInAnyOrder() {
        List<TryCount> kinds = List.of(kind(3, 10, "a"), kind(7, 12, "a"), kind(5, 9, "b"), kind(1, 8, "b"));
        List<Rate> one = RatePool.of(kinds, List.of(0)).rates();
        List<Rate> again = RatePool.of(kinds, List.of(0)).rates();
        assertThat(again).isEqualTo(one);
        List<TryCount> turned = IntStream.of(3, 1, 0, 2).mapToObj(kinds::get).toList();
        List<Rate> other = RatePool.of(turned, List.of(0)).rates();
        assertThat(other.get(2).estimate()).isCloseTo(one.get(0).estimate(), within(1e-6));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> RatePool.of(List.of(), List.of())).hasMessageContaining("at least one kind");
        assertThatThrownBy(() -> RatePool.of(List.of(kind(1, 2)), List.of(0))).hasMessageContaining("1 levels");
        assertThatThrownBy(() -> kind(3, 2)).hasMessageContaining("not 3");
        assertThatThrownBy(() -> new Rate(Double.NaN, 0, 1)).hasMessageContaining("not within");
    }
}
