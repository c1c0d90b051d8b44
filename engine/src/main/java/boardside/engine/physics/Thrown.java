package boardside.engine.physics;

import java.util.List;

/**
 * How a throw ended.
 *
 * @param thrown the thrown bag
 * @param bags those that lay there, in the scene's order
 */
public record Thrown(End thrown, List<End> bags) {
    /** Takes a copy of the list. */
    public Thrown {
        bags = List.copyOf(bags);
    }
}
