package boardside.bench.skill;

import boardside.engine.skill.DriftFree;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;

/**
 * Fits the model without drift ({@link DriftFree}) to 20,000 cells of a million throws, and in the same run the same model
 * on the same cells with glmmTMB and lme4 in R. Both times for each of the two models, kept and in.
 *
 * <pre>
 * apt-get install r-base-core r-cran-lme4 r-cran-glmmtmb
 * mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.skill.DriftFreeBench [--without-lme4]
 * </pre>
 *
 * Where R or a package is missing, that part is skipped with a message.
 */
public final class DriftFreeBench {
    private static final int CELLS = 20_000;
    private static final int DAYS = 3650;
    private static final int BAGS_EACH = 50;
    private static final int REPETITIONS = 7;

    private DriftFreeBench() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        DriftFree data = new DriftFree(CELLS, DAYS, BAGS_EACH);
        boolean withLme4 = args.length == 0 || !args[0].equals("--without-lme4");
        // Before and after R, so that a machine that slows down slows both.
        engine(data);
        r(data, withLme4);
        engine(data);
    }

    private static void engine(DriftFree data) {
        for (int model = 0; model < 2; model++) {
            StringBuilder clock = new StringBuilder();
            StringBuilder processor = new StringBuilder();
            DriftFree.Estimates fit = data.fit(model);
            for (int i = 0; i < REPETITIONS; i++) {
                long start = System.nanoTime();
                long used = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                fit = data.fit(model);
                clock.append(seconds(System.nanoTime() - start));
                processor.append(seconds(ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - used));
            }
            System.out.printf(
                    Locale.ROOT,
                    "engine   %s approach %.5f narrow %.5f day %.5f bag %.5f crossed %.5f logLik %.4f%n"
                            + "         seconds by the clock%s, of processor%s%n",
                    model == 0 ? "kept" : "in  ",
                    fit.approach(),
                    fit.narrow(),
                    fit.day(),
                    fit.bag(),
                    fit.crossed(),
                    fit.logLikelihood(),
                    clock,
                    processor);
        }
    }

    private static String seconds(long nanoseconds) {
        return String.format(Locale.ROOT, " %.3f", nanoseconds / 1e9);
    }

    private static void r(DriftFree data, boolean withLme4) throws IOException, InterruptedException {
        Path cells = Files.createTempFile("cells", ".csv");
        try {
            Files.writeString(cells, csv(data));
            Process r = new ProcessBuilder("Rscript", "-", cells.toString(), String.valueOf(withLme4))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.INHERIT)
                    .start();
            try (InputStream script = DriftFreeBench.class.getResourceAsStream("drift-free.R")) {
                r.getOutputStream().write(Objects.requireNonNull(script).readAllBytes());
            }
            r.getOutputStream().close();
            r.waitFor();
        } catch (IOException e) {
            System.out.println("R is not installed, so there is nothing to compare with: " + e.getMessage());
        } finally {
            Files.delete(cells);
        }
    }

    private static String csv(DriftFree data) {
        StringBuilder csv = new StringBuilder("day,bag,approach,board,n,kept,in");
        for (int j = 1; j <= DriftFree.SPLINE; j++) {
            csv.append(",s").append(j);
        }
        for (int c = 0; c < data.factors.length; c++) {
            csv.append('\n');
            for (int f : data.factors[c]) {
                csv.append(f).append(',');
            }
            csv.append(data.counts[c][0])
                    .append(',')
                    .append(data.counts[c][1])
                    .append(',')
                    .append(data.counts[c][2]);
            for (double s : data.spline[data.factors[c][0]]) {
                csv.append(',').append(s);
            }
        }
        return csv.append("\n").toString();
    }
}
