package boardside.app.practice;

import boardside.engine.rules.Word;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Target;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a run of placement or situations is a go at.
 *
 * @param targets parts of the board that are called, of placement
 * @param shots shots that are called, of situations; in a chain, in their order
 * @param chain whether the shots follow each other
 * @param call who calls the next target or shot
 * @param until how many are to work before the run is over, or null
 * @param tries after how many tries it is over, or null
 * @param situation id of the situation, or empty
 * @param name the situation's name, or empty
 * @param partner name of the other who takes turns, or empty
 */
public record Exercise(
        List<Target> targets,
        List<Step> shots,
        boolean chain,
        Call call,
        @Nullable Integer until,
        @Nullable Integer tries,
        String situation,
        String name,
        String partner) {
    /** Tries in the longest run that ends by itself. */
    public static final int MOST_TRIES = 1000;

    /** Checked, lists copied. */
    public Exercise {
        targets = List.copyOf(targets);
        shots = List.copyOf(shots);
        if (until != null && !(until >= 1 && until <= MOST_TRIES)
                || tries != null && !(tries >= 1 && tries <= MOST_TRIES)) {
            throw new IllegalArgumentException("a run ends after 1 to " + MOST_TRIES + " tries, worked or all");
        }
        if (chain && shots.size() > Try.MOST_STEPS) {
            throw new IllegalArgumentException("a chain has at most " + Try.MOST_STEPS + " shots, not " + shots.size());
        }
    }

    /** Who calls. */
    public enum Call implements Word {
        /** The player, each time they wish. */
        MINE,
        /** One after the other. */
        ORDER,
        /** At random, each as often. */
        RANDOM,
        /** At random, the more often the less it works. */
        WEAKNESS
    }

    /**
     * A shot to try.
     *
     * @param target where it is to lie, or null where it is not to lie anywhere
     * @param position what lies on the board before it
     */
    public record Step(Shot shot, @Nullable Target target, Position position) {}
}
