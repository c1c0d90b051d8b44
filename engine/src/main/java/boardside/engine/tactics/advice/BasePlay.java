package boardside.engine.tactics.advice;

import boardside.engine.rules.Approach;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;

/**
 * What sides play in the rest of a round: simple rules, so that many rounds can be played. The conservative side takes no
 * risks and slides at the hole whatever lies there: what bars the way it may push along. The aggressive one slides where the
 * way is free; else it goes through bags of its own that can be collected, and over the others by airmail. Common practice, no
 * source.
 */
final class BasePlay {
    private static final Call SLIDE = new Call(Shot.SLIDE, Spot.HOLE, null, -1);
    private static final Call AIRMAIL = new Call(Shot.AIRMAIL, Spot.HOLE, null, -1);
    private static final Call LEFT = new Call(Shot.SLIDE, new Spot(-7.5, 34), null, -1);
    private static final Call RIGHT = new Call(Shot.SLIDE, new Spot(7.5, 34), null, -1);

    /** A bag that lies nearer to the line to the hole than this is in the way, inches. */
    private static final double HALF_WAY = 4.5;

    /** Bags below this are slid past or over, inches up the board: they lie where bags land. */
    private static final double FROM = 18;

    /** A bag farther from the hole than this is not collected, inches up. */
    private static final double COLLECTED_FROM = 26;

    private BasePlay() {}

    static Call of(Lie lie, Approach approach) {
        if (approach == Approach.CONSERVATIVE) {
            return SLIDE;
        }
        int blocker = -1;
        for (int i = 0; i < lie.count(); i++) {
            boolean inTheWay = Math.abs(lie.x[i]) < HALF_WAY && lie.y[i] > FROM && lie.y[i] < Spot.HOLE.y();
            if (inTheWay && (blocker < 0 || lie.y[i] < lie.y[blocker])) {
                blocker = i;
            }
        }
        if (blocker < 0) {
            return SLIDE;
        }
        boolean own = lie.mine[blocker] == lie.myTurn;
        return own && lie.y[blocker] > COLLECTED_FROM ? Candidates.through(lie, blocker) : AIRMAIL;
    }

    /** A bag on the board beside what bars the way, on the side that is less crowded. */
    static Call aside(Lie lie) {
        return crowded(lie, -1) <= crowded(lie, 1) ? LEFT : RIGHT;
    }

    private static int crowded(Lie lie, int side) {
        int count = 0;
        for (int i = 0; i < lie.count(); i++) {
            count += lie.x[i] * side > 2 && lie.y[i] > FROM ? 1 : 0;
        }
        return count;
    }
}
