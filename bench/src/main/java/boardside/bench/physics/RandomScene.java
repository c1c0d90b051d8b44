package boardside.bench.physics;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Board;
import boardside.engine.physics.Contact;
import boardside.engine.physics.Lying;
import boardside.engine.physics.Scene;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * A throw onto a random scene: boards flat to steep, cloth from slick to slow, every bag its own; most throws up the board
 * from near its front, some any way at any place.
 */
record RandomScene(Scene scene, Bag bag, double x, double y, double across, double up) {
    static RandomScene of(UniformRandomProvider random, int bags) {
        double slope = random.nextInt(10) == 0 ? 0 : 15 * random.nextDouble();
        boolean slick = random.nextInt(10) == 0;
        boolean anyWay = random.nextInt(3) == 0;
        double x = anyWay ? 20 * random.nextDouble() - 10 : 6 * random.nextDouble() - 3;
        double y = anyWay ? 2 + 30 * random.nextDouble() : 8 + 8 * random.nextDouble();
        double across = (anyWay ? 4 : 1) * (random.nextDouble() - 0.5);
        double up = anyWay ? 4 * random.nextDouble() - 2 : 1.5 + 2 * random.nextDouble();
        List<Lying> lying = new ArrayList<>();
        while (lying.size() < bags) {
            double bx = 24 * random.nextDouble() - 12;
            double by = 48 * random.nextDouble();
            if (!Board.overHole(bx, by)
                    && Math.hypot(bx - x, by - y) > 2 * Bag.RADIUS
                    && lying.stream().allMatch(other -> Math.hypot(other.x() - bx, other.y() - by) > 2 * Bag.RADIUS)) {
                lying.add(new Lying(bx, by, bag(random, slick)));
            }
        }
        Scene scene = new Scene(new Board(24, slope), Contact.USUAL, lying);
        return new RandomScene(scene, bag(random, slick), x, y, across, up);
    }

    private static Bag bag(UniformRandomProvider random, boolean slick) {
        return new Bag((slick ? 0 : 0.2) + (slick ? 0.2 : 0.5) * random.nextDouble(), 14 + 2.5 * random.nextDouble());
    }
}
