package boardside.engine.tactics.advice;

import boardside.engine.physics.Board;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * How often the common situations come up on the first player's throws in a game, as nobody records it: rounds in which both
 * sides play their base policies, thrown with the draws of the player, times the rounds of a game. A board counts for the
 * situations that block the same ways in ({@link Position#family}), in equal shares; one that is like none of them for nothing.
 */
final class Occasions {
    /** Rounds for each order of throwing and task. */
    private static final int ROUNDS = 32;

    private static final int TASKS = 32;
    private static final long SEED = 5_108_221;

    private Occasions() {}

    /** Times a game, 0 or more; situations that never come up are left out. */
    static Map<Situation, Double> of(Matchup matchup) {
        List<Map<String, Integer>> counted = IntStream.range(0, TASKS)
                .parallel()
                .mapToObj(task -> boards(matchup.turns(), task))
                .toList();
        Map<String, Double> families = new HashMap<>();
        double each = matchup.rounds() / (2.0 * ROUNDS * TASKS);
        counted.forEach(some -> some.forEach((family, times) -> families.merge(family, times * each, Double::sum)));
        Map<String, List<Situation>> alike = new HashMap<>();
        for (Situation situation : Situation.values()) {
            alike.computeIfAbsent(situation.position().family(Board.REGULATION_WIDTH), key -> new ArrayList<>())
                    .add(situation);
        }
        Map<Situation, Double> times = new EnumMap<>(Situation.class);
        alike.forEach((family, situations) -> {
            Double often = families.get(family);
            if (often != null) {
                situations.forEach(situation -> times.put(situation, often / situations.size()));
            }
        });
        return times;
    }

    /** Kinds of board before my throws. */
    private static Map<String, Integer> boards(BoardTurns turns, int task) {
        Map<String, Integer> boards = new HashMap<>();
        Luck luck = new Luck(SEED);
        for (int n = 0; n < 2 * ROUNDS; n++) {
            luck.at(task, n, -1);
            Lie lie = Lie.fresh(n % 2 == 0);
            while (lie.left() > 0) {
                if (lie.myTurn) {
                    boards.merge(Position.family(middles(lie), Board.REGULATION_WIDTH), 1, Integer::sum);
                }
                lie = turns.play(lie, turns.base(lie), Rollouts.draw(task, n, turns.draws()), luck);
            }
        }
        return boards;
    }

    private static List<Spot> middles(Lie lie) {
        List<Spot> middles = new ArrayList<>(lie.count());
        for (int i = 0; i < lie.count(); i++) {
            // Inches from metres may pass the edge by a rounding.
            middles.add(new Spot(
                    Math.max(-Spot.HALF_WIDTH, Math.min(Spot.HALF_WIDTH, lie.x[i])),
                    Math.max(0, Math.min(Spot.LENGTH, lie.y[i]))));
        }
        return middles;
    }
}
