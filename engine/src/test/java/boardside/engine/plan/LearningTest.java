package boardside.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.odds.BagChances;
import boardside.engine.skill.Interval;
import org.junit.jupiter.api.Test;

class LearningTest {
    /**
     * Cepeda, Vul, Rohrer, Wixted and Pashler 2008, Psychological Science 19, 1095-1102, abstract: the optimal gap was 20 to
     * 40 % of a delay of one week, 5 to 10 % of a delay of one year.
     */
    @Test
    void gapsGoThroughThoseOfCepeda() {
        assertThat(Learning.bestGap(7) / 7).isBetween(0.20, 0.40);
        assertThat(Learning.bestGap(365) / 365).isBetween(0.05, 0.10);
        assertThat(Learning.spacing(0, 30)).isEqualTo(0.5);
        assertThat(Learning.spacing(Double.POSITIVE_INFINITY, 30)).isEqualTo(1);
        assertThat(Learning.spacing(Learning.bestGap(30), 30)).isEqualTo(1);
    }

    /** Guadagnoli and Lee 2004: the benefit rises with difficulty to an optimum and falls beyond it. */
    @Test
    void benefitRisesToAnOptimumAndFalls() {
        double before = 0;
        for (double success = 1; success >= 2.0 / 3; success -= 0.01) {
            assertThat(Learning.challenge(success)).isGreaterThan(before);
            before = Learning.challenge(success);
        }
        assertThat(Learning.challenge(0.6)).isEqualTo(1);
        before = 1;
        for (double success = 0.5; success >= 0; success -= 0.01) {
            assertThat(Learning.challenge(success)).isLessThanOrEqualTo(before);
            before = Learning.challenge(success);
        }
        assertThat(Learning.challenge(0)).isPositive();
    }

    /** Newell and Rosenbloom 1981: added up, gains that fall as one over the number are the logarithm of it. */
    @Test
    void gainsAddUpToALogarithm() {
        double sum = 0;
        for (int bag = 0; bag < 20_000; bag++) {
            sum += Learning.perBag(bag, 1);
        }
        assertThat(sum).isCloseTo(Learning.PER_FOLD * Math.log(21_000.0 / 1000), within(1e-3));
    }

    @Test
    void bagsInARowWearOff() {
        assertThat(Learning.effective(4)).isCloseTo(4, within(0.2));
        assertThat(Learning.effective(1e6)).isEqualTo(Learning.SATURATION);
    }

    @Test
    void paceIsDrawnToTheUsualByHowLittleIsKnown() {
        BagChances bag = new BagChances(0.45, 0.38);
        assertThat(Ability.pace(new Interval(0, -9, 9), bag, 4000, 1000)).isCloseTo(1, within(0.05));
        assertThat(Ability.pace(new Interval(0, -1e-3, 1e-3), bag, 4000, 1000)).isEqualTo(0.25);
        assertThat(Ability.pace(new Interval(4, 3.9, 4.1), bag, 4000, 1000)).isEqualTo(3);
        assertThat(Ability.pace(new Interval(1, 0.5, 1.5), bag, 4000, 0)).isEqualTo(1);
    }
}
