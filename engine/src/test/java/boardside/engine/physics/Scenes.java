package boardside.engine.physics;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/** Random boards with bags, and throws onto them. */
final class Scenes {
    private Scenes() {}

    /** A regulation board of a random slope with so many bags, none overlapping, none within 6 in of (0, 10). */
    static Scene of(UniformRandomProvider random, int bags, Contact contact) {
        List<Lying> lying = new ArrayList<>();
        while (lying.size() < bags) {
            double x = 24 * random.nextDouble() - 12;
            double y = 48 * random.nextDouble();
            if (!Board.overHole(x, y)
                    && Math.hypot(x, y - 10) > 2 * Bag.RADIUS
                    && lying.stream().allMatch(other -> Math.hypot(other.x() - x, other.y() - y) > 2 * Bag.RADIUS)) {
                lying.add(new Lying(x, y, bag(random)));
            }
        }
        return new Scene(new Board(24, 15 * random.nextDouble()), contact, lying);
    }

    /** A bag of random friction, and of a weight that bodies allow. */
    static Bag bag(UniformRandomProvider random) {
        return new Bag(0.3 + 0.4 * random.nextDouble(), 14 + 2.5 * random.nextDouble());
    }
}
