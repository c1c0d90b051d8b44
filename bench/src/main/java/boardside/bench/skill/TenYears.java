package boardside.bench.skill;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import boardside.engine.skill.RunCount;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Ten years of daily practice, made up: a million throws in 25,000 runs, with 12 bag sets. */
final class TenYears {
    static final LocalDate TODAY = LocalDate.of(2026, 6, 30);
    private static final int DAYS = 3650;
    private static final int RUNS = 25_000;
    private static final int ROUNDS = 10;
    private static final int BAGS = 12;

    private TenYears() {}

    static List<RunCount> log() {
        SplittableRandom random = new SplittableRandom(10);
        double[] bag = new double[BAGS];
        Arrays.setAll(bag, b -> 0.15 * random.nextGaussian());
        List<RunCount> log = new ArrayList<>();
        int left = RUNS;
        double level = 0;
        for (int day = 0; day < DAYS; day++) {
            level += 0.01 * random.nextGaussian();
            double mood = 0.15 * random.nextGaussian();
            int runs = left / (DAYS - day) + (random.nextInt(DAYS - day) < left % (DAYS - day) ? 1 : 0);
            left -= runs;
            for (int run = 0; run < runs; run++) {
                // Three bag sets are in use at a time.
                int b = (day / 365 + random.nextInt(3)) % BAGS;
                log.add(run(random, day, run, b, 1 + level + mood + bag[b] + 0.08 * random.nextGaussian()));
            }
        }
        return log;
    }

    /** One more run, today. */
    static RunCount oneMore() {
        return run(new SplittableRandom(11), DAYS - 1, 99, 0, 1);
    }

    private static RunCount run(SplittableRandom random, int day, int run, int bag, double logit) {
        double kept = 1 / (1 + Math.exp(-logit));
        double in = kept / (1 + Math.exp(1 - 0.6 * logit));
        int[] finishes = new int[Finish.values().size()];
        int allIn = 0;
        int allOn = 0;
        for (int round = 0; round < ROUNDS; round++) {
            int i = 0;
            int o = 0;
            for (int k = 0; k < Finish.BAGS; k++) {
                double u = random.nextDouble();
                i += u < in ? 1 : 0;
                o += u >= in && u < kept ? 1 : 0;
            }
            finishes[new Finish(i, o, Finish.BAGS - i - o).index()]++;
            allIn += i;
            allOn += o;
        }
        boolean onlyIn = random.nextInt(20) == 0;
        int thrown = ROUNDS * Finish.BAGS;
        return new RunCount(
                TODAY.minusDays(DAYS - 1L - day),
                day + "-" + run,
                onlyIn ? Drill.VOLUME : random.nextInt(4) == 0 ? Drill.RACE : Drill.TOTAL,
                "bag " + bag,
                random.nextInt(3) == 0 ? Face.FAST : Face.SLOW,
                random.nextInt(3) == 0 ? Approach.AGGRESSIVE : Approach.CONSERVATIVE,
                random.nextInt(10) == 0 ? BoardKind.NARROW : BoardKind.REGULATION,
                random.nextInt(10) == 0 ? Setting.LEAGUE : Setting.PRACTICE,
                random.nextInt(5) > 0 ? null : Conditions.values()[random.nextInt(3)],
                ROUNDS,
                onlyIn ? Tally.NONE : new Tally(allIn, allOn, thrown - allIn - allOn),
                onlyIn ? thrown : 0,
                onlyIn ? allIn : 0,
                Arrays.stream(onlyIn ? new int[finishes.length] : finishes)
                        .boxed()
                        .toList());
    }
}
