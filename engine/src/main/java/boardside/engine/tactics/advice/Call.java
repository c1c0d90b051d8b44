package boardside.engine.tactics.advice;

import boardside.engine.physics.Board;
import boardside.engine.physics.Landing;
import boardside.engine.physics.ThrowModel;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import org.jspecify.annotations.Nullable;

/**
 * A shot as it is called: what is thrown, and where the bag would stop if nothing lay in its way and there were no hole.
 *
 * <p>How each shot is released, against the player's usual slide, is common practice, no source: a block is thrown higher,
 * so that it lands in the lower part of the board and slides at most three fifths of its way; a back block and an airmail
 * come down steeply and hardly slide; a push comes in flat and slides half as far again.
 *
 * @param shot what is thrown
 * @param aim where it is to stop
 * @param target the called part of the board, for a block or back block, else null
 * @param bag the bag it goes at, counted from 0 among those on the board, or -1
 */
public record Call(Shot shot, Spot aim, @Nullable Target target, int bag) {
    private static final double BLOCK_SHARE = 0.6;
    private static final double STEEP = 4;
    private static final double FLAT = 1.5;
    private static final double AIRMAIL_LANDS = 2;

    /** Checked: only a placed shot has a target. */
    public Call {
        if (shot.placed() != (target != null) || bag < -1) {
            throw new IllegalArgumentException("a " + shot.word() + " with target " + target + " at bag " + bag);
        }
    }

    /** Whether only tries tell how often it works: the physics has no curve and no bag on its edge. */
    public boolean fromTriesAlone() {
        return switch (shot) {
            case CUT_LEFT, CUT_RIGHT, ROLL, DRAG -> true;
            default -> false;
        };
    }

    /** How far it slides when a player with this model throws it, inches. */
    double slide(ThrowModel model) {
        return switch (shot) {
            case BLOCK -> Math.min(model.slide(), BLOCK_SHARE * aim.y());
            case BACK_BLOCK, AIRMAIL, DRAG -> Math.min(model.slide(), STEEP);
            case PUSH -> FLAT * model.slide();
            default -> model.slide();
        };
    }

    /**
     * The landing that a player with this model comes to on average: what they do with the usual throw, off to a side or
     * beyond the hole, they do with every shot.
     */
    public Landing release(ThrowModel model) {
        return new Landing(x(model), y(model), speed(model), 0);
    }

    double x(ThrowModel model) {
        return aim.x() + model.x();
    }

    double y(ThrowModel model) {
        double past = shot == Shot.AIRMAIL || shot == Shot.DRAG ? AIRMAIL_LANDS : 0;
        return aim.y() + past + model.reach() - Board.HOLE_Y - slide(model);
    }

    /** A slide is as long as its speed squared says. */
    double speed(ThrowModel model) {
        return model.speed() * Math.sqrt(slide(model) / model.slide());
    }
}
