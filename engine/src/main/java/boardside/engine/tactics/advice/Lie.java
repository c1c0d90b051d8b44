package boardside.engine.tactics.advice;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Board;
import boardside.engine.physics.Contact;
import boardside.engine.physics.Lying;
import boardside.engine.physics.Scene;
import boardside.engine.rules.Side;
import java.util.ArrayList;
import java.util.List;

/**
 * What lies where between two bags of a round, in plain arrays: rollouts make thousands a second. Immutable; arrays are not
 * to be written to. Bags in the round may lie on each other.
 */
final class Lie {
    /** Points a round can move: -12..12. */
    static final int MOST = 12;

    private static final int IN = 3;

    final double[] x;
    final double[] y;
    final boolean[] mine;
    /** The number that each bag had in the state before, -1 for the one just thrown. */
    final int[] was;

    final int inMe;
    final int inVersus;
    final int leftMe;
    final int leftVersus;
    final boolean myTurn;
    /** Whether the bag just thrown is in. */
    final boolean lastIn;

    Lie(
            double[] x,
            double[] y,
            boolean[] mine,
            int[] was,
            int inMe,
            int inVersus,
            int leftMe,
            int leftVersus,
            boolean myTurn,
            boolean lastIn) {
        this.x = x;
        this.y = y;
        this.mine = mine;
        this.was = was;
        this.inMe = inMe;
        this.inVersus = inVersus;
        this.leftMe = leftMe;
        this.leftVersus = leftVersus;
        this.myTurn = myTurn;
        this.lastIn = lastIn;
    }

    /** A position that is asked about. */
    static Lie of(RoundPosition position) {
        List<boardside.engine.tactics.Lying> bags = position.board().bags();
        int n = bags.size();
        double[] x = new double[n];
        double[] y = new double[n];
        boolean[] mine = new boolean[n];
        int[] was = new int[n];
        for (int i = 0; i < n; i++) {
            x[i] = bags.get(i).x();
            y[i] = bags.get(i).y();
            mine[i] = bags.get(i).side() == Side.ME;
            was[i] = i;
        }
        return new Lie(
                x,
                y,
                mine,
                was,
                position.inMe(),
                position.inVersus(),
                position.leftMe(),
                position.leftVersus(),
                position.next() == Side.ME,
                false);
    }

    /** An empty board before a round. */
    static Lie fresh(boolean meFirst) {
        return new Lie(
                new double[0],
                new double[0],
                new boolean[0],
                new int[0],
                0,
                0,
                RoundPosition.BAGS,
                RoundPosition.BAGS,
                meFirst,
                false);
    }

    int count() {
        return x.length;
    }

    int left() {
        return leftMe + leftVersus;
    }

    /** Net points, mine less theirs, as it lies. */
    int net() {
        int net = IN * (inMe - inVersus);
        for (boolean own : mine) {
            net += own ? 1 : -1;
        }
        return Math.max(-MOST, Math.min(MOST, net));
    }

    Scene scene(Board board, Bag myBag, Bag theirBag) {
        List<Lying> bags = new ArrayList<>(x.length);
        for (int i = 0; i < x.length; i++) {
            bags.add(new Lying(x[i], y[i], mine[i] ? myBag : theirBag));
        }
        return new Scene(board, Contact.USUAL, bags);
    }

    /** The state after a throw of the side whose turn it is: the thrown bag and the others end as said. */
    Lie after(Ends ends) {
        int n = x.length;
        int stay = 0;
        for (int i = 0; i <= n; i++) {
            stay += ends.on(i) ? 1 : 0;
        }
        double[] nextX = new double[stay];
        double[] nextY = new double[stay];
        boolean[] nextMine = new boolean[stay];
        int[] nextWas = new int[stay];
        int me = inMe;
        int versus = inVersus;
        int at = 0;
        // The thrown bag has number 0 among the ends and comes last among the bags.
        for (int i = 1; i <= n + 1; i++) {
            int end = i <= n ? i : 0;
            boolean own = end == 0 ? myTurn : mine[end - 1];
            if (ends.on(end)) {
                nextX[at] = ends.x(end);
                nextY[at] = ends.y(end);
                nextMine[at] = own;
                nextWas[at++] = end - 1;
            } else if (ends.in(end)) {
                me += own ? 1 : 0;
                versus += own ? 0 : 1;
            }
        }
        int stillMe = leftMe - (myTurn ? 1 : 0);
        int stillVersus = leftVersus - (myTurn ? 0 : 1);
        // Sides alternate; a side without bags is passed over.
        boolean next = myTurn ? stillVersus == 0 && stillMe > 0 : stillMe > 0 || stillVersus == 0;
        return new Lie(nextX, nextY, nextMine, nextWas, me, versus, stillMe, stillVersus, next, ends.in(0));
    }

    /** Where a bag of this state lies in the next one, or -1 where it is gone. */
    static int now(Lie after, int bag) {
        for (int i = 0; i < after.was.length; i++) {
            if (after.was[i] == bag) {
                return i;
            }
        }
        return -1;
    }

    /** How bags ended: number 0 is the thrown one, then those that lay there. */
    interface Ends {
        boolean in(int bag);

        boolean on(int bag);

        double x(int bag);

        double y(int bag);
    }
}
