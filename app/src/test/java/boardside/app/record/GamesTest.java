package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Contest;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Game;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class GamesTest {
    private static final Contest ALONE = new Contest(true, true, false, true, FirstThrow.KEEP, 0, null);
    private static final Contest GAME = new Contest(false, true, false, true, FirstThrow.KEEP, 0, null);

    private static Run run(Drill drill, Consumer<Setup.Draft> changes, Run.@Nullable Score score) {
        return new Run(
                "r",
                "s",
                drill,
                "2026-05-01T10:00:00Z",
                false,
                "",
                null,
                null,
                "",
                "",
                Setup.plain().with(changes),
                null,
                false,
                Run.Sum.NONE,
                score);
    }

    private static Run contest(Drill drill, Contest contest) {
        return run(drill, setup -> setup.contest = contest, null);
    }

    /** A round of so many points; the first finish that makes them. */
    private static Round round(int number, Side side, int points, @Nullable Integer ghost) {
        Finish finish = Finish.ofTotal(points).get(0);
        Line line = new Line(
                "",
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                ghost,
                4,
                finish.in(),
                finish.on(),
                finish.off(),
                Line.Misses.NONE,
                "",
                "");
        return new Round(number, side, "", List.of(line), List.of());
    }

    private static List<Round> both(int number, Side first, int mine, Side other, int theirs) {
        return List.of(round(number, first, mine, null), round(number, other, theirs, null));
    }

    @SafeVarargs
    private static List<Round> rounds(List<Round>... parts) {
        return Stream.of(parts).flatMap(List::stream).toList();
    }

    @Test
    void aLeadToNilBeyondTheTargetIsNoneAndWhatCannotBeIsRefused() {
        Run far = run(
                Drill.RACE,
                setup -> {
                    setup.target = 11;
                    setup.skunk = 32;
                },
                null);
        assertThat(Games.rules(far).skunk()).isEqualTo(11);
        assertThat(Games.rules(far).won(10, 0)).isFalse();
        Setup negative = Setup.plain().with(setup -> setup.skunk = -1);
        assertThatThrownBy(() -> Games.rules(null, negative)).hasMessageContaining("skunk lead");
        Setup back = Setup.plain().with(setup -> {
            setup.exact = true;
            setup.fallBack = 11;
        });
        assertThat(Games.rules(21, back).fallBack()).isEqualTo(11);
        assertThatThrownBy(() -> Games.rules(11, back)).hasMessageContaining("fall back to");
    }

    /** By the rules: only the difference scores; who scored throws first. */
    @Test
    void aDuelOfTwoSelvesIsScoredBetweenThem() {
        Games.Played played = Games.after(
                contest(Drill.DUEL, ALONE),
                rounds(both(1, Side.A, 9, Side.B, 4), both(2, Side.A, 3, Side.B, 10), both(3, Side.A, 6, Side.B, 6)));
        assertThat(played.game().mine()).isEqualTo(5);
        assertThat(played.game().theirs()).isEqualTo(7);
        assertThat(played.game().meFirst()).isFalse();
        assertThat(played.known()).isTrue();
        assertThat(played.over()).isFalse();
    }

    @Test
    void aRoundOfWhichOneSideIsMissingDoesNotScoreYet() {
        Games.Played played = Games.after(
                contest(Drill.DUEL, ALONE), rounds(both(1, Side.A, 9, Side.B, 4), List.of(round(2, Side.B, 12, null))));
        assertThat(played.game().mine()).isEqualTo(5);
        assertThat(played.game().theirs()).isZero();
    }

    @Test
    void aHeadStartIsPartOfTheGame() {
        Contest given = new Contest(false, true, false, false, FirstThrow.SWAP, -5, null);
        Games.Played played = Games.after(contest(Drill.DUEL, given), rounds(both(1, Side.ME, 4, Side.VERSUS, 4)));
        assertThat(played.game().theirs()).isEqualTo(5);
        assertThat(played.game().meFirst())
                .as("swapped after a round without points")
                .isTrue();
    }

    @Test
    void aGameWithARoundOfTheirsMissingHasNoKnownScoreUntilItIsTold() {
        List<Round> rounds = rounds(
                both(1, Side.ME, 9, Side.VERSUS, 4),
                List.of(round(2, Side.ME, 6, null)),
                both(3, Side.ME, 12, Side.VERSUS, 0),
                both(4, Side.ME, 12, Side.VERSUS, 0));
        Games.Played untold = Games.after(contest(Drill.GAME, GAME), rounds);
        assertThat(untold.known()).isFalse();
        assertThat(untold.over()).isFalse();
        Run told = run(Drill.GAME, setup -> setup.contest = GAME, new Run.Score(21, 12));
        assertThat(Games.after(told, rounds).result()).isEqualTo(Game.Result.WON);
    }

    @Test
    void inDoublesMyEndAloneTellsNoScore() {
        Contest doubles = new Contest(false, true, true, true, FirstThrow.KEEP, 0, null);
        Games.Played played = Games.after(
                contest(Drill.GAME, doubles),
                rounds(both(1, Side.ME, 12, Side.VERSUS, 0), both(2, Side.ME, 12, Side.VERSUS, 0)));
        assertThat(played.known()).isFalse();
        assertThat(played.over()).isFalse();
        assertThat(played.game().mine()).isZero();
    }

    @Test
    void suddenDeathEndsAnyRunAndLosesAGame() {
        Stakes stakes = new Stakes(false, 5, null, null, false);
        Run total = run(Drill.TOTAL, setup -> setup.stakes = stakes, null);
        List<Round> rounds = List.of(round(1, Side.ME, 5, null), round(2, Side.ME, 4, null));
        assertThat(Games.after(total, rounds).end()).isEqualTo(2);
        assertThat(Games.after(total, rounds).over())
                .as("no game, so nobody wins")
                .isFalse();
        Run race = run(Drill.RACE, setup -> setup.stakes = stakes, null);
        Games.Played lost = Games.after(race, List.of(round(1, Side.ME, 4, 0)));
        assertThat(lost.result()).isEqualTo(Game.Result.LOST);
        assertThat(lost.game().mine()).isEqualTo(4);
        Run duel = run(
                Drill.DUEL,
                setup -> {
                    setup.contest = ALONE;
                    setup.stakes = stakes;
                },
                null);
        assertThat(Games.after(duel, both(1, Side.A, 6, Side.B, 3)).result()).isEqualTo(Game.Result.WON);
    }

    @Test
    void roundsBeyondTheEndAreNamed() {
        Run race = run(Drill.RACE, setup -> {}, null);
        List<Round> rounds = List.of(round(1, Side.ME, 12, 0), round(2, Side.ME, 12, 0), round(3, Side.ME, 0, 0));
        assertThat(Games.after(race, rounds).game().mine()).isEqualTo(24);
        assertThatThrownBy(() -> Games.check(race, rounds))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the game ends 24-0 after round 2, so round 3 cannot be thrown; start another run for it");
    }
}
