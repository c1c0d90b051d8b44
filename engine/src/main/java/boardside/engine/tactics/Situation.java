package boardside.engine.tactics;

import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import java.util.Arrays;

/** Common situations, by names of our own; each also stands for its mirror image. */
public enum Situation implements Word {
    /** One of theirs right before the hole. */
    GATE(versus(0, 33)),
    /** One of theirs in the middle, two bags out. */
    SENTRY(versus(0, 27)),
    /** One of theirs halfway up the board. */
    TOLL(versus(0, 15)),
    /** Two of theirs side by side before the hole. */
    HEDGE(versus(-3.5, 33), versus(3.5, 33)),
    /** One of theirs left of the middle lane, close. */
    SHOULDER(versus(-8, 33)),
    /** One of mine hanging at the hole's left edge. */
    HANGER(me(-4, 36)),
    /** One of theirs behind the hole: a wall for them, a backstop for me. */
    BACKSTOP(versus(0, 45)),
    /** Both ways round are taken; the middle is free. */
    ALLEY(versus(-8, 33), versus(8, 33)),
    /** A block with one of mine right behind it. */
    TUCKED(versus(0, 27), me(0, 33)),
    /** Three in a row across. */
    WALL(versus(-8, 30), versus(0, 30), versus(8, 30)),
    /** Nothing on the board. */
    OPEN();

    private final Position position;

    Situation(Lying... bags) {
        position = new Position(Arrays.asList(bags));
    }

    /** Where the bags lie. */
    public Position position() {
        return position;
    }

    private static Lying me(double x, double y) {
        return new Lying(x, y, Side.ME);
    }

    private static Lying versus(double x, double y) {
        return new Lying(x, y, Side.VERSUS);
    }
}
