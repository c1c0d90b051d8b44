package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.physics.ThrowModel;
import boardside.engine.physics.ThrowPrior;
import boardside.engine.rules.Approach;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

/** Advice on real boards; what players know must come out of it and is put in nowhere (common practice, no source). */
class AdviserTest {
    /** Four bags in ten in, half on: a good amateur. */
    private static final ThrowModel GOOD = new ThrowModel(0, 3, 40, 5, 0.06, 20, 0.36);

    private static Matchup matchup(ThrowModel model, List<Tried> tries) {
        return new Matchup(
                Thrower.known(model, Approach.CONSERVATIVE).with(tries),
                Thrower.known(GOOD, Approach.CONSERVATIVE),
                GameRules.STANDARD);
    }

    private static final Matchup USUAL = matchup(GOOD, List.of());

    private static Lying theirs(double x, double y) {
        return new Lying(x, y, Side.VERSUS);
    }

    private static Lying mine(double x, double y) {
        return new Lying(x, y, Side.ME);
    }

    private static RoundPosition position(int leftMe, int leftVersus, Lying... bags) {
        return new RoundPosition(new Position(List.of(bags)), 0, 0, leftMe, leftVersus, Side.ME);
    }

    private static Advice advise(Matchup matchup, RoundPosition position, int mine, int theirs, long samples) {
        return new Adviser(matchup)
                .advise(position, new Game(GameRules.STANDARD, mine, theirs, position.meFirst(), 0), samples, 4);
    }

    private static ShotAdvice of(Advice advice, Shot shot) {
        return advice.shots().stream()
                .filter(one -> one.call().shot() == shot)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void anyNumberOfThreadsGivesTheSame() throws Exception {
        RoundPosition position = position(2, 1, theirs(0, 33), mine(-5, 20));
        List<Advice> answers = new ArrayList<>();
        for (int threads : new int[] {1, 3}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                answers.add(pool.submit(() -> advise(matchup(GOOD, List.of()), position, 7, 9, 3000))
                        .get());
            } finally {
                pool.shutdown();
            }
        }
        assertThat(answers.get(0)).isEqualTo(answers.get(1));
    }

    @Test
    void theBestIsFirstAndErrorsShrinkWithSamples() {
        RoundPosition position = position(2, 1, theirs(0, 33));
        Advice few = advise(USUAL, position, 12, 12, 4000);
        Advice many = advise(USUAL, position, 12, 12, 64_000);
        assertThat(many.best().simulationError()).isLessThan(few.best().simulationError() / 2);
        assertThat(many.best().winProbability().estimate())
                .isCloseTo(
                        few.best().winProbability().estimate(),
                        within(6 * few.best().simulationError() + 0.01));
        for (ShotAdvice shot : many.shots()) {
            assertThat(shot.winProbability().estimate()).isBetween(0.0, 1.0);
            assertThat(shot.risk()).isBetween(0.0, 1.0);
        }
    }

    @Test
    void aLeadLateIsKeptSafeAndBeingBehindIsPlayedBold() {
        // My last bag, one of theirs at the hole and one of each beside: it stands 1-2.
        RoundPosition last = position(1, 0, theirs(0, 33), theirs(9, 24), mine(-9, 24));
        Advice ahead = advise(USUAL, last, 20, 4, 8000);
        Advice behind = advise(USUAL, last, 4, 20, 8000);
        // Ahead, a bag on the board keeps them from scoring; behind, level is not lost either, but three points win
        // more.
        assertThat(bold(behind) - safe(behind)).isGreaterThan(bold(ahead) - safe(ahead));
        RoundPosition lost = position(1, 0, theirs(0, 33), theirs(9, 24), theirs(9, 12));
        Advice desperate = advise(USUAL, lost, 10, 20, 8000);
        assertThat(safe(desperate)).isLessThan(0.05);
        assertThat(bold(desperate)).isGreaterThan(3 * safe(desperate));
    }

    /** Win chance relative to the best of that board. */
    private static double bold(Advice advice) {
        return of(advice, Shot.AIRMAIL).winProbability().estimate()
                / advice.best().winProbability().estimate();
    }

