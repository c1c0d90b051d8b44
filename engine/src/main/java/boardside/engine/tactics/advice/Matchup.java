package boardside.engine.tactics.advice;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.NetDistribution;
import boardside.engine.odds.Race;
import boardside.engine.odds.RaceAnswer;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.physics.Board;
import boardside.engine.physics.ThrowChances;
import boardside.engine.physics.ThrowKernel;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Two throwers who meet, with what the rest of a game is worth to the first of them from any score, whoever throws first.
 *
 * <p>Rounds of the two are sampled with their usual models under their base policies, in either order of throwing with the
 * same luck for each bag; the race of those net points is solved exactly ({@link Race}). For another draw of the first
 * player, the sampled chance of each net is multiplied by how much likelier that draw makes it, with bags independent on an
 * empty board, and divided by their sum. Immutable; thread safe; made once and used for many positions.
 */
public final class Matchup {
    /** Draws of the player that are told apart. */
    static final int DRAWS = 64;

    /** Rounds that the net of a round is sampled from, in either order. */
    private static final int ROUNDS = 4096;

    private static final int TASKS = 32;

    /** Rounds that the chances of independent bags count for beside the sampled ones, so that no net is impossible. */
    private static final double PSEUDO_ROUNDS = 16;

    private static final long SEED = 7_309_457;
    private static final ThrowKernel KERNEL = new ThrowKernel(Board.of(BoardKind.REGULATION));

    private final Thrower me;
    private final Thrower versus;
    private final BoardTurns turns;
    private final NetDistribution meFirst;
    private final NetDistribution theyFirst;
    private final List<Race> races;
    private final Race usual;

    /**
     * A matchup.
     *
     * @param me who asks; up to {@value #DRAWS} of the draws are used
     * @param versus the opponent, of whom only the usual model is used
     * @param rules how the game is won
     */
    public Matchup(Thrower me, Thrower versus, GameRules rules) {
        this.me = me.thinned(DRAWS);
        this.versus = versus;
        turns = new BoardTurns(this.me, versus);
        RoundDistribution theirs = rounds(versus.usual());
        NetDistribution middle = independent(me.usual(), versus.usual());
        BoardTurns sampled = new BoardTurns(Thrower.known(me.usual(), me.approach()), versus);
        meFirst = sampled(sampled, true, middle, ROUNDS);
        theyFirst = sampled(sampled, false, middle, ROUNDS);
        usual = Race.solve(rules, meFirst, theyFirst);
        List<Race> solved = new ArrayList<>();
        for (ThrowModel model : this.me.draws()) {
            NetDistribution draw = NetDistribution.between(rounds(model), theirs);
            solved.add(Race.solve(rules, tilted(meFirst, draw, middle), tilted(theyFirst, draw, middle)));
        }
        races = List.copyOf(solved);
    }

    private static RoundDistribution rounds(ThrowModel model) {
        ThrowChances chances = KERNEL.chances(model);
        double in = Math.max(0, Math.min(1, chances.in()));
        return RoundDistribution.of(new BagChances(in, Math.max(0, Math.min(1 - in, chances.on()))));
    }

    /** Net points of a round in which all bags are thrown at an empty board. */
    static NetDistribution independent(ThrowModel mine, ThrowModel theirs) {
        return NetDistribution.between(rounds(mine), rounds(theirs));
    }

    /**
     * Net points of a round under base policies. Luck is evened out: the same bags thrown at an empty board make a net whose
     * chances are known exactly, and rounds are weighed so that in the sample they are just those (post-stratification).
     *
     * @param middle chances of that net
     * @param rounds how many to sample, a multiple of 64
     */
    static NetDistribution sampled(BoardTurns turns, boolean meFirst, NetDistribution middle, int rounds) {
        int each = rounds / TASKS;
        int[][] nets = new int[TASKS][];
        IntStream.range(0, TASKS).parallel().forEach(task -> nets[task] = nets(turns, meFirst, task, each));
        int width = 2 * Lie.MOST + 1;
        double[] alone = new double[width];
        for (int[] some : nets) {
            for (int n = 0; n < each; n++) {
                alone[some[each + n] + Lie.MOST] += 1.0 / rounds;
            }
        }
        double[] chances = new double[width];
        double sum = 0;
        for (int[] some : nets) {
            for (int n = 0; n < each; n++) {
                int stratum = some[each + n] + Lie.MOST;
                double weight = middle.chance(stratum - Lie.MOST) / alone[stratum] / rounds;
                chances[some[n] + Lie.MOST] += weight;
                sum += weight;
            }
        }
        double own = rounds / (rounds + PSEUDO_ROUNDS);
        for (int i = 0; i < width; i++) {
            chances[i] = chances[i] / sum * own + middle.chance(i - Lie.MOST) * (1 - own);
        }
        return NetDistribution.of(chances);
    }

