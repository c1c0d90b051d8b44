package boardside.engine.odds;

import boardside.engine.rules.Game;
import boardside.engine.rules.Game.Result;
import boardside.engine.rules.GameRules;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import org.ejml.simple.SimpleMatrix;

/**
 * A race by another way: the states are found by playing rounds with {@link Game}, and the equations are solved by the
 * dense linear solver of EJML. States from which no end can be reached are found on the graph.
 */
final class LinearRace {
    /** A score and who throws first. */
    record State(int mine, int theirs, boolean meFirst) {
        static State of(Game game) {
            return new State(game.mine(), game.theirs(), game.meFirst());
        }
    }

    private record Move(int from, int to, double chance) {}

    final Map<State, Integer> index = new HashMap<>();
    final double[] win;
    final double[] rounds;
    final double[] never;

    LinearRace(GameRules rules, NetDistribution meFirst, NetDistribution theyFirst) {
        List<Move> moves = new ArrayList<>();
        List<double[]> ends = new ArrayList<>();
        Queue<Game> open = new ArrayDeque<>(List.of(Game.start(rules, true), Game.start(rules, false)));
        open.forEach(game -> index.put(State.of(game), index.size()));
        for (int i = 0; !open.isEmpty(); i++) {
            Game game = open.remove();
            double[] end = new double[2];
            ends.add(end);
            NetDistribution net = game.meFirst() ? meFirst : theyFirst;
            for (int points = -12; points <= 12; points++) {
                if (net.chance(points) > 0) {
                    Game after = game.play(Math.max(points, 0), Math.max(-points, 0));
                    if (after.over()) {
                        end[after.result() == Result.WON ? 0 : 1] += net.chance(points);
                    } else {
                        Integer to = index.get(State.of(after));
                        if (to == null) {
                            to = index.size();
                            index.put(State.of(after), to);
                            open.add(after);
                        }
                        moves.add(new Move(i, to, net.chance(points)));
                    }
                }
            }
        }
        int n = index.size();
        boolean[] live = new boolean[n];
        boolean grown = true;
        for (int i = 0; i < n; i++) {
            live[i] = ends.get(i)[0] + ends.get(i)[1] > 0;
        }
        while (grown) {
            grown = false;
            for (Move move : moves) {
                if (live[move.to()] && !live[move.from()]) {
                    live[move.from()] = true;
                    grown = true;
                }
            }
        }
        SimpleMatrix a = SimpleMatrix.identity(n);
        SimpleMatrix c = new SimpleMatrix(n, 3);
        for (int i = 0; i < n; i++) {
            c.set(i, live[i] ? 1 : 2, 1);
            c.set(i, 0, ends.get(i)[0]);
        }
        for (Move move : moves) {
            if (live[move.from()]) {
                a.set(move.from(), move.to(), a.get(move.from(), move.to()) - move.chance());
            }
        }
        SimpleMatrix x = a.solve(c);
        win = new double[n];
        rounds = new double[n];
        never = new double[n];
        for (int i = 0; i < n; i++) {
            win[i] = x.get(i, 0) + x.get(i, 2) / 2;
            rounds[i] = x.get(i, 1);
            never[i] = x.get(i, 2);
        }
    }
}
