package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.skill.Marks.Flight;
import boardside.engine.skill.Marks.Place;
import boardside.engine.skill.PointGroup.Point;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DispersionTest {
    /** Throws bags: half of those that stay on the board are tapped, half of those off get a direction. */
    private static Marks thrown(UniformRandomProvider random, Flight flight, double width, double[] law, int bags) {
        ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
        List<Point> points = new ArrayList<>();
        Map<Place, Integer> others = new EnumMap<>(Place.class);
        for (int bag = 0; bag < bags; bag++) {
            double x = law[0] + law[1] * normal.sample();
            double y = law[2] + law[3] * normal.sample();
            boolean tapped = random.nextBoolean();
            boolean in = flight == Flight.AIRMAIL ? Math.hypot(x, y - 39) <= 3 : Math.abs(x) <= 3 && y >= 36;
            Place place = null;
            if (in) {
                place = Place.IN;
            } else if (Math.abs(x) <= width / 2 && y >= 0 && y <= 48) {
                if (tapped) {
                    points.add(new Point(x, y));
                } else {
                    place = Place.ON;
                }
            } else if (!tapped) {
                place = Place.OFF;
            } else if (Math.abs(x) > width / 2) {
                place = x < 0 ? Place.LEFT : Place.RIGHT;
            } else {
                place = y < 0 ? Place.SHORT : Place.LONG;
            }
            if (place != null) {
                others.merge(place, 1, Integer::sum);
            }
        }
        return new Marks(flight, width, points, others);
    }

    /**
     * Do 90 % ranges hold the truth nine times in ten, though most bags that go in or off have no point? Truths
     * are uniform, which the prior is not; 86 to 94 %, widened by two standard errors of these few players.
     */
    @ParameterizedTest
    @CsvSource({
        "31, SLIDE, 24, 30, 300",
        "32, SLIDE, 24, 120, 300",
        "33, SLIDE, 12, 120, 300",
        "34, AIRMAIL, 24, 60, 80"
    })
    void rangesHoldTheTruth(long seed, Flight flight, double width, int bags, int players) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        int asked = 0;
        int[] held = new int[5];
        while (asked < players) {
            double[] law = {
                -4 + 8 * random.nextDouble(), 2 + 5 * random.nextDouble(),
                26 + 14 * random.nextDouble(), 4 + 10 * random.nextDouble()
            };
            Marks marks = thrown(random, flight, width, law, bags);
            Dispersion found = Dispersion.of(marks).orElse(null);
            if (found == null) {
                continue;
            }
            asked++;
            held[0] += found.x().contains(law[0]) ? 1 : 0;
            held[1] += found.y().contains(law[2] - 39) ? 1 : 0;
            held[2] += found.spreadX().contains(law[1]) ? 1 : 0;
            held[3] += found.spreadY().contains(law[3]) ? 1 : 0;
            double hole = new BivariateNormal(law[0], law[1], law[2], law[3]).inCircle(0, 39, 3);
            held[4] += found.hole().map(range -> range.contains(hole)).orElse(true) ? 1 : 0;
        }
        System.out.printf(
                "dispersion coverage, %s, %.0f in, %d bags: x %.3f, y %.3f, spreads %.3f and %.3f, hole %.3f%n",
                flight,
                width,
                bags,
                held[0] / (double) players,
                held[1] / (double) players,
                held[2] / (double) players,
                held[3] / (double) players,
                held[4] / (double) players);
        double slack = 2 * Math.sqrt(0.9 * 0.1 / players);
        for (int i = 0; i < (flight == Flight.AIRMAIL ? 5 : 4); i++) {
            assertThat(held[i] / (double) players)
                    .as("held " + i + ", seed " + seed)
                    .isBetween(0.86 - slack, 0.94 + slack);
        }
    }

    /** With many points and nothing hidden, the belief is the points' own mean and deviation. */
    @Test
    void manyPointsSpeakForThemselves() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(5);
        ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            points.add(new Point(-2 + normal.sample(), 20 + 3 * normal.sample()));
        }
        PointGroup group = PointGroup.of(points);
        Dispersion found =
                Dispersion.of(new Marks(Flight.SLIDE, 24, points, Map.of())).orElseThrow();
        assertThat(found.x().estimate()).isCloseTo(group.meanX(), within(0.01));
        assertThat(found.y().estimate()).isCloseTo(group.meanY() - 39, within(0.03));
        assertThat(found.spreadX().estimate()).isCloseTo(Math.sqrt(group.varianceX()), within(0.02));
        assertThat(found.spreadY().estimate()).isCloseTo(Math.sqrt(group.varianceY()), within(0.05));
        // A mean of n points lies within 1.645 s / sqrt(n) nine times in ten.
        double reach = 1.6449 * Math.sqrt(group.varianceX() / 400);
        assertThat(found.x().high() - found.x().low()).isCloseTo(2 * reach, within(0.1 * reach));
        assertThat(found.probabilityRight()).isLessThan(1e-6);
        assertThat(found.across()).isEqualTo(Verdict.SIGNAL);
    }

    /** Taps alone would put the centre short of where the bags go; the ones that went in pull it back. */
    @Test
    void bagsThatWentInCount() {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            points.add(new Point(i % 3 - 1, 20 + i));
        }
        Dispersion without =
                Dispersion.of(new Marks(Flight.SLIDE, 24, points, Map.of())).orElseThrow();
        Dispersion with = Dispersion.of(new Marks(Flight.SLIDE, 24, points, Map.of(Place.IN, 20)))
                .orElseThrow();
        assertThat(with.y().low()).isGreaterThan(without.y().high());
        assertThat(with.bags()).isEqualTo(30);
        assertThat(with.points()).isEqualTo(10);
        assertThat(with.hole()).isEmpty();
    }

    @Test
    void fewPointsSayNothing() {
        List<Point> four = List.of(new Point(0, 1), new Point(0, 2), new Point(0, 3), new Point(0, 4));
        assertThat(Dispersion.of(new Marks(Flight.SLIDE, 24, four, Map.of(Place.IN, 500))))
                .isEmpty();
        assertThatThrownBy(() -> new Marks(Flight.SLIDE, 25, four, Map.of())).hasMessageContaining("not 25");
        assertThatThrownBy(() -> new Marks(Flight.SLIDE, 24, four, Map.of(Place.IN, -1)))
                .hasMessageContaining("0 or more, not -1");
    }

    /** Bags tapped on the very same spot leave a spread that is small but not nothing. */
    @Test
    void allOnOneSpotIsSane() {
        List<Point> points = Collections.nCopies(6, new Point(1, 30));
        Dispersion found =
                Dispersion.of(new Marks(Flight.SLIDE, 24, points, Map.of())).orElseThrow();
        assertThat(found.spreadX().low()).isPositive();
        assertThat(found.x().estimate()).isCloseTo(1, within(0.5));
    }
}