    /** Nets of rounds, then those of the same bags each thrown at an empty board. */
    private static int[] nets(BoardTurns turns, boolean meFirst, int task, int rounds) {
        int[] nets = new int[2 * rounds];
        Luck luck = new Luck(SEED);
        BoardTurns.Alone alone = turns.alone();
        for (int n = 0; n < rounds; n++) {
            // Every second round has the luck of the one before with the sides swapped, so that neither has the better
            // of it.
            luck.at(task, n / 2, -1);
            if (n % 2 == 1) {
                luck.swap();
            }
            Lie lie = Lie.fresh(meFirst);
            int net = 0;
            while (lie.left() > 0) {
                net += (lie.myTurn ? 1 : -1) * alone.points(lie, luck);
                lie = turns.play(lie, turns.base(lie), 0, luck);
            }
            nets[n] = lie.net();
            nets[rounds + n] = net;
        }
        return nets;
    }

    private static NetDistribution tilted(NetDistribution sampled, NetDistribution draw, NetDistribution middle) {
        double[] chances = new double[2 * Lie.MOST + 1];
        double sum = 0;
        for (int net = -Lie.MOST; net <= Lie.MOST; net++) {
            double factor = middle.chance(net) > 0 ? draw.chance(net) / middle.chance(net) : 0;
            chances[net + Lie.MOST] = sampled.chance(net) * factor;
            sum += chances[net + Lie.MOST];
        }
        if (!(sum > 0)) {
            return draw;
        }
        for (int i = 0; i < chances.length; i++) {
            chances[i] /= sum;
        }
        return NetDistribution.of(chances);
    }

    /** Who asks, with the draws that are used. */
    public Thrower me() {
        return me;
    }

    /** The opponent. */
    public Thrower versus() {
        return versus;
    }

    /** The same two with other tries of the first; what they throw is as it was. */
    Matchup with(List<Tried> tries) {
        return new Matchup(this, me.with(tries));
    }

    private Matchup(Matchup other, Thrower me) {
        this.me = me;
        versus = other.versus;
        turns = other.turns;
        meFirst = other.meFirst;
        theyFirst = other.theyFirst;
        races = other.races;
        usual = other.usual;
    }

    BoardTurns turns() {
        return turns;
    }

    /** Net points of a round from the first player's view, both playing their base policies. */
    public NetDistribution net(boolean whetherMeFirst) {
        return whetherMeFirst ? meFirst : theyFirst;
    }

    /** Chance to win a game from nil all. */
    public double win(boolean whetherMeFirst) {
        return usual.winOrHalf(0, 0, whetherMeFirst);
    }

    /** Rounds that a game from nil all takes on average, either side throwing first in half of them. */
    double rounds() {
        double rounds = 0;
        for (boolean first : new boolean[] {true, false}) {
            // No net is impossible (PSEUDO_ROUNDS), so every game ends.
            if (usual.from(0, 0, first) instanceof RaceAnswer.Ends ends) {
                rounds += ends.expectedRounds() / 2;
            }
        }
        return rounds;
    }

    /**
     * What the end of a round is worth.
     *
     * @param game before the round, open
     * @return chance to win the game, by draw, then by net points + 12
     */
    double[][] values(Game game) {
        double[][] values = new double[races.size()][2 * Lie.MOST + 1];
        for (int draw = 0; draw < values.length; draw++) {
            values[draw] = values(races.get(draw), game);
        }
        return values;
    }

    /** The same where the player is taken to be the usual one. */
    double[] usualValues(Game game) {
        return values(usual, game);
    }

    private static double[] values(Race race, Game game) {
        double[] values = new double[2 * Lie.MOST + 1];
        for (int net = -Lie.MOST; net <= Lie.MOST; net++) {
            values[net + Lie.MOST] = race.value(game.play(Math.max(0, net), Math.max(0, -net)));
        }
        return values;
    }
}
