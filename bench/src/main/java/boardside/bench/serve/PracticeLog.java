package boardside.bench.serve;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.SplittableRandom;

/** A long practice log, invented and seeded, in the CSV format that {@code boardside import} reads. */
final class PracticeLog {
    private static final String[] BAGS = {"Mill Pond", "Dry Ridge", "Harbour Nine", "Tin Roof", "Slow Tuesday", "Gravel"
    };
    private static final String[] FACES = {"slow", "fast"};
    private static final String[] APPROACHES = {"conservative", "aggressive"};
    private static final String[] CONDITIONS = {"slow", "normal", "fast"};
    private static final int ROUNDS_A_RUN = 10;
    private static final int RUNS_A_SESSION = 7;

    private PracticeLog() {}

    /**
     * Writes a log of so many rounds of four, ten a run, seven runs a day up to the last day.
     *
     * @param rounds a multiple of 10
     */
    static void write(Path file, int rounds, LocalDate lastDay, long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        int runs = rounds / ROUNDS_A_RUN;
        int days = (runs + RUNS_A_SESSION - 1) / RUNS_A_SESSION;
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write(
                    "session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,in,on,off,conditions\n");
            for (int run = 0; run < runs; run++) {
                int day = run / RUNS_A_SESSION;
                LocalDate date = lastDay.minusDays(days - 1L - day);
                boolean race = run % 4 == 3;
                String start = String.format(Locale.ROOT, "%sT18:%02d:00+02:00", date, run % RUNS_A_SESSION * 8);
                String bag = BAGS[random.nextInt(BAGS.length)];
                String common = bag + "," + FACES[random.nextInt(2)] + "," + APPROACHES[random.nextInt(2)] + ","
                        + (run % 9 == 0 ? "narrow" : "regulation") + "," + (run % 21 == 20 ? "league" : "practice")
                        + ",";
                String conditions = CONDITIONS[random.nextInt(3)];
                double good = 0.45 + 0.1 * random.nextDouble();
                for (int round = 1; round <= ROUNDS_A_RUN; round++) {
                    int in = 0;
                    int on = 0;
                    for (int i = 0; i < 4; i++) {
                        double where = random.nextDouble();
                        in += where < good ? 1 : 0;
                        on += where >= good && where < good + 0.35 ? 1 : 0;
                    }
                    out.write("s" + day + ",r" + run + "," + start + "," + (race ? "fixture" : "total") + "," + round
                            + ",me," + common + "," + in + "," + on + "," + (4 - in - on) + "," + conditions + "\n");
                }
            }
        }
    }
}
