package boardside.bench.physics;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Board;
import boardside.engine.physics.Contact;
import boardside.engine.physics.Lying;
import boardside.engine.physics.Scene;
import boardside.engine.rules.BoardKind;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * The throws that are timed: slides of a usual player up a regulation board, around a landing at (0, 13) with 2.7 m/s, and
 * scenes of 0, 1, 3 and 7 resting bags. One or two bags lie in the path, the others beside it.
 */
final class Throws {
    /** How many there are, a power of two. */
    static final int COUNT = 1024;

    static final Bag BAG = Bag.of(0.35);

    private static final double[][] PLACES = {
        {0, 33.5}, {-1, 25}, {8, 20}, {-8, 14}, {9, 36}, {-9, 30}, {-7, 42},
    };

    final double[] x = new double[COUNT];
    final double[] y = new double[COUNT];
    final double[] across = new double[COUNT];
    final double[] up = new double[COUNT];

    /** The same throws for the same seed. */
    Throws(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        for (int n = 0; n < COUNT; n++) {
            x[n] = 2.5 * normal(random);
            y[n] = 13 + 1.5 * normal(random);
            double speed = 2.7 + 0.25 * normal(random);
            double heading = Math.toRadians(2 * normal(random));
            across[n] = speed * Math.sin(heading);
            up[n] = speed * Math.cos(heading);
        }
    }

    /** The scene with so many bags. */
    static Scene scene(int bags) {
        List<Lying> lying = Arrays.stream(PLACES, 0, bags)
                .map(place -> new Lying(place[0], place[1], BAG))
                .toList();
        return new Scene(Board.of(BoardKind.REGULATION), Contact.USUAL, lying);
    }

    /** By the sum of twelve uniforms, which is near enough here and ends at six deviations. */
    private static double normal(UniformRandomProvider random) {
        double sum = -6;
        for (int n = 0; n < 12; n++) {
            sum += random.nextDouble();
        }
        return sum;
    }
}
