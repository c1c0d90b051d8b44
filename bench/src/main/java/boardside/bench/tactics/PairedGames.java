package boardside.bench.tactics;

import boardside.engine.physics.ThrowMatch;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.GameRules;
import boardside.engine.tactics.advice.Matchup;
import boardside.engine.tactics.advice.PlayedGame;
import boardside.engine.tactics.advice.PlayedGame.Policy;
import boardside.engine.tactics.advice.Thrower;
import java.util.Locale;

/**
 * Pairs of games of the same luck against an opponent of the base policy: the first player plays the base policy in one and
 * improves it by one step in the other. Prints as it goes.
 *
 * <pre>java -cp bench/target/bench.jar boardside.bench.tactics.PairedGames [pairs] [samples] [in] [on] [seed]</pre>
 */
public final class PairedGames {
    private static final int EVERY = 50;

    private PairedGames() {}

    /** Plays and prints. */
    public static void main(String[] args) {
        int pairs = args.length > 0 ? Integer.parseInt(args[0]) : 2000;
        long samples = args.length > 1 ? Long.parseLong(args[1]) : 1000;
        double in = args.length > 2 ? Double.parseDouble(args[2]) : 0.35;
        double on = args.length > 3 ? Double.parseDouble(args[3]) : 0.50;
        long seed = args.length > 4 ? Long.parseLong(args[4]) : 20_261_125;
        ThrowModel model = ThrowMatch.of(new ThrowModel(0, 3, 39, 6, 0.06, 20, 0.36), in, on);
        Thrower thrower = Thrower.known(model, Approach.CONSERVATIVE);
        Matchup matchup = new Matchup(thrower, thrower, GameRules.STANDARD);
        long base = 0;
        long improved = 0;
        double differences = 0;
        double squares = 0;
        double margins = 0;
        for (int pair = 1; pair <= pairs; pair++) {
            PlayedGame plain = PlayedGame.play(matchup, Policy.BASE, samples, seed + pair);
            PlayedGame better = PlayedGame.play(matchup, Policy.IMPROVED, samples, seed + pair);
            base += plain.won() ? 1 : 0;
            improved += better.won() ? 1 : 0;
            int difference = (better.won() ? 1 : 0) - (plain.won() ? 1 : 0);
            differences += difference;
            squares += difference * difference;
            margins += better.margin() - plain.margin();
            if (pair % EVERY == 0 || pair == pairs) {
                double mean = differences / pair;
                double error = Math.sqrt((squares / pair - mean * mean) / pair);
                System.out.printf(
                        Locale.ROOT,
                        "%d pairs, in %.2f on %.2f, %d samples a decision: base wins %.1f %%, improved %.1f %%, difference %.1f +- %.1f;"
                                + " margin %+.2f points a game%n",
                        pair,
                        in,
                        on,
                        samples,
                        100.0 * base / pair,
                        100.0 * improved / pair,
                        100 * mean,
                        100 * error,
                        margins / pair);
            }
        }
    }
}
