package boardside.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import boardside.engine.rules.Game.Result;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class GameTest {
    static Stream<List<Row>> publishedGames() {
        Map<String, List<Row>> games = ReferenceTable.read("01-scoring-examples.csv").stream()
                .collect(Collectors.groupingBy(row -> row.text("game")));
        return games.values().stream();
    }

    /** 01-scoring-examples.csv: ACL text, club and league texts, and games that follow the ACL and ACO rules. */
    @ParameterizedTest
    @MethodSource("publishedGames")
    void scoresPublishedGames(List<Row> rounds) {
        for (FirstThrow rule : FirstThrow.values()) {
            String column = rule == FirstThrow.KEEP ? "throws_first_keep_rule" : "throws_first_swap_rule";
            Game game = Game.start(
                    GameRules.STANDARD.withFirstThrow(rule),
                    rounds.get(0).text(column).equals("A"));
            for (Row row : rounds) {
                assertThat(game.meFirst())
                        .as("first throw in %s", row)
                        .isEqualTo(row.text(column).equals("A"));
                Tally a = new Tally(row.whole("a_in_hole"), row.whole("a_on_board"), 0);
                Tally b = new Tally(row.whole("b_in_hole"), row.whole("b_on_board"), 0);
                assertThat(a.points()).isEqualTo(row.whole("a_raw"));
                assertThat(b.points()).isEqualTo(row.whole("b_raw"));
                game = game.play(a.points(), b.points());
                assertThat(game.mine()).as("A in %s", row).isEqualTo(row.whole("a_total"));
                assertThat(game.theirs()).as("B in %s", row).isEqualTo(row.whole("b_total"));
                assertThat(game.result()).as("winner in %s", row).isEqualTo(winner(row.text("winner")));
            }
        }
    }

    private static Result winner(String side) {
        return switch (side) {
            case "A" -> Result.WON;
            case "B" -> Result.LOST;
            default -> Result.OPEN;
        };
    }

    /** ACL rules: 21 or more wins (01-rules-numbers.csv, target_score). */
    @Test
    void standardTargetIsThePublishedOne() {
        int published = ReferenceTable.read("01-rules-numbers.csv").stream()
                .filter(row -> row.text("item").equals("target_score"))
                .findFirst()
                .orElseThrow()
                .whole("value");
        assertThat(GameRules.STANDARD.target()).isEqualTo(published);
    }

    @Test
    void targetsReachFromOnePointTo999() {
        assertThat(GameRules.STANDARD.withTarget(1).target()).isEqualTo(1);
        assertThat(GameRules.STANDARD.withTarget(999).target()).isEqualTo(999);
    }

    /** A race to 15 cannot fall back to 15, so it falls back six below, as one to 21 does. */
    @Test
    void aShorterRaceFallsBackBelowItsTarget() {
        assertThat(GameRules.STANDARD.withTarget(16).fallBack()).isEqualTo(15);
        assertThat(GameRules.STANDARD.withTarget(15).fallBack()).isEqualTo(9);
        assertThat(GameRules.STANDARD.withTarget(4).fallBack()).isZero();
    }

    /** Common practice, no source: against a ghost of 8 my 7 gives it 1, my 12 gives me 4. */
    @Test
    void aGhostScoresTheDifferenceToo() {
        Game game = Game.start(GameRules.STANDARD, true).play(7, 8);
        assertThat(game.mine()).isZero();
        assertThat(game.theirs()).isEqualTo(1);
        game = game.play(12, 8);
        assertThat(game.mine()).isEqualTo(4);
        assertThat(game.theirs()).isEqualTo(1);
        assertThat(game.rounds()).isEqualTo(2);
    }

    /** Common practice, no source: with an exact target a side that passes it falls back to 15. */
    @Test
    void anExactTargetSendsBackWhoPassesIt() {
        GameRules exact = GameRules.STANDARD.withExact(15);
        Game game = new Game(exact, 20, 0, true, 5).play(3, 0);
        assertThat(game.mine()).isEqualTo(15);
        assertThat(game.over()).isFalse();
        assertThat(game.play(9, 3).result()).isEqualTo(Result.WON);
    }

    /** Common practice, no source: 13 to nil ends a game when the skunk is on. */
    @ParameterizedTest
    @CsvSource({"12,1,OPEN", "12,0,OPEN", "13,0,WON", "13,1,OPEN", "0,13,LOST", "1,13,OPEN", "21,20,WON"})
    void aSkunkEndsAGameToNil(int mine, int theirs, Result result) {
        assertThat(new Game(GameRules.STANDARD.withSkunk(13), mine, theirs, true, 3).result())
                .isEqualTo(result);
    }

    /** A game of some length under rules drawn at random. */
    record Sample(long seed, GameRules rules, boolean meFirst, List<int[]> rounds) {
        @Override
        public String toString() {
            return "seed " + seed + ", " + rules;
        }
    }

    static Stream<Sample> samples() {
        return IntStream.range(0, 300).mapToObj(i -> {
            long seed = 7_100 + i;
            UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
            int target = 1 + random.nextInt(40);
            GameRules rules = new GameRules(
                    target,
                    random.nextBoolean(),
                    random.nextInt(target),
                    random.nextInt(target + 1),
                    random.nextBoolean() ? FirstThrow.KEEP : FirstThrow.SWAP);
            List<int[]> rounds = IntStream.range(0, 200)
                    .mapToObj(j -> new int[] {
                        Finish.values().get(random.nextInt(15)).points(),
                        Finish.values().get(random.nextInt(15)).points()
                    })
                    .toList();
            return new Sample(seed, rules, random.nextBoolean(), rounds);
        });
    }

    @ParameterizedTest
    @MethodSource("samples")
    void anySequenceOfRoundsKeepsTheRules(Sample sample) {
        GameRules rules = sample.rules();
        Game game = Game.start(rules, sample.meFirst());
        for (int[] round : sample.rounds()) {
            if (game.over()) {
                Game ended = game;
                assertThatThrownBy(() -> ended.play(round[0], round[1])).isInstanceOf(IllegalStateException.class);
                break;
            }
            Game next = game.play(round[0], round[1]);
            boolean mineMoved = next.mine() != game.mine();
            boolean theirsMoved = next.theirs() != game.theirs();
            assertThat(mineMoved && theirsMoved).as("both scored").isFalse();
            if (round[0] <= round[1]) {
                assertThat(mineMoved).as("the lesser side scored").isFalse();
            }
            if (round[1] <= round[0]) {
                assertThat(theirsMoved).as("the lesser side scored").isFalse();
            }
            if (!rules.exact()) {
                assertThat(next.mine()).isEqualTo(game.mine() + Math.max(0, round[0] - round[1]));
                assertThat(next.theirs()).isEqualTo(game.theirs() + Math.max(0, round[1] - round[0]));
            } else {
                assertThat(Math.max(next.mine(), next.theirs())).isLessThanOrEqualTo(rules.target());
                assertThat(next.mine()).isIn(game.mine() + round[0] - round[1], game.mine(), rules.fallBack());
            }
            assertThat(next.meFirst())
                    .isEqualTo(
                            round[0] == round[1]
                                    ? (rules.firstThrow() == FirstThrow.KEEP) == game.meFirst()
                                    : round[0] > round[1]);
            assertThat(next.rounds()).isEqualTo(game.rounds() + 1);
            // Who falls back to nothing against a skunk lead loses by scoring.
            boolean fellToNil = rules.exact() && rules.fallBack() == 0 && rules.skunk() > 0;
            if (next.result() == Result.WON && !fellToNil) {
                assertThat(round[0]).as("who scored last wins").isGreaterThan(round[1]);
            }
            if (next.result() == Result.LOST && !fellToNil) {
                assertThat(round[1]).as("who scored last wins").isGreaterThan(round[0]);
            }
            game = next;
        }
    }

    /** Swapping the sides of every round mirrors the game. */
    @ParameterizedTest
    @MethodSource("samples")
    void theOtherSideSeesTheMirroredGame(Sample sample) {
        Game game = Game.start(sample.rules(), sample.meFirst());
        Game mirrored = Game.start(sample.rules(), !sample.meFirst());
        for (int[] round : sample.rounds()) {
            if (game.over()) {
                break;
            }
            game = game.play(round[0], round[1]);
            mirrored = mirrored.play(round[1], round[0]);
            assertThat(mirrored)
                    .isEqualTo(new Game(sample.rules(), game.theirs(), game.mine(), !game.meFirst(), game.rounds()));
        }
    }

    @ParameterizedTest
    @EnumSource(FirstThrow.class)
    void withCopiesChangeOneRule(FirstThrow rule) {
        GameRules rules = GameRules.STANDARD.withExact(15).withSkunk(13).withFirstThrow(rule);
        assertThat(rules).isEqualTo(new GameRules(21, true, 15, 13, rule));
        assertThat(rules.withTarget(11)).isEqualTo(new GameRules(11, true, 5, 11, rule));
        assertThat(rules.withTarget(3)).isEqualTo(new GameRules(3, true, 0, 3, rule));
        assertThat(rules.withTarget(30)).isEqualTo(new GameRules(30, true, 15, 13, rule));
    }

    @Test
    void refusesWhatCannotBe() {
        refused(() -> new GameRules(0, false, 15, 0, FirstThrow.KEEP), "the target is 1 to 999 points, not 0");
        refused(() -> new GameRules(1000, false, 15, 0, FirstThrow.KEEP), "the target is 1 to 999 points, not 1000");
        refused(
                () -> GameRules.STANDARD.withExact(21),
                "the score to fall back to is 0 or more and below the target 21, not 21");
        refused(() -> GameRules.STANDARD.withSkunk(22), "the skunk lead is 0 (none) to the target 21, not 22");
        refused(
                () -> new Game(GameRules.STANDARD, -1, 0, true, 0),
                "scores and rounds are 0 or more, not -1-0 after 0");
        refused(() -> new Game(GameRules.STANDARD, 21, 22, true, 9), "only one side can have won, not both at 21-22");
        refused(
                () -> new Game(GameRules.STANDARD.withExact(15), 22, 3, true, 9),
                "a score beyond an exact target of 21 falls back to 15, so 22-3 cannot be");
        refused(
                () -> Game.start(GameRules.STANDARD, true).play(13, 0),
                "a round of four bags gives 0 to 12 points, not 13");
        refused(
                () -> Game.start(GameRules.STANDARD, true).play(0, -1),
                "a round of four bags gives 0 to 12 points, not -1");
        assertThatThrownBy(() -> new Game(GameRules.STANDARD, 22, 5, true, 8).play(3, 1))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("the game ended 22-5 after round 8; start a new one for further rounds");
    }

    /** ACL rules, gameplay: the players alternate until each has thrown four bags; who scored last throws first. */
    @Test
    void sidesAlternateAndWhoScoredLastBegins() {
        Game game = Game.start(GameRules.STANDARD, true);
        assertThat(IntStream.range(0, 8).mapToObj(game::mineNext))
                .containsExactly(true, false, true, false, true, false, true, false);
        Game lost = game.play(3, 5);
        assertThat(IntStream.range(0, 8).mapToObj(lost::mineNext))
                .containsExactly(false, true, false, true, false, true, false, true);
        refused(
                () -> game.mineNext(8),
                "both sides together throw eight bags a round, so after 8 there is none to come");
    }

    private static void refused(Runnable act, String message) {
        assertThatThrownBy(act::run)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
