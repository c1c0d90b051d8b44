package boardside.bench.plan;

import boardside.engine.plan.simulated.PlayerMonths;
import java.util.Locale;

/**
 * Simulated player-months by the plan and by fixed routines, under the learning model of {@code Learner}:
 *
 * <pre>  java -cp bench/target/bench.jar boardside.bench.plan.Months [players] [seed]</pre>
 */
public final class Months {
    private Months() {}

    /** Plays 1,000 player-months unless told otherwise, and prints a row of Markdown for each policy. */
    public static void main(String[] args) {
        int players = args.length > 0 ? Integer.parseInt(args[0]) : 1000;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
        System.out.println("| practice | wins more in a hundred | the plan's lead |");
        System.out.println("| --- | --- | --- |");
        PlayerMonths.play(players, seed)
                .forEach((name, of) -> System.out.printf(
                        Locale.ROOT,
                        "| %s | %.2f ± %.2f | %s |%n",
                        name,
                        100 * of.gain(),
                        100 * of.error(),
                        name.equals("plan")
                                ? ""
                                : String.format(
                                        Locale.ROOT, "%.2f ± %.2f", 100 * of.behind(), 100 * of.behindError())));
    }
}
