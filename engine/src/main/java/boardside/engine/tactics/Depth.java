package boardside.engine.tactics;

import boardside.engine.rules.Word;
import java.util.Locale;

/**
 * How far in front of the hole a bag lies, in bags; or beside the hole, or behind it. Six bags fit between the hole and the
 * front edge (common practice, no source).
 */
public enum Depth implements Word {
    /** Touching the hole's lower edge. */
    ONE,
    TWO,
    THREE,
    FOUR,
    FIVE,
    /** At the front edge. */
    SIX,
    BESIDE,
    BACK;

    private static final double BAG = 6;
    private static final double HOLE_FROM = 36;
    private static final double BACK_FROM = 42;

    /** A number of bags, 1 to 6, or {@code beside}, {@code back}. */
    @Override
    public String word() {
        return inFront() ? String.valueOf(bags()) : name().toLowerCase(Locale.ROOT);
    }

    /** Whether it lies in front of the hole. */
    public boolean inFront() {
        return ordinal() < BESIDE.ordinal();
    }

    private int bags() {
        return ordinal() + 1;
    }

    /**
     * Whether bags are put here on purpose: farther from the hole than three they hardly hinder anybody, and are near misses
     * to learn from (common practice, no source).
     */
    public boolean goal() {
        return ordinal() <= THREE.ordinal() || this == BACK;
    }

    /** The depth of a point, {@code y} inches up from the front edge, 0..48. */
    static Depth of(double y) {
        if (y >= BACK_FROM) {
            return BACK;
        }
        return y >= HOLE_FROM ? BESIDE : values()[5 - (int) (y / BAG)];
    }

    /** Inches from the front edge to the middle of it. */
    double centre() {
        return (this == BACK ? BACK_FROM : this == BESIDE ? HOLE_FROM : HOLE_FROM - BAG * bags()) + BAG / 2;
    }
}
