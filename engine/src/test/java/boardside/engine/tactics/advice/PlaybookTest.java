package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.physics.ThrowMatch;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.GameRules;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PlaybookTest {
    private static final ThrowModel GOOD = new ThrowModel(0, 3, 40, 5, 0.06, 20, 0.36);

    private static Playbook playbook(List<Tried> tries) {
        return playbook(GOOD, tries, false, 128);
    }

    private static Playbook playbook(ThrowModel model, List<Tried> tries, boolean mirrored, int samples) {
        return Playbook.of(
                new Matchup(
                        Thrower.known(model, Approach.CONSERVATIVE).with(tries),
                        Thrower.known(model, Approach.CONSERVATIVE),
                        GameRules.STANDARD),
                mirrored,
                samples,
                3);
    }

    @Test
    void saysForEachSituationAndScoreWhatToPlayAndWhatToPractise() {
        Playbook book = playbook(List.of());
        assertThat(book.lines()).hasSize(Situation.values().length * Playbook.Standing.values().length);
        for (Playbook.Line line : book.lines()) {
            assertThat(line.gain()).isBetween(0.0, 0.1);
            assertThat(line.behind()).isGreaterThanOrEqualTo(0);
            assertThat(line.next().call().shot())
                    .isNotEqualTo(line.play().call().shot());
        }
        assertThat(book.worths()).anyMatch(worth -> worth.gain().estimate() > 0);
        assertThat(book.worth(Shot.AIRMAIL).shot()).isEqualTo(Shot.AIRMAIL);
        for (int i = 1; i < book.worths().size(); i++) {
            assertThat(book.worths().get(i).perGame().estimate())
                    .isLessThanOrEqualTo(book.worths().get(i - 1).perGame().estimate());
        }
    }

    @Test
    void aShotThatNeverWorksIsWorthLittlePractice() {
        List<Tried> hopeless = List.of(Situation.values()).stream()
                .map(situation -> new Tried(Shot.ROLL, null, situation.position(), 400, 0))
                .toList();
        assertThat(playbook(hopeless).worth(Shot.ROLL).gain().estimate())
                .isLessThanOrEqualTo(playbook(List.of()).worth(Shot.ROLL).gain().estimate());
    }

    /** Who throws from the right, off to the left, is told the same of mirrored boards as who throws from the left, off to the right. */
    @Test
    void forTheRightSideSituationsAreMirroredAndWhatIsToldIsTheSame() {
        ThrowModel right = new ThrowModel(2.5, 3, 40, 5, 0.06, 20, 0.36);
        ThrowModel left = new ThrowModel(-2.5, 3, 40, 5, 0.06, 20, 0.36);
        List<Tried> tries = new ArrayList<>();
        List<Tried> mirrored = new ArrayList<>();
        for (Situation situation : Situation.values()) {
            Position board = situation.position();
            tries.add(new Tried(Shot.CUT_LEFT, null, board, 40, 26));
            tries.add(new Tried(Shot.CUT_RIGHT, null, board, 40, 2));
            mirrored.add(new Tried(Shot.CUT_RIGHT, null, board.mirrored(), 40, 26));
            mirrored.add(new Tried(Shot.CUT_LEFT, null, board.mirrored(), 40, 2));
        }
        Playbook one = playbook(right, tries, false, 128);
        Playbook other = playbook(left, mirrored, true, 128);
        int cuts = 0;
        for (int i = 0; i < one.lines().size(); i++) {
            Playbook.Line line = one.lines().get(i);
            Playbook.Line image = other.lines().get(i);
            assertThat(image.situation()).isEqualTo(line.situation());
            assertThat(image.position().board())
                    .isEqualTo(line.position().board().mirrored());
            assertThat(image.play().winProbability().estimate())
                    .as("%s", line.situation())
                    .isCloseTo(
                            line.play().winProbability().estimate(),
                            // The rounds of the two that games are solved from were sampled, too.
                            within(5
                                            * Math.hypot(
                                                    line.play().simulationError(),
                                                    image.play().simulationError())
                                    + 0.03));
            if (line.play().call().shot() == Shot.CUT_LEFT && !line.asGood()) {
                cuts++;
                assertThat(image.play().call().shot()).isEqualTo(Shot.CUT_RIGHT);
            }
        }
        assertThat(cuts).isPositive();
    }

    /** By hand: every bag in against every bag off is 12 points a round, so a game takes two rounds of four open boards. */
    @Test
    void occasionsAreThoseOfTheGamesThatArePlayed() {
        Thrower sure = Thrower.known(new ThrowModel(0, 0.01, 39, 0.01, 0.001, 20, 0.36), Approach.CONSERVATIVE);
        Thrower lost = Thrower.known(new ThrowModel(0, 0.01, -40, 0.01, 0.001, 20, 0.36), Approach.CONSERVATIVE);
        Map<Situation, Double> found = Occasions.of(new Matchup(sure, lost, GameRules.STANDARD));
        assertThat(found.keySet()).containsExactly(Situation.OPEN);
        assertThat(found.get(Situation.OPEN)).isCloseTo(8, within(0.1));
        // Players of flesh and blood see all kinds, those that block nothing most often; no more boards than they have
        // bags.
        Thrower good = Thrower.known(GOOD, Approach.CONSERVATIVE);
        Matchup usual = new Matchup(good, good, GameRules.STANDARD);
        Map<Situation, Double> times = Occasions.of(usual);
        assertThat(times).hasSize(Situation.values().length);
        double bags = usual.rounds() * RoundPosition.BAGS;
        assertThat(times.values().stream().mapToDouble(Double::doubleValue).sum())
                .isBetween(bags / 4, bags);
        assertThat(times.get(Situation.GATE)).isEqualTo(times.get(Situation.SENTRY));
    }

    /** A shot that works more often in every such throw of a game brings about what each of them brings, together. */
    @Test
    void whatAShotAddsToAGameIsItsGainAsOftenAsItIsThrown() {
        Playbook book = playbook(List.of());
        for (Playbook.Worth worth : book.worths()) {
            assertThat(worth.perGame().estimate()).isBetween(0.0, 1.0);
            assertThat(worth.perGame().estimate() > 0).isEqualTo(worth.gain().estimate() > 0);
        }
        // Slides are thrown most, and are worth more than a roll, over a game; nobody wins a game more by that than by
        // it all.
        assertThat(book.worth(Shot.SLIDE).perGame().estimate())
                .isGreaterThan(book.worth(Shot.ROLL).perGame().estimate())
                .isLessThan(0.5);
    }

    @Test
    void approachesArePlayedInWholeGames() {
        Thrower good = Thrower.known(GOOD, Approach.CONSERVATIVE);
        Approaches found = Approaches.of(good, good, GameRules.STANDARD, 1024);
        // The same player and policy on both sides, either beginning in half of the games: half are won, by symmetry.
        assertThat(found.conservative().estimate()).isCloseTo(0.5, within(1e-9));
        assertThat(found.difference().estimate())
                .isCloseTo(found.aggressive().estimate() - found.conservative().estimate(), within(1e-12));
        // A good amateur does better going after bags; whoever rarely puts one in does better sliding (common
        // practice).
        assertThat(found.difference().estimate()).isPositive();
        Thrower beginner = Thrower.known(ThrowMatch.of(GOOD, 0.2, 0.45), Approach.CONSERVATIVE);
        assertThat(Approaches.of(beginner, beginner, GameRules.STANDARD, 1024)
                        .difference()
                        .estimate())
                .isNegative();
    }
}
