package boardside.engine.odds;

import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.GameRules;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** Random inputs from fixed seeds. */
final class Generators {
    private Generators() {}

    static UniformRandomProvider random(long seed) {
        return RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    }

    static LongStream seeds(int count) {
        return LongStream.range(4_000, 4_000L + count);
    }

    static BagChances bag(UniformRandomProvider random) {
        double in = random.nextDouble();
        return new BagChances(in, (1 - in) * random.nextDouble());
    }

    /** Any chances; some of the nets are impossible. */
    static NetDistribution net(UniformRandomProvider random) {
        double[] chances = new double[25];
        double sum = 0;
        while (sum == 0) {
            double share = random.nextDouble();
            for (int i = 0; i < chances.length; i++) {
                chances[i] = random.nextDouble() < share ? -Math.log(1 - random.nextDouble()) : 0;
                sum += chances[i];
            }
        }
        for (int i = 0; i < chances.length; i++) {
            chances[i] /= sum;
        }
        return NetDistribution.of(chances);
    }

    static GameRules rules(UniformRandomProvider random) {
        int target = 1 + random.nextInt(24);
        return new GameRules(
                target,
                random.nextBoolean(),
                random.nextInt(target),
                random.nextBoolean() ? 0 : random.nextInt(target + 1),
                random.nextBoolean() ? FirstThrow.KEEP : FirstThrow.SWAP);
    }
}
