package boardside.engine.odds;

import boardside.engine.rules.GameRules;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Prints the tables of {@code docs/odds.md} on how precisely ghost games and totals pin a level. */
final class PrecisionFigures {
    /** The page that shows them, seen from the engine's folder. */
    static final Path PAGE = Path.of("..", "docs", "odds.md");

    private static final List<BagChances> PLAYERS = List.of(
            new BagChances(0.15, 0.4), new BagChances(0.3, 0.4), new BagChances(0.5, 0.3), new BagChances(0.7, 0.2));
    private static final int[] GAMES = {5, 10, 20, 40};

    private PrecisionFigures() {}

    public static void main(String[] args) {
        comparison().forEach(System.out::println);
        ladder().forEach(System.out::println);
    }

    /** A row for each player and number of games. */
    static List<String> comparison() {
        return PLAYERS.stream()
                .flatMap(me ->
                        Arrays.stream(GAMES).mapToObj(games -> row(me, Precision.of(GameRules.STANDARD, me, games))))
                .toList();
    }

    private static String row(BagChances me, Precision precision) {
        return String.format(
                Locale.ROOT,
                "| %.2f / %.2f | %.2f | %d | %.0f | %.2f | %.2f | %.0f |",
                me.in(),
                me.on(),
                precision.level(),
                precision.games(),
                4 * precision.games() * precision.roundsPerGame(),
                precision.ladderError(),
                precision.totalsError(),
                4 * precision.roundsForLadderError());
    }

    /** A row for each player. */
    static List<String> ladder() {
        return PLAYERS.stream().map(PrecisionFigures::climb).toList();
    }

    private static String climb(BagChances me) {
        RoundDistribution round = RoundDistribution.of(me);
        Level level = Level.of(GameRules.STANDARD, round);
        Climb climb = Climb.of(GameRules.STANDARD, round, 0, 12);
        Precision precision = Precision.of(GameRules.STANDARD, me, 10);
        return String.format(
                Locale.ROOT,
                "| %.2f / %.2f | %.2f | %.2f | %.2f | %.1f | %s | %.1f | %.1f |",
                me.in(),
                me.on(),
                round.mean(),
                level.value(),
                climb.mean(),
                climb.gamesToFirstLoss(),
                climb.gamesToPin(level.value(), 1, 0.9).orElseThrow(),
                precision.gameRounds(),
                precision.gameWorth());
    }

    /** All rows. */
    static Stream<String> rows() {
        return Stream.concat(comparison().stream(), ladder().stream());
    }
}
