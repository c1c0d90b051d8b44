package boardside.bench.physics;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Scene;
import boardside.engine.rules.Outcome;
import java.util.Arrays;

/**
 * The contact model of docs/physics.md by brute force: short steps of time for all bags at once, blows where discs overlap
 * after a step, no closed form and no event. It shares no code with the simulator but the records.
 */
final class FineSteps {
    final double[] x;
    final double[] y;
    final Outcome[] outcome;

    /**
     * Runs a throw; bags are numbered from 0, the thrown one.
     *
     * @param step of time, s
     */
    FineSteps(Scene scene, Bag thrown, double inchesX, double inchesY, double across, double up, double step) {
        int n = scene.bags().size() + 1;
        double inch = 0.0254;
        double sin = Math.sin(Math.toRadians(scene.board().slope()));
        double cos = Math.cos(Math.toRadians(scene.board().slope()));
        double g = 9.80665;
        double fall = Math.sqrt(2 * scene.contact().drop() * inch / (g * cos));
        x = new double[n];
        y = new double[n];
        outcome = new Outcome[n];
        double[] vx = new double[n];
        double[] vy = new double[n];
        double[] mu = new double[n];
        double[] mass = new double[n];
        boolean[] moves = new boolean[n];
        boolean[] over = new boolean[n];
        for (int i = 0; i < n; i++) {
            Bag bag = i == 0 ? thrown : scene.bags().get(i - 1).bag();
            mu[i] = bag.friction();
            mass[i] = bag.ounces();
            x[i] = inch * (i == 0 ? inchesX : scene.bags().get(i - 1).x());
            y[i] = inch * (i == 0 ? inchesY : scene.bags().get(i - 1).y());
        }
        vx[0] = across;
        vy[0] = up;
        moves[0] = true;
        boolean[] touched = new boolean[n];
        for (double t = 0; t < 60; t += step) {
            boolean any = false;
            for (int i = 0; i < n; i++) {
                if (outcome[i] != null || !moves[i]) {
                    continue;
                }
                any = true;
                // Half the change of speed before the move and half after it: exact for constant deceleration.
                double v = Math.hypot(vx[i], vy[i]);
                double ax = v > 0 ? -mu[i] * g * cos * vx[i] / v : 0;
                double ay = -g * sin + (v > 0 ? -mu[i] * g * cos * vy[i] / v : 0);
                double nvx = vx[i] + ax * step;
                double nvy = vy[i] + ay * step;
                double dot = nvx * vx[i] + nvy * vy[i];
                boolean stops = v < (mu[i] * cos + sin) * g * step && (dot <= 0 || Math.hypot(nvx, nvy) < 1e-9);
                if (stops && mu[i] * cos > sin) {
                    moves[i] = false;
                    vx[i] = 0;
                    vy[i] = 0;
                    if (Math.hypot(x[i], y[i] - 39 * inch) < 3 * inch) {
                        outcome[i] = Outcome.IN;
                    }
                    continue;
                }
                x[i] += (vx[i] + nvx) / 2 * step;
                y[i] += (vy[i] + nvy) / 2 * step;
                vx[i] = nvx;
                vy[i] = nvy;
                if (Math.abs(x[i]) > scene.board().width() / 2 * inch || y[i] < 0 || y[i] > 48 * inch) {
                    outcome[i] = Outcome.OFF;
                    continue;
                }
                boolean inside = Math.hypot(x[i], y[i] - 39 * inch) < 3 * inch;
                if (inside && !over[i] && falls(x[i], y[i] - 39 * inch, vx[i], vy[i], fall)) {
                    outcome[i] = Outcome.IN;
                }
                over[i] = inside;
            }
            if (!any) {
                break;
            }
            Arrays.fill(touched, false);
            for (int sweep = 0; sweep < 50; sweep++) {
                boolean hit = false;
                for (int i = 0; i < n; i++) {
                    for (int j = i + 1; j < n; j++) {
                        if (outcome[i] == null && outcome[j] == null && blow(scene, vx, vy, mass, i, j)) {

                            hit = true;
                            moves[i] = true;
                            moves[j] = true;
                            touched[i] = true;
                            touched[j] = true;
                        }
                    }
                }
                if (!hit) {
                    break;
                }
            }
            for (int i = 0; i < n; i++) {
                if (touched[i] && over[i] && outcome[i] == null && falls(x[i], y[i] - 39 * inch, vx[i], vy[i], fall)) {
                    outcome[i] = Outcome.IN;
                }
            }
        }
        for (int i = 0; i < n; i++) {
            x[i] /= inch;
            y[i] /= inch;
            if (outcome[i] == null) {
                outcome[i] = Outcome.ON;
            }
        }
    }

    private static boolean falls(double dx, double dy, double vx, double vy, double fall) {
        double r = 3 * 0.0254;
        double v = Math.hypot(vx, vy);
        double off = (dx * vy - dy * vx) / v;
        double chord = -(dx * vx + dy * vy) / v + Math.sqrt(Math.max(0, r * r - off * off));
        return chord >= v * fall;
    }

    private boolean blow(Scene scene, double[] vx, double[] vy, double[] mass, int i, int j) {
        double dx = x[j] - x[i];
        double dy = y[j] - y[i];
        double d = Math.hypot(dx, dy);
        if (d > 6 * 0.0254) {
            return false;
        }
        double nx = dx / d;
        double ny = dy / d;
        double approach = (vx[i] - vx[j]) * nx + (vy[i] - vy[j]) * ny;
        if (approach <= 0) {
            return false;
        }
        double m = mass[i] * mass[j] / (mass[i] + mass[j]);
        double press = m
                * (approach
                        + Math.max(
                                scene.contact().restitution() * approach,
                                scene.contact().parting()));
        double across = -(vx[i] - vx[j]) * ny + (vy[i] - vy[j]) * nx;
        double rub = Math.signum(across)
                * Math.min(m * Math.abs(across), scene.contact().friction() * press);
        vx[i] += (-press * nx + rub * ny) / mass[i];
        vy[i] += (-press * ny - rub * nx) / mass[i];
        vx[j] += (press * nx - rub * ny) / mass[j];
        vy[j] += (press * ny + rub * nx) / mass[j];
        return true;
    }
}
