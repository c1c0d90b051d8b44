package boardside.bench.tactics;

import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Target;
import boardside.engine.tactics.advice.Strength;
import boardside.engine.tactics.advice.Tried;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * How many simulated players without a stronger side are told of one, and how many who cut better one way are told so, by how
 * much they tried.
 *
 * <pre>java -cp bench/target/bench.jar boardside.bench.tactics.StrengthErrors [players] [seed]</pre>
 */
public final class StrengthErrors {
    private static final List<Situation> WHERE =
            List.of(Situation.GATE, Situation.SENTRY, Situation.SHOULDER, Situation.ALLEY);

    private StrengthErrors() {}

    /** Prints a line for each number of tries. */
    public static void main(String[] args) {
        int players = args.length > 0 ? Integer.parseInt(args[0]) : 20_000;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 20_261_125;
        SplittableRandom random = new SplittableRandom(seed);
        for (int most : new int[] {5, 15, 40, 120}) {
            int told = 0;
            int found = 0;
            int wrong = 0;
            for (int i = 0; i < players; i++) {
                told += Strength.of(player(random, 0, most)).isEmpty() ? 0 : 1;
                for (Strength one : Strength.of(player(random, 1.5, most))) {
                    if (one.what() == Strength.Pair.CUTS) {
                        found += one.left() ? 1 : 0;
                        wrong += one.left() ? 0 : 1;
                    }
                }
            }
            System.out.printf(
                    Locale.ROOT,
                    "up to %3d tries of a kind: without any, told %.2f %% (+-%.2f); left cuts with 4.5 times the odds, told %.1f %%,"
                            + " told the wrong side %.2f %%%n",
                    most,
                    100.0 * told / players,
                    100 * Math.sqrt(0.05 * 0.95 / players),
                    100.0 * found / players,
                    100.0 * wrong / players);
        }
    }

    private static List<Tried> player(SplittableRandom random, double edge, int most) {
        List<Tried> tries = new ArrayList<>();
        for (Situation situation : WHERE) {
            double logit = -2 + 2 * random.nextDouble();
            Position position = situation.position();
            tries.add(tried(random, Shot.CUT_LEFT, null, position, most, logit + edge));
            tries.add(tried(random, Shot.CUT_RIGHT, null, position.mirrored(), most, logit));
        }
        for (Depth depth : List.of(Depth.ONE, Depth.TWO, Depth.BACK)) {
            double logit = -2 + 2 * random.nextDouble();
            Shot shot = depth == Depth.BACK ? Shot.BACK_BLOCK : Shot.BLOCK;
            tries.add(tried(random, shot, new Target(depth, Lane.LEFT), Position.EMPTY, most, logit));
            tries.add(tried(random, shot, new Target(depth, Lane.RIGHT), Position.EMPTY, most, logit));
        }
        return tries;
    }

    private static Tried tried(
            SplittableRandom random, Shot shot, @Nullable Target target, Position position, int most, double logit) {
        int tries = random.nextInt(most + 1);
        int worked = 0;
        for (int i = 0; i < tries; i++) {
            worked += random.nextDouble() < 1 / (1 + Math.exp(-logit)) ? 1 : 0;
        }
        return new Tried(shot, target, position, tries, worked);
    }
}
