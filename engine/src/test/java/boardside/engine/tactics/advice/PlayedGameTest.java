package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.GameRules;
import boardside.engine.tactics.advice.PlayedGame.Policy;
import org.junit.jupiter.api.Test;

/** Whole games; what improvement is worth in many of them is measured in {@code bench}. */
class PlayedGameTest {
    private static final Thrower GOOD =
            Thrower.known(new ThrowModel(0, 3, 40, 5, 0.06, 20, 0.36), Approach.CONSERVATIVE);
    private static final Matchup EVEN = new Matchup(GOOD, GOOD, GameRules.STANDARD);

    @Test
    void equalPlayersWinHalfEachAndSeedsRepeat() {
        int won = 0;
        int games = 400;
        for (int seed = 0; seed < games; seed++) {
            PlayedGame game = PlayedGame.play(EVEN, Policy.BASE, 1, seed);
            assertThat(game.margin() > 0).isEqualTo(game.won());
            assertThat(game.rounds()).isBetween(2, 200);
            won += game.won() ? 1 : 0;
        }
        // Four standard errors of a half.
        assertThat((double) won / games).isBetween(0.4, 0.6);
        assertThat(PlayedGame.play(EVEN, Policy.BASE, 1, 7)).isEqualTo(PlayedGame.play(EVEN, Policy.BASE, 1, 7));
    }

    @Test
    void theExactGameAgreesWithGamesPlayedOut() {
        Thrower weak = Thrower.known(new ThrowModel(0, 4, 40, 7, 0.08, 20, 0.36), Approach.CONSERVATIVE);
        Matchup matchup = new Matchup(weak, GOOD, GameRules.STANDARD);
        int games = 600;
        int won = 0;
        for (int seed = 0; seed < games; seed++) {
            won += PlayedGame.play(matchup, Policy.BASE, 1, seed).won() ? 1 : 0;
        }
        double exact = (matchup.win(true) + matchup.win(false)) / 2;
        double error = Math.sqrt(exact * (1 - exact) / games);
        // The nets that the exact games are solved from are sampled too, which moves them by a few in a hundred.
        assertThat((double) won / games).isBetween(exact - 4 * error - 0.03, exact + 4 * error + 0.03);
    }
}