    private static double safe(Advice advice) {
        return advice.shots().stream()
                        .filter(shot -> shot.call().shot() == Shot.SLIDE
                                && !shot.call().aim().equals(Spot.HOLE))
                        .findFirst()
                        .orElseThrow()
                        .winProbability()
                        .estimate()
                / advice.best().winProbability().estimate();
    }

    @Test
    void aBackBlockPaysMoreForLongThrowers() {
        ThrowModel fast = new ThrowModel(0, 3, 54, 5, 0.06, 28, 0.36);
        assertThat(backing(fast)).isGreaterThan(backing(fast.aimed(0, 39)) + 0.03);
    }

    /** How much more often a slide goes in with a bag of one's own behind the hole. */
    private static double backing(ThrowModel model) {
        Matchup matchup = matchup(model, List.of());
        return of(advise(matchup, position(1, 0, mine(0, 45)), 10, 10, 6000), Shot.SLIDE)
                        .breakEven()
                        .made()
                        .estimate()
                - of(advise(matchup, position(1, 0, mine(-11, 3)), 10, 10, 6000), Shot.SLIDE)
                        .breakEven()
                        .made()
                        .estimate();
    }

    @Test
    void goingAtABagFiveDeepIsRarelyAdvised() {
        int pushed = 0;
        int boards = 0;
        for (int player = 0; player < 4; player++) {
            Matchup matchup = matchup(ThrowPrior.of(5, null).player(player), List.of());
            for (Lying deep : List.of(theirs(0, 8), theirs(-6, 8), theirs(7, 10.5))) {
                Advice advice = advise(matchup, position(2, 1, deep), 10, 12, 3000);
                boards++;
                pushed += advice.best().call().shot() == Shot.PUSH ? 1 : 0;
            }
        }
        assertThat(pushed).isLessThanOrEqualTo(boards / 10);
    }

    @Test
    void whoCutsOneWayIsAdvisedThatCut() {
        Position gate = Situation.GATE.position();
        List<Tried> tries =
                List.of(new Tried(Shot.CUT_LEFT, null, gate, 40, 30), new Tried(Shot.CUT_RIGHT, null, gate, 40, 2));
        Advice advice = advise(matchup(GOOD, tries), position(2, 1, theirs(0, 33)), 10, 12, 4000);
        assertThat(advice.best().call().shot()).isEqualTo(Shot.CUT_LEFT);
        assertThat(of(advice, Shot.CUT_RIGHT).winProbability().estimate())
                .isLessThan(advice.best().winProbability().estimate() - 0.03);
    }

    @Test
    void whatIsNotKnownOfThePlayerWidensTheRangeAndNotTheError() {
        ThrowPrior prior = ThrowPrior.of(5, null);
        List<ThrowModel> draws = new ArrayList<>();
        for (int k = 0; k < 64; k++) {
            draws.add(prior.player(k));
        }
        Thrower unknown = new Thrower(GOOD, draws, Approach.CONSERVATIVE, List.of());
        Matchup matchup = new Matchup(unknown, Thrower.known(GOOD, Approach.CONSERVATIVE), GameRules.STANDARD);
        ShotAdvice wide = of(advise(matchup, position(3, 3), 0, 0, 12_000), Shot.SLIDE);
        ShotAdvice sure = of(advise(USUAL, position(3, 3), 0, 0, 12_000), Shot.SLIDE);
        assertThat(wide.winProbability().width()).isGreaterThan(0.2);
        assertThat(sure.winProbability().width()).isLessThan(0.02);
        assertThat(wide.simulationError()).isLessThan(0.02);
    }

    @Test
    void refusesWhatIsNotAQuestion() {
        RoundPosition over = position(1, 0, theirs(0, 33));
        assertThatThrownBy(() -> advise(USUAL, over, 21, 3, 100)).hasMessageContaining("the game is over at 21-3");
        RoundPosition notMine = new RoundPosition(Position.EMPTY, 0, 0, 3, 4, Side.VERSUS);
        assertThatThrownBy(() -> advise(USUAL, notMine, 0, 0, 100)).hasMessageContaining("advice is for my throw");
    }
}
