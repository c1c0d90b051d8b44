package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Against R packages lme4 and glmmTMB; see reference/README-skill.md. */
class MixedModelTest {
    /** Groups as runs, an intercept and effects of the levels of one factor but the first. */
    private static MixedModel.Estimates fit(
            List<String[]> rows, int group, int factor, int hits, int trials, Variances.Prior... priors) {
        Map<String, List<String[]>> groups = rows.stream()
                .collect(Collectors.groupingBy(row -> row[group], java.util.LinkedHashMap::new, Collectors.toList()));
        List<String> levels =
                rows.stream().map(row -> row[factor]).distinct().sorted().toList();
        int[][] columns = new int[levels.size()][];
        double[][] values = new double[levels.size()][];
        for (int i = 0; i < levels.size(); i++) {
            columns[i] = i == 0 ? new int[] {0} : new int[] {0, i};
            values[i] = i == 0 ? new double[] {1} : new double[] {1, 1};
        }
        int[] pattern = new int[rows.size()];
        int[] runCells = new int[groups.size() + 1];
        double[] n = new double[rows.size()];
        double[] y = new double[rows.size()];
        int run = 0;
        int cell = 0;
        for (List<String[]> members : groups.values()) {
            for (String[] row : members) {
                pattern[cell] = levels.indexOf(row[factor]);
                y[cell] = Double.parseDouble(row[hits]);
                n[cell] = Double.parseDouble(row[trials]);
                cell++;
            }
            runCells[++run] = cell;
        }
        Cells cells = new Cells(
                1,
                levels.size(),
                columns,
                values,
                pattern,
                runCells,
                new int[] {0, groups.size()},
                new int[] {0, 1},
                new double[] {0});
        int[] kind = new int[levels.size()];
        java.util.Arrays.fill(kind, -1);
        double[] none = new double[rows.size()];
        Variances variances =
                new Variances(cells, false, false, true, kind, new double[levels.size()], 1, 1, priors, new double[0]);
        return MixedModel.fit(
                cells, new BagCounts(n, y, none, none, none, none), variances, levels.size(), 1e-12, 1e-14);
    }

    @Test
    void cbppIsThatOfLme4AndOfAnIndependentMaximisation() {
        MixedModel.Estimates fit = fit(Reference.rows("02-cbpp-data.csv").toList(), 0, 1, 2, 3);
        Function<String, String[]> expected = name -> Reference.rows("02-cbpp-fit.csv")
                .filter(row -> row[0].equals("1") && row[1].equals(name))
                .findFirst()
                .orElseThrow();
        String[] names = {"intercept", "period2", "period3", "period4"};
        for (int i = 0; i < names.length; i++) {
            assertThat(fit.fixed()[i])
                    .isCloseTo(Double.parseDouble(expected.apply(names[i])[2]), within(1e-5))
                    .isCloseTo(Double.parseDouble(expected.apply(names[i])[4]), within(1e-6));
        }
        assertThat(fit.deviations()[0])
                .isCloseTo(Double.parseDouble(expected.apply("sd_random_intercept")[4]), within(1e-6));
        assertThat(fit.logLikelihood())
                .isCloseTo(
                        Double.parseDouble(expected.apply("log_likelihood_with_binomial_coefficients")[4]),
                        within(1e-7));
        double[] effects = fit.laplace().effects;
        double[] inverse = fit.laplace().arrow.runInverse;
        List<String[]> modes = Reference.rows("02-cbpp-blups.csv").toList();
        assertThat(modes).hasSize(15);
        for (int herd = 0; herd < modes.size(); herd++) {
            assertThat(effects[2 * herd]).isCloseTo(Double.parseDouble(modes.get(herd)[1]), within(1e-6));
            assertThat(Math.sqrt(inverse[3 * herd])).isCloseTo(Double.parseDouble(modes.get(herd)[2]), within(1e-6));
        }
    }

    @Test
    void bacteriaAreThoseOfLme4AndGlmmTmb() {
        List<String[]> children = Reference.rows("02-bacteria-data.csv")
                // The placebo is the level that the others are measured against.
                .map(row -> new String[] {row[0], row[1].replace("placebo", "-"), row[2], row[3]})
                .toList();
        MixedModel.Estimates fit = fit(children, 0, 1, 2, 3);
        List<double[]> expected = Reference.rows("02-bacteria-fit.csv")
                .map(row -> new double[] {Double.parseDouble(row[1]), Double.parseDouble(row[2])})
                .toList();
        double[] found = {
            fit.fixed()[0], fit.fixed()[1], fit.fixed()[2], fit.deviations()[0], fit.logLikelihood(),
        };
        for (int i = 0; i < found.length; i++) {
            assertThat(found[i])
                    .isCloseTo(expected.get(i)[0], within(5e-5))
                    .isCloseTo(expected.get(i)[1], within(5e-5));
        }
    }

    /**
     * Efron and Morris 1977, Scientific American 236(5), 119-127: batting averages after 45 times at bat, shrunk towards
     * each other, foretell the rest of the season better than the averages themselves. Players shrink here as bag sets do,
     * with the same prior, about as much as theirs.
     */
    @Test
    void battingAveragesShrinkAsEfronAndMorrisShrinkThem() {
        List<String[]> players = Reference.rows("03-efron-morris.csv").toList();
        MixedModel.Estimates fit = fit(
                players.stream()
                        .map(row -> new String[] {row[0], "", row[1], row[2]})
                        .toList(),
                0,
                1,
                2,
                3,
                Log.DRIFT,
                Log.DAYS,
                Log.BAGS);
        double raw = 0;
        double shrunk = 0;
        for (int i = 0; i < players.size(); i++) {
            String[] player = players.get(i);
            double average = BagCounts.logistic(fit.fixed()[0] + fit.laplace().effects[2 * i]);
            double rest = Double.parseDouble(player[5]);
            assertThat(average)
                    .as(player[0])
                    .isCloseTo(Double.parseDouble(player[6]), within(0.02))
                    .isCloseTo(Double.parseDouble(player[7]), within(0.02));
            raw += Math.pow(Double.parseDouble(player[1]) / 45 - rest, 2);
            shrunk += Math.pow(average - rest, 2);
        }
        assertThat(shrunk).isLessThan(0.4 * raw);
    }
}
