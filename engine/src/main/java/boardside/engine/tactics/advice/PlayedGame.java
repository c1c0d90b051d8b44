package boardside.engine.tactics.advice;

import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;

/**
 * A whole game, bag by bag, between a player who plays the base policy or improves it, and an opponent who plays the base
 * policy: to see what advice is worth. Every bag has its own luck, the same whatever is thrown, so that two games of one seed
 * differ by the policy alone.
 *
 * @param won whether the first player won
 * @param rounds played
 * @param margin my points less theirs at the end
 */
public record PlayedGame(boolean won, int rounds, int margin) {
    private static final int MOST_ROUNDS = 200;

    /** How the first player chooses. */
    public enum Policy {
        /** The approach's simple rules. */
        BASE,
        /** One step of improvement over them. */
        IMPROVED
    }

    /**
     * Plays one. Cuts, rolls and drags work as often as their stated priors say.
     *
     * @param matchup both throwers known: one draw each
     * @param samples for each decision
     * @param seed the game's luck; even seeds let the first player begin
     */
    public static PlayedGame play(Matchup matchup, Policy policy, long samples, long seed) {
        Adviser adviser = new Adviser(matchup);
        BoardTurns turns = matchup.turns();
        Luck luck = new Luck(seed);
        Game game = Game.start(GameRules.STANDARD, seed % 2 == 0);
        while (!game.over() && game.rounds() < MOST_ROUNDS) {
            Lie lie = Lie.fresh(game.meFirst());
            luck.at(0, game.rounds(), -1);
            while (lie.left() > 0) {
                Call call = lie.myTurn && policy == Policy.IMPROVED
                        ? adviser.best(lie, game, samples, seed * 31 + game.rounds())
                        : turns.base(lie);
                lie = turns.really(lie, call, luck);
            }
            int net = lie.net();
            game = game.play(Math.max(0, net), Math.max(0, -net));
        }
        return new PlayedGame(game.mine() > game.theirs(), game.rounds(), game.mine() - game.theirs());
    }
}
