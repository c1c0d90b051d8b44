package boardside.engine.rules;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Writes what the rules give for known rounds and games as JSON, so that a script in another language that scores rounds
 * too can be held against it. To write the committed file anew, run {@link #main} in the engine's folder.
 *
 * <p>{@code finishes} lists the 15 finishes with their points; {@code turns} says, by who throws first, for each of the
 * eight bags of a round whether it is mine; {@code games} lists games, each with its rules, the
 * ghost's score (or null where the other side's points are drawn too), who throws first and its rounds, each
 * {@code [my points, their points, my score after, their score after, whether I throw first next, open|won|lost]}.
 */
final class ScoringVectors {
    /** The committed file, seen from the engine's folder. */
    static final Path FILE = Path.of("..", "app", "src", "test", "resources", "scoring-vectors.json");

    private static final long SEED = 20_240_905;
    private static final int MOST_ROUNDS = 40;

    private ScoringVectors() {}

    public static void main(String[] args) throws IOException {
        Files.writeString(FILE, json(), StandardCharsets.UTF_8);
    }

    /** The file's text. */
    static String json() {
        String finishes = Finish.values().stream()
                .map(finish -> "    {\"in\": %d, \"on\": %d, \"off\": %d, \"points\": %d}"
                        .formatted(finish.in(), finish.on(), finish.off(), finish.points()))
                .collect(Collectors.joining(",\n"));
        String turns = Stream.of(true, false)
                .map(meFirst -> "    {\"meFirst\": %b, \"mineNext\": %s}".formatted(meFirst, turns(meFirst)))
                .collect(Collectors.joining(",\n"));
        return "{\n  \"finishes\": [\n" + finishes + "\n  ],\n  \"turns\": [\n" + turns + "\n  ],\n  \"games\": [\n"
                + games().stream().collect(Collectors.joining(",\n")) + "\n  ]\n}\n";
    }

    private static List<Boolean> turns(boolean meFirst) {
        Game game = Game.start(GameRules.STANDARD, meFirst);
        return IntStream.range(0, 2 * Finish.BAGS).mapToObj(game::mineNext).toList();
    }

    private static List<String> games() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED);
        List<String> games = new ArrayList<>();
        for (FirstThrow first : FirstThrow.values()) {
            GameRules standard = GameRules.STANDARD.withFirstThrow(first);
            for (GameRules rules : List.of(
                    standard,
                    standard.withTarget(11),
                    standard.withTarget(1),
                    standard.withExact(15),
                    standard.withExact(0),
                    standard.withSkunk(13),
                    standard.withExact(15).withSkunk(13))) {
                for (int ghost : new int[] {0, 4, 6, 8, 12}) {
                    games.add(game(rules, ghost, random));
                }
                games.add(game(rules, -1, random));
                games.add(game(rules, -1, random));
            }
        }
        return games;
    }

    /** One game; a ghost of -1 stands for an opponent whose points are drawn. */
    private static String game(GameRules rules, int ghost, UniformRandomProvider random) {
        boolean meFirst = random.nextBoolean();
        Game game = Game.start(rules, meFirst);
        List<String> rounds = new ArrayList<>();
        while (!game.over() && rounds.size() < MOST_ROUNDS) {
            int mine = draw(random);
            int theirs = ghost < 0 ? draw(random) : ghost;
            game = game.play(mine, theirs);
            rounds.add("[%d, %d, %d, %d, %b, \"%s\"]"
                    .formatted(
                            mine,
                            theirs,
                            game.mine(),
                            game.theirs(),
                            game.meFirst(),
                            game.result().name().toLowerCase(Locale.ROOT)));
        }
        return ("    {\"target\": %d, \"exact\": %b, \"fallBack\": %d, \"skunk\": %d, \"firstThrow\": \"%s\", "
                        + "\"ghost\": %s, \"meFirst\": %b,\n     \"rounds\": [%s]}")
                .formatted(
                        rules.target(),
                        rules.exact(),
                        rules.fallBack(),
                        rules.skunk(),
                        rules.firstThrow().name().toLowerCase(Locale.ROOT),
                        ghost < 0 ? "null" : ghost,
                        meFirst,
                        String.join(", ", rounds));
    }

    private static int draw(UniformRandomProvider random) {
        return Finish.values().get(random.nextInt(Finish.values().size())).points();
    }
}
