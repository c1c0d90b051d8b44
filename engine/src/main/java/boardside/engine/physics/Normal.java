package boardside.engine.physics;

/**
 * Random numbers by position: the k-th of a seed is a function of seed and k alone, so that work can be split over threads
 * in any way and gives the same. Uniforms are Steele, Lea and Flood's SplitMix64 (2014, "Fast splittable pseudorandom number
 * generators", OOPSLA); normals are Wichura's inverse of the normal distribution (1988, algorithm AS 241, PPND16, Applied
 * Statistics 37, 477-484), relative error 1e-16 in his arithmetic.
 */
public final class Normal {
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private Normal() {}

    /** The k-th standard normal number of a seed. */
    public static double at(long seed, long k) {
        long z = seed + (k + 1) * GOLDEN;
        z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
        z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
        z ^= z >>> 31;
        // The middles of 2^53 equal parts of 0..1.
        return quantile(((z >>> 11) + 0.5) * 0x1p-53);
    }

    /**
     * The value that a standard normal variable is below with a chance of {@code p}, 0..1 exclusive. Coefficients stand as
     * printed, with more digits than a double holds.
     */
    @SuppressWarnings("FloatingPointLiteralPrecision")
    public static double quantile(double p) {
        double q = p - 0.5;
        if (Math.abs(q) <= 0.425) {
            double r = 0.180625 - q * q;
            return q
                    * (((((((2509.0809287301226727 * r + 33430.575583588128105) * r + 67265.770927008700853) * r
                                                                                            + 45921.953931549871457)
                                                                                    * r
                                                                            + 13731.693765509461125)
                                                                    * r
                                                            + 1971.5909503065514427)
                                                    * r
                                            + 133.14166789178437745)
                                    * r
                            + 3.387132872796366608)
                    / (((((((5226.495278852545925 * r + 28729.085735721942674) * r + 39307.89580009271061) * r
                                                                                            + 21213.794301586595867)
                                                                                    * r
                                                                            + 5394.1960214247511077)
                                                                    * r
                                                            + 687.1870074920579083)
                                                    * r
                                            + 42.313330701600911252)
                                    * r
                            + 1);
        }
        double r = Math.sqrt(-Elementary.log(q < 0 ? p : 1 - p));
        double value;
        if (r <= 5) {
            r -= 1.6;
            value = (((((((7.7454501427834140764e-4 * r + 0.0227238449892691845833) * r + 0.24178072517745061177) * r
                                                                                            + 1.27045825245236838258)
                                                                                    * r
                                                                            + 3.64784832476320460504)
                                                                    * r
                                                            + 5.7694972214606914055)
                                                    * r
                                            + 4.6303378461565452959)
                                    * r
                            + 1.42343711074968357734)
                    / (((((((1.05075007164441684324e-9 * r + 5.475938084995344946e-4) * r + 0.0151986665636164571966)
                                                                                                    * r
                                                                                            + 0.14810397642748007459)
                                                                                    * r
                                                                            + 0.68976733498510000455)
                                                                    * r
                                                            + 1.6763848301838038494)
                                                    * r
                                            + 2.05319162663775882187)
                                    * r
                            + 1);
        } else {
            r -= 5;
            value = (((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 0.0012426609473880784386)
                                                                                                    * r
                                                                                            + 0.026532189526576123093)
                                                                                    * r
                                                                            + 0.29656057182850489123)
                                                                    * r
                                                            + 1.7848265399172913358)
                                                    * r
                                            + 5.4637849111641143699)
                                    * r
                            + 6.6579046435011037772)
                    / (((((((2.04426310338993978564e-15 * r + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5)
                                                                                                    * r
                                                                                            + 7.868691311456132591e-4)
                                                                                    * r
                                                                            + 0.0148753612908506148525)
                                                                    * r
                                                            + 0.13692988092273580531)
                                                    * r
                                            + 0.59983220655588793769)
                                    * r
                            + 1);
        }
        return q < 0 ? -value : value;
    }
}
