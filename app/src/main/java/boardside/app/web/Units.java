package boardside.app.web;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Lengths as this device shows them; stored are inches. */
final class Units {
    private static final double CM = 2.54;
    private static final double GRAMS = 28.349523125;

    private Units() {}

    /** How many of this device's units an inch is. */
    static double perInch(Look look) {
        return look.units().equals("cm") ? CM : 1;
    }

    /** A length in inches as the number to show and to type. */
    static String length(Look look, double inches) {
        return plain(inches * perInch(look));
    }

    /** A length as typed, in inches. */
    static double inches(Look look, double typed) {
        return rounded(typed / perInch(look)).doubleValue();
    }

    /** Ounces (avoirdupois) as whole grams. */
    static long grams(double ounces) {
        return Math.round(ounces * GRAMS);
    }

    /** A number without needless digits. */
    static String plain(double number) {
        return rounded(number).stripTrailingZeros().toPlainString();
    }

    private static BigDecimal rounded(double number) {
        return BigDecimal.valueOf(number).setScale(4, RoundingMode.HALF_UP);
    }
}
