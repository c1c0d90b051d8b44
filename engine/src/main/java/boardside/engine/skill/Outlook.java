package boardside.engine.skill;

import java.time.LocalDate;

/**
 * Skill on a day to come, by the model's drift alone: a random walk has no direction, so what is likeliest stays and the
 * range widens with the root of the days. Good and bad days are averaged, as form averages them. Immutable.
 */
public final class Outlook {
    private final LocalDate on;
    private final Measured measured;
    private final Interval pointsPerRound;
    private final Interval inHole;

    private Outlook(LocalDate on, Measured measured) {
        this.on = on;
        this.measured = measured;
        this.pointsPerRound = measured.pointsPerRound();
        this.inHole = measured.inHole();
    }

    /** From draws of today's skill, each drifting on by its own drift. */
    static Outlook of(Draws draws, LocalDate on) {
        double days = Math.max(0, on.toEpochDay() - draws.asOf.toEpochDay());
        double[] level = draws.now.clone();
        Normals normals = new Normals(11);
        // Draws come in mirrored pairs, and so does how they drift on.
        for (int i = 0; i < draws.size; i += 2) {
            double[] theta = draws.theta(i);
            for (int k = 0; k < 2; k++) {
                double step = Math.exp(theta[k]) * Math.sqrt(days) * normals.next();
                level[2 * i + k] += step;
                level[2 * i + 2 + k] -= step;
            }
        }
        return new Outlook(on, new Measured(draws, draws.today().mix(), level));
    }

    /** The day. */
    public LocalDate on() {
        return on;
    }

    /** Points per round of four, 0..12. */
    public Interval pointsPerRound() {
        return pointsPerRound;
    }

    /** Share of bags in, 0..1. */
    public Interval inHole() {
        return inHole;
    }

    /** The chance that points per round are at least so many, never quite 0 or 1. */
    public double pointsAtLeast(double points) {
        return Measured.positive(measured.in.length, i -> measured.points(i) - points);
    }

    /** The chance that the share of bags in is at least so much, never quite 0 or 1. */
    public double inAtLeast(double share) {
        return Measured.positive(measured.in.length, i -> measured.in[i] - share);
    }

    /**
     * One bag's chances on that day, to put to {@code boardside.engine.odds}, as {@link Skill#chances()} has them for today.
     */
    public ChanceRange chances() {
        return Today.chances(measured);
    }
}
