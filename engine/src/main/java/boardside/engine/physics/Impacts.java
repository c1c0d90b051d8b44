package boardside.engine.physics;

/**
 * The blow between bags that touch at one instant: Newton's restitution along each line of centres, Coulomb friction
 * across it, all contacts together. One contact is solved outright; several by successive impulses until nothing changes
 * (projected Gauss-Seidel on the velocity-level complementarity problem; Moreau 1988, Jean 1999). Bags do not spin, so
 * friction acts on the centres. Mutable; SI units.
 */
final class Impacts {
    private static final int MOST = 36;
    private static final int SWEEPS = 200;
    private static final double SETTLED = 1e-13;

    private final double restitution;
    private final double friction;
    private final double parting;

    private int count;
    private final int[] first = new int[MOST];
    private final int[] second = new int[MOST];
    private final double[] normalX = new double[MOST];
    private final double[] normalY = new double[MOST];
    private final double[] target = new double[MOST];
    private final double[] pressed = new double[MOST];
    private final double[] rubbed = new double[MOST];

    Impacts(Contact contact) {
        restitution = contact.restitution();
        friction = contact.friction();
        parting = contact.parting();
    }

    /** Forgets all contacts. */
    void clear() {
        count = 0;
    }

    /** Adds a contact; the unit normal points from bag {@code i} to bag {@code j}. */
    void add(int i, int j, double nx, double ny) {
        first[count] = i;
        second[count] = j;
        normalX[count] = nx;
        normalY[count] = ny;
        count++;
    }

    /** Whether two bags' contact has been added. */
    boolean has(int i, int j) {
        for (int c = 0; c < count; c++) {
            if ((first[c] == i && second[c] == j) || (first[c] == j && second[c] == i)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Changes the velocities so that no contact approaches.
     *
     * @param vx by bag, m/s. Modified.
     * @param vy by bag, m/s. Modified.
     * @param perMass one over the mass by bag, 1/kg. Not modified.
     */
    void solve(double[] vx, double[] vy, double[] perMass) {
        for (int c = 0; c < count; c++) {
            double approach = -normalSpeed(c, vx, vy);
            target[c] = approach > 0 ? Math.max(restitution * approach, parting) : 0;
            pressed[c] = 0;
            rubbed[c] = 0;
        }
        int sweeps = count == 1 ? 1 : SWEEPS;
        for (int n = 0; n < sweeps; n++) {
            double change = 0;
            for (int c = 0; c < count; c++) {
                change = Math.max(change, press(c, vx, vy, perMass));
            }
            if (change < SETTLED) {
                break;
            }
        }
    }

    private double normalSpeed(int c, double[] vx, double[] vy) {
        int i = first[c];
        int j = second[c];
        return (vx[j] - vx[i]) * normalX[c] + (vy[j] - vy[i]) * normalY[c];
    }

    /** One contact's share of a sweep; how much its impulses changed, as a speed. */
    private double press(int c, double[] vx, double[] vy, double[] perMass) {
        int i = first[c];
        int j = second[c];
        double nx = normalX[c];
        double ny = normalY[c];
        double mass = 1 / (perMass[i] + perMass[j]);
        double press = Math.max(0, pressed[c] + mass * (target[c] - normalSpeed(c, vx, vy)));
        double normal = press - pressed[c];
        pressed[c] = press;
        double most = friction * press;
        double across = (vy[j] - vy[i]) * nx - (vx[j] - vx[i]) * ny;
        double rub = Math.max(-most, Math.min(most, rubbed[c] - mass * across));
        double tangential = rub - rubbed[c];
        rubbed[c] = rub;
        double px = normal * nx - tangential * ny;
        double py = normal * ny + tangential * nx;
        vx[i] -= px * perMass[i];
        vy[i] -= py * perMass[i];
        vx[j] += px * perMass[j];
        vy[j] += py * perMass[j];
        return (Math.abs(normal) + Math.abs(tangential)) / mass;
    }
}
