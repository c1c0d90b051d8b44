package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.physics.ThrowMatch;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.GameRules;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import java.util.List;
import org.junit.jupiter.api.Test;

class PlaybookTest {
    private static final ThrowModel GOOD = new ThrowModel(0, 3, 40, 5, 0.06, 20, 0.36);

    private static Playbook playbook(List<Tried> tries) {
        return Playbook.of(
                new Matchup(
                        Thrower.known(GOOD, Approach.CONSERVATIVE).with(tries),
                        Thrower.known(GOOD, Approach.CONSERVATIVE),
                        GameRules.STANDARD),
                128,
                3);
    }

    @Test
    void saysForEachSituationAndScoreWhatToPlayAndWhatToPractise() {
        Playbook book = playbook(List.of());
        assertThat(book.lines()).hasSize(Situation.values().length * Playbook.Standing.values().length);
        for (Playbook.Line line : book.lines()) {
            assertThat(line.gain()).isBetween(0.0, 0.1);
            assertThat(line.behind()).isGreaterThanOrEqualTo(0);
            assertThat(line.play().call()).isNotEqualTo(line.next().call());
        }
        assertThat(book.worths()).anyMatch(worth -> worth.gain().estimate() > 0);
        assertThat(book.worth(Shot.AIRMAIL).shot()).isEqualTo(Shot.AIRMAIL);
        for (int i = 1; i < book.worths().size(); i++) {
            assertThat(book.worths().get(i).gain().estimate())
                    .isLessThanOrEqualTo(book.worths().get(i - 1).gain().estimate());
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
