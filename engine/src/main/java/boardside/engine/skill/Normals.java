package boardside.engine.skill;

/** Standard normal numbers from a fixed start: the same each time (SplitMix64, Steele, Lea and Flood 2014; polar method). */
final class Normals {
    private long state;
    private double spare;
    private boolean hasSpare;

    Normals(long start) {
        state = start;
    }

    /** Uniform, 0 inclusive to 1 exclusive. */
    double uniform() {
        state += 0x9E3779B97F4A7C15L;
        long z = state;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return ((z ^ (z >>> 31)) >>> 11) * 0x1.0p-53;
    }

    double next() {
        if (hasSpare) {
            hasSpare = false;
            return spare;
        }
        while (true) {
            double u = 2 * uniform() - 1;
            double v = 2 * uniform() - 1;
            double s = u * u + v * v;
            if (s < 1 && s > 0) {
                double f = Math.sqrt(-2 * Math.log(s) / s);
                spare = v * f;
                hasSpare = true;
                return u * f;
            }
        }
    }
}
