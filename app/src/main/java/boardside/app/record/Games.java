package boardside.app.record;

import boardside.app.practice.Contest;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.engine.rules.Drill;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A run's game, replayed from its rounds: against a ghost, between the player's two selves, or against somebody. The page
 * at the boards does the same ({@code model.js}).
 */
public final class Games {
    private Games() {}

    /**
     * How a game stands.
     *
     * @param game the score after the rounds that both sides' points are known of
     * @param known whether the score is that of the game: else the other side's points are missing in some round
     * @param result who has won; by the score, by sudden death, or as it was told afterwards
     * @param end number of the round that ended the run, or 0
     * @param beyond number of the first round after the end, or 0
     */
    public record Played(Game game, boolean known, Game.Result result, int end, int beyond) {
        /** Whether a side has won. */
        public boolean over() {
            return result != Game.Result.OPEN;
        }
    }

    /** Whether a drill is a game. */
    public static boolean played(Drill drill) {
        return drill.needsGhost() || drill == Drill.DUEL || drill == Drill.GAME;
    }

    /** How a run's game is won. */
    public static GameRules rules(Run run) {
        return rules(run.target() == null ? run.setup().target() : run.target(), run.setup());
    }

    /**
     * How a game is won.
     *
     * @param target points to reach, or null for the usual ones
     * @throws IllegalArgumentException if the set-up asks for what cannot be
     */
    static GameRules rules(@Nullable Integer target, Setup setup) {
        GameRules rules = GameRules.STANDARD;
        if (target != null) {
            rules = rules.withTarget(target);
        }
        if (setup.exact()) {
            Integer fallBack = setup.fallBack();
            rules = rules.withExact(fallBack == null ? rules.fallBack() : fallBack);
        }
        Integer skunk = setup.skunk();
        if (skunk != null) {
            // A longer lead than the way to the target never comes about.
            rules = rules.withSkunk(Math.min(skunk, rules.target()));
        }
        return setup.contest() == null
                ? rules
                : rules.withFirstThrow(setup.contest().firstThrow());
    }

    /** A run's game before its first round: a head start and who throws first are part of it. */
    public static Game start(Run run) {
        Contest contest = run.setup().contest();
        if (contest == null) {
            return Game.start(rules(run), true);
        }
        int mine = contest.headStart();
        return new Game(rules(run), Math.max(0, mine), Math.max(0, -mine), contest.first(), 0);
    }

    /** The two sides of a run, the first side first; a run without a set-up for it shows them by its rounds. */
    public static Contest contest(Run run, List<Round> rounds) {
        Contest contest = run.setup().contest();
        if (contest != null) {
            return contest;
        }
        boolean alone = rounds.stream().anyMatch(round -> round.side() == Side.A || round.side() == Side.B);
        return new Contest(alone, true, false, true, FirstThrow.KEEP, 0, null);
    }

    /**
     * The game after a run's rounds. Rounds that were not fully counted, or that one side has not thrown, do not score;
     * rounds after the end do not count.
     */
    public static Played after(Run run, List<Round> rounds) {
        Contest contest = contest(run, rounds);
        boolean ghost = run.drill().needsGhost();
        Side first = ghost || !contest.alone() ? Side.ME : Side.A;
        Side other = contest.alone() ? Side.B : Side.VERSUS;
        TreeMap<Integer, Map<Side, Round>> byNumber = byNumber(rounds);
        Game game = start(run);
        boolean known = !contest.doubles();
        Game.Result sudden = Game.Result.OPEN;
        int end = 0;
        for (Map.Entry<Integer, Map<Side, Round>> each : byNumber.entrySet()) {
            int number = each.getKey();
            if (end > 0) {
                return played(run, game, known, sudden, end, number);
            }
            Round mine = each.getValue().get(first);
            Round theirs = each.getValue().get(other);
            Integer points = mine == null ? null : mine.points();
            Integer against = ghost ? ghost(mine) : theirs == null ? null : theirs.points();
            if (!ghost && run.drill() == Drill.GAME && against == null && number < byNumber.lastKey()) {
                known = false;
            }
            if (played(run.drill()) && known && points != null && against != null) {
                game = game.play(points, against);
            }
            sudden = sudden(run.setup().stakes(), points, contest.alone() ? against : null);
            end = game.over() || sudden != Game.Result.OPEN ? number : 0;
        }
        return played(run, game, known, sudden, end, 0);
    }

    private static Played played(Run run, Game game, boolean known, Game.Result sudden, int end, int beyond) {
        Game.Result result = game.over() ? game.result() : played(run.drill()) ? sudden : Game.Result.OPEN;
        Run.Score score = run.score();
        if (result == Game.Result.OPEN && score != null) {
            result = score.won() ? Game.Result.WON : Game.Result.LOST;
        }
        return new Played(game, known, result, end, beyond);
    }

    /** Who loses by a round below what sudden death asks for; the first side's is looked at first. */
    private static Game.Result sudden(@Nullable Stakes stakes, @Nullable Integer points, @Nullable Integer mineToo) {
        Integer fewest = stakes == null ? null : stakes.suddenDeath();
        if (fewest == null) {
            return Game.Result.OPEN;
        }
        if (points != null && points < fewest) {
            return Game.Result.LOST;
        }
        return mineToo != null && mineToo < fewest ? Game.Result.WON : Game.Result.OPEN;
    }

    private static @Nullable Integer ghost(@Nullable Round round) {
        return round == null ? null : round.lines().get(0).ghost();
    }

    /** Checks that a run's rounds, one of them set anew, do not go on after its end. */
    static void check(Run run, List<Round> stored, Round round) {
        List<Round> rounds = new java.util.ArrayList<>(stored);
        rounds.removeIf(other -> other.number() == round.number() && other.side() == round.side());
        rounds.add(round);
        check(run, rounds);
    }

    /**
     * Checks that a run's rounds do not go on after its end.
     *
     * @throws IllegalArgumentException naming the first that does
     */
    public static void check(Run run, List<Round> rounds) {
        Played played = after(run, rounds);
        if (played.beyond() > 0) {
            Game game = played.game();
            throw new IllegalArgumentException(
                    (game.over() ? "the game ends " + game.mine() + "-" + game.theirs() : "sudden death ends the run")
                            + " after round " + played.end() + ", so round " + played.beyond()
                            + " cannot be thrown; start another run for it");
        }
    }

    private static TreeMap<Integer, Map<Side, Round>> byNumber(List<Round> rounds) {
        TreeMap<Integer, Map<Side, Round>> byNumber = new TreeMap<>();
        for (Round round : rounds) {
            if (round.bags() > 0) {
                byNumber.computeIfAbsent(round.number(), number -> new EnumMap<>(Side.class))
                        .put(round.side(), round);
            }
        }
        return byNumber;
    }
}
