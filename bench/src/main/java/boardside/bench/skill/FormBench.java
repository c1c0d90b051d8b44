package boardside.bench.skill;

import boardside.engine.skill.Learned;
import boardside.engine.skill.RunCount;
import boardside.engine.skill.Skill;
import boardside.engine.skill.Trait;
import java.lang.management.ManagementFactory;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * Times the skill model on ten years of daily practice ({@link TenYears}): from counts to all answers of the form page
 * from nothing, from the variances learned last time, and after one more run.
 *
 * <pre>
 * mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -Xmx300m -cp bench/target/bench.jar boardside.bench.skill.FormBench
 * </pre>
 *
 * Prints each repetition, the first one in a fresh virtual machine, and the memory in use afterwards.
 */
public final class FormBench {
    private static final int REPETITIONS = 7;

    private FormBench() {}

    public static void main(String[] args) {
        List<RunCount> log = TenYears.log();
        System.out.println(log.size() + " runs, "
                + log.stream().mapToLong(RunCount::thrown).sum() + " throws");
        Skill first = time("from nothing", () -> Skill.of(log, TenYears.TODAY));
        Learned learned = first.learned().orElseThrow();
        Skill again = time("from the last variances", () -> Skill.of(log, TenYears.TODAY, learned));
        time("after one more run", () -> again.with(List.of(TenYears.oneMore())));
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        System.out.printf(
                Locale.ROOT, "memory in use %d MB%n", (runtime.totalMemory() - runtime.freeMemory()) / (1 << 20));
        System.out.println(formPage(again));
        System.out.println(comparisons(again));
    }

    private static Skill time(String what, Supplier<Skill> make) {
        List<String> wall = new ArrayList<>();
        List<String> processor = new ArrayList<>();
        Skill skill = null;
        for (int i = 0; i < REPETITIONS; i++) {
            Clock clock = new Clock();
            skill = make.get();
            clock.lap();
            formPage(skill);
            clock.lap();
            comparisons(skill);
            clock.lap();
            wall.add(clock.wall());
            processor.add(clock.processor());
        }
        System.out.println(what + ": fit + form page + comparisons, ms");
        System.out.println("  by the clock: " + String.join(", ", wall));
        System.out.println("  of processor: " + String.join(", ", processor));
        return java.util.Objects.requireNonNull(skill);
    }

    /** Laps by the clock, and in the time this thread had a processor, which a busy machine lengthens less. */
    private static final class Clock {
        private final List<String> wall = new ArrayList<>();
        private final List<String> processor = new ArrayList<>();
        private long time = System.nanoTime();
        private long used = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();

        void lap() {
            long now = System.nanoTime();
            long usedNow = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            wall.add(String.valueOf(Math.round((now - time) / 1e6)));
            processor.add(String.valueOf(Math.round((usedNow - used) / 1e6)));
            time = now;
            used = usedNow;
        }

        String wall() {
            return String.join(" + ", wall);
        }

        String processor() {
            return String.join(" + ", processor);
        }
    }

    /** All that the form page shows: form, trend, picture, what is usual, why totals swing. */
    private static String formPage(Skill skill) {
        List<LocalDate> dates = IntStream.rangeClosed(0, 60)
                .mapToObj(i -> TenYears.TODAY.minusDays(6L * i))
                .toList();
        return skill.form(30).sentence()
                + "\n" + skill.usual(10).sentence()
                + "\n" + skill.swing().sentence()
                + "\n" + skill.band(dates).size();
    }

    private static String comparisons(Skill skill) {
        return skill.compare(List.of(Trait.BAG)).sentence()
                + "\n" + skill.compare(List.of(Trait.APPROACH)).sentence()
                + "\n" + skill.stakes().sentence()
                + "\n" + skill.narrow().sentence();
    }
}
