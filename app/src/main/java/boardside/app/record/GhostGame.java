package boardside.app.record;

import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import java.util.List;
import java.util.TreeMap;

/** A game against a ghost, replayed from its rounds. */
public final class GhostGame {
    private GhostGame() {}

    /** How a run's game is won. */
    public static GameRules rules(Run run) {
        Setup setup = run.setup();
        GameRules rules = GameRules.STANDARD;
        Integer target = run.target() == null ? setup.target() : run.target();
        if (target != null) {
            rules = rules.withTarget(target);
        }
        if (setup.exact()) {
            Integer fallBack = setup.fallBack();
            rules = rules.withExact(fallBack == null ? rules.fallBack() : fallBack);
        }
        Integer skunk = setup.skunk();
        return skunk == null ? rules : rules.withSkunk(skunk);
    }

    /**
     * The game after a run's rounds. Rounds that were not fully counted, or lack the ghost's points, do not score.
     *
     * @throws IllegalArgumentException if rounds follow the game's end
     */
    public static Game after(Run run, List<Round> rounds) {
        Game game = Game.start(rules(run), true);
        int ended = 0;
        for (Round round : mine(rounds).values()) {
            if (game.over()) {
                throw new IllegalArgumentException(
                        "the game ends " + game.mine() + "-" + game.theirs() + " after round " + ended + ", so round "
                                + round.number() + " cannot be thrown; start another run for it");
            }
            Integer points = round.points();
            Integer ghost = round.lines().get(0).ghost();
            if (points != null && ghost != null) {
                game = game.play(points, ghost);
            }
            ended = round.number();
        }
        return game;
    }

    /** Checks that a run's rounds, one of them set anew, do not go on after the game's end. */
    static void check(Run run, List<Round> stored, Round round) {
        if (!round.side().mine()) {
            return;
        }
        TreeMap<Integer, Round> rounds = mine(stored);
        if (round.lines().isEmpty()) {
            rounds.remove(round.number());
        } else {
            rounds.put(round.number(), round);
        }
        after(run, List.copyOf(rounds.values()));
    }

    private static TreeMap<Integer, Round> mine(List<Round> rounds) {
        TreeMap<Integer, Round> mine = new TreeMap<>();
        for (Round round : rounds) {
            if (round.side().mine()
                    && round.lines().stream().mapToInt(Line::thrown).sum() > 0) {
                mine.put(round.number(), round);
            }
        }
        return mine;
    }
}
