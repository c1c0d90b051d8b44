package boardside.engine.physics;

/**
 * Exponential and logarithm from additions and multiplications alone: the same bits on every virtual machine, and fast.
 * Both reduce the argument by a table of 64ths and add a short Taylor series (Tang 1989, "Table-driven implementation of
 * the exponential function", ACM TOMS 15, 144-157; Tang 1990 on the logarithm, TOMS 16, 378-400).
 */
final class Elementary {
    private static final int PARTS = 64;
    private static final double LN2_HIGH = 0x1.62e42feep-1;
    private static final double LN2_LOW = 0x1.a39ef35793c76p-33;
    private static final double PER_LN2 = PARTS / 0x1.62e42fefa39efp-1;

    /** Added and taken away again, rounds to a whole number and leaves it in the low bits. */
    private static final double ROUNDER = 0x1.8p52;

    private static final double LOWEST = -700;
    private static final double[] POWERS = new double[PARTS];
    private static final double[] INVERSES = new double[PARTS];
    private static final double[] LOGARITHMS = new double[PARTS];

    static {
        for (int i = 0; i < PARTS; i++) {
            POWERS[i] = StrictMath.pow(2, i / (double) PARTS);
            INVERSES[i] = 1 / (1 + (i + 0.5) / PARTS);
            LOGARITHMS[i] = -StrictMath.log(INVERSES[i]);
        }
    }

    private Elementary() {}

    /**
     * e^x for x up to 700, relative error below 1e-15; 0 for x below -700.
     *
     * @param x -infinity..700
     */
    static double exp(double x) {
        if (!(x >= LOWEST)) {
            return 0;
        }
        double shifted = x * PER_LN2 + ROUNDER;
        double n = shifted - ROUNDER;
        long bits = Double.doubleToRawLongBits(shifted);
        double r = (x - n * (LN2_HIGH / PARTS)) - n * (LN2_LOW / PARTS);
        double square = r * r;
        double series = r + square * ((0.5 + r * (1.0 / 6)) + square * (1.0 / 24 + r * (1.0 / 120)));
        double power = POWERS[(int) bits & (PARTS - 1)];
        // The rounder's own bits shift out at the top; what stays is the whole number of doublings.
        double scale = Double.longBitsToDouble(((bits << 13 >> 19) + 1023) << 52);
        return (power + power * series) * scale;
    }

    /**
     * Natural logarithm, absolute error below 4e-16 times the greater of 1 and the result.
     *
     * @param x above 0, finite, not subnormal
     */
    static double log(double x) {
        long bits = Double.doubleToRawLongBits(x);
        int exponent = (int) (bits >> 52) - 1023;
        int part = (int) (bits >> 46) & (PARTS - 1);
        double mantissa = Double.longBitsToDouble((bits & 0xFFFFFFFFFFFFFL) | 0x3FF0000000000000L);
        double r = mantissa * INVERSES[part] - 1;
        double square = r * r;
        double series = r
                - square
                        * ((0.5 - r * (1.0 / 3))
                                + square * ((0.25 - r * 0.2) + square * ((1.0 / 6 - r * (1.0 / 7)) + square * 0.125)));
        return exponent * LN2_HIGH + (LOGARITHMS[part] + (series + exponent * LN2_LOW));
    }
}
