package boardside.bench.skill;

import boardside.engine.skill.Learned;
import boardside.engine.skill.RunCount;
import boardside.engine.skill.Skill;
import boardside.engine.skill.Trait;
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
        System.out.println(answers(again));
    }

    private static Skill time(String what, Supplier<Skill> make) {
        List<String> times = new ArrayList<>();
        Skill skill = null;
        for (int i = 0; i < REPETITIONS; i++) {
            long start = System.nanoTime();
            skill = make.get();
            long made = System.nanoTime();
            answers(skill);
            long answered = System.nanoTime();
            times.add(String.format(Locale.ROOT, "%.0f + %.0f", (made - start) / 1e6, (answered - made) / 1e6));
        }
        System.out.println(what + ", fit + answers, ms: " + String.join(", ", times));
        return java.util.Objects.requireNonNull(skill);
    }

    /** All that the form page shows. */
    private static String answers(Skill skill) {
        List<LocalDate> dates = IntStream.rangeClosed(0, 60)
                .mapToObj(i -> TenYears.TODAY.minusDays(6L * i))
                .toList();
        return skill.form(30).sentence()
                + "\n" + skill.compare(List.of(Trait.BAG)).sentence()
                + "\n" + skill.compare(List.of(Trait.APPROACH)).sentence()
                + "\n" + skill.usual(10).sentence()
                + "\n" + skill.stakes().sentence()
                + "\n" + skill.narrow().sentence()
                + "\n" + skill.swing().sentence()
                + "\n" + skill.band(dates).size();
    }
}
