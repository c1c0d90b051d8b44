package boardside.bench.tactics;

import boardside.engine.physics.ThrowModel;
import boardside.engine.physics.ThrowPrior;
import boardside.engine.rules.Approach;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.advice.Advice;
import boardside.engine.tactics.advice.Adviser;
import boardside.engine.tactics.advice.Matchup;
import boardside.engine.tactics.advice.RoundPosition;
import boardside.engine.tactics.advice.Thrower;
import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How exact the difference between the best two shots is, and how long that takes, on boards in the middle of a round (three
 * bags on it, 3 and 2 left) and with one bag left. Each line is the last of several asked; the matchup is made beforehand.
 *
 * <pre>java -cp bench/target/bench.jar boardside.bench.tactics.AdviceErrors [samples] [samples of last bags]</pre>
 */
public final class AdviceErrors {
    private static final int WARM_UP = 2;
    private static final OperatingSystemMXBean CPU = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    private AdviceErrors() {}

    /** Prints a line for each board and score. */
    public static void main(String[] args) {
        long samples = args.length > 0 ? Long.parseLong(args[0]) : 20_000;
        long last = args.length > 1 ? Long.parseLong(args[1]) : 8_000;
        ThrowPrior prior = ThrowPrior.of(5, null);
        List<ThrowModel> draws = new ArrayList<>();
        for (int k = 0; k < 64; k++) {
            ThrowModel any = prior.player(k);
            draws.add(new ThrowModel(
                    any.x() / 4, 3, 40 + (any.reach() - 39) / 4, 5, 0.06, 20, 0.36 + (any.friction() - 0.36) / 4));
        }
        ThrowModel usual = new ThrowModel(0, 3, 40, 5, 0.06, 20, 0.36);
        long start = System.nanoTime();
        Matchup matchup = new Matchup(
                new Thrower(usual, draws, Approach.CONSERVATIVE, List.of()),
                Thrower.known(usual, Approach.CONSERVATIVE),
                GameRules.STANDARD);
        System.out.printf(Locale.ROOT, "matchup, cold: %.0f ms%n", (System.nanoTime() - start) / 1e6);
        Map<String, List<Lying>> boards = Map.of(
                "gate", List.of(versus(0, 33), me(-5, 20), versus(7, 28)),
                "open", List.of(versus(9, 12), me(-9, 20), versus(8, 40)),
                "mine", List.of(me(0, 32), versus(-7, 25), versus(6, 15)));
        int[][] scores = {{0, 0}, {15, 15}, {20, 20}};
        for (Map.Entry<String, List<Lying>> board : boards.entrySet()) {
            for (int[] score : scores) {
                line(matchup, board, 3, 2, score, samples);
            }
        }
        for (Map.Entry<String, List<Lying>> board : boards.entrySet()) {
            line(matchup, board, 1, 0, new int[] {15, 15}, last);
        }
    }

    private static void line(
            Matchup matchup, Map.Entry<String, List<Lying>> board, int mine, int theirs, int[] score, long samples) {
        RoundPosition position = new RoundPosition(new Position(board.getValue()), 0, 0, mine, theirs, Side.ME);
        Adviser adviser = new Adviser(matchup);
        Game game = new Game(GameRules.STANDARD, score[0], score[1], position.meFirst(), 0);
        Advice advice = adviser.advise(position, game, samples, 1);
        double took = 0;
        double worked = 0;
        for (int i = 0; i < WARM_UP; i++) {
            long start = System.nanoTime();
            long cpu = CPU.getProcessCpuTime();
            advice = adviser.advise(position, game, samples, i);
            took = (System.nanoTime() - start) / 1e6;
            worked = (CPU.getProcessCpuTime() - cpu) / 1e6;
        }
        System.out.printf(
                Locale.ROOT,
                "%-5s left %d-%d score %2d-%2d: %6d samples %5.0f ms (%5.0f ms of processors), best two %s, %s: difference %.2f +- %.3f points of win"
                        + " chance%n",
                board.getKey(),
                mine,
                theirs,
                score[0],
                score[1],
                advice.samples(),
                took,
                worked,
                advice.shots().get(0).call().shot().word(),
                advice.shots().get(1).call().shot().word(),
                100 * advice.shots().get(1).behind(),
                100 * advice.shots().get(1).behindError());
    }

    private static Lying versus(double x, double y) {
        return new Lying(x, y, Side.VERSUS);
    }

    private static Lying me(double x, double y) {
        return new Lying(x, y, Side.ME);
    }
}
