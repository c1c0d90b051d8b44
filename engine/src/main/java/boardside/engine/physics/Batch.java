package boardside.engine.physics;

import boardside.engine.rules.Tally;
import java.util.ArrayList;
import java.util.List;

/**
 * Many noisy throws, each onto the same scene. Throw n of a seed is the same whichever batch it is in, so that a batch can
 * be cut anywhere, run on any number of threads, and added up again by {@link #plus}.
 *
 * @param thrown how the thrown bags ended
 * @param bags how each bag of the scene ended over the throws, in the scene's order
 */
public record Batch(Tally thrown, List<Tally> bags) {
    /** Random numbers set aside for a throw. */
    private static final int NUMBERS = 4;

    /** Takes a copy of the list. */
    public Batch {
        bags = List.copyOf(bags);
    }

    /** Both together; of the same scene. */
    public Batch plus(Batch other) {
        List<Tally> sums = new ArrayList<>();
        for (int i = 0; i < bags.size(); i++) {
            sums.add(bags.get(i).plus(other.bags.get(i)));
        }
        return new Batch(thrown.plus(other.thrown), sums);
    }

    /**
     * Throws that land and slide.
     *
     * @param simulator what is thrown onto what; used by this thread alone meanwhile
     * @param mean the landing meant
     * @param spread errors around it; a speed that comes out below 0 counts as 0
     * @param seed any
     * @param from number of the first throw, inclusive, 0 or more
     * @param to number of the last throw, exclusive
     */
    public static Batch landings(
            Simulator simulator, Landing mean, LandingSpread spread, long seed, long from, long to) {
        Counter counter = new Counter(simulator);
        for (long n = from; n < to; n++) {
            double x = mean.x() + spread.x() * Normal.at(seed, NUMBERS * n);
            double y = mean.y() + spread.y() * Normal.at(seed, NUMBERS * n + 1);
            double speed = Math.max(0, mean.speed() + spread.speed() * Normal.at(seed, NUMBERS * n + 2));
            double heading = StrictMath.toRadians(mean.heading() + spread.heading() * Normal.at(seed, NUMBERS * n + 3));
            simulator.slide(x, y, speed * StrictMath.sin(heading), speed * StrictMath.cos(heading));
            counter.count();
        }
        return counter.batch();
    }

    /**
     * Throws from the release on.
     *
     * @param simulator what is thrown onto what; used by this thread alone meanwhile
     * @param flight flights of the same bag to the same board; used by this thread alone meanwhile
     * @param mean the release meant
     * @param spread errors around it; a speed that comes out below 0 counts as 0
     * @param seed any
     * @param from number of the first throw, inclusive, 0 or more
     * @param to number of the last throw, exclusive
     */
    public static Batch releases(
            Simulator simulator, Flight flight, Release mean, ReleaseSpread spread, long seed, long from, long to) {
        Counter counter = new Counter(simulator);
        for (long n = from; n < to; n++) {
            flight.fly(
                    Math.max(0, mean.speed() + spread.speed() * Normal.at(seed, NUMBERS * n)),
                    mean.elevation() + spread.elevation() * Normal.at(seed, NUMBERS * n + 1),
                    mean.azimuth() + spread.azimuth() * Normal.at(seed, NUMBERS * n + 2),
                    mean.side(),
                    mean.height(),
                    mean.distance(),
                    mean.drift() + spread.drift() * Normal.at(seed, NUMBERS * n + 3));
            simulator.slide(flight.x(), flight.y(), flight.across(), flight.up());
            counter.count();
        }
        return counter.batch();
    }

    /** Counts how the bags of a simulator end. */
    private static final class Counter {
        private final Simulator simulator;
        private final int[] in;
        private final int[] on;
        private final int[] off;

        Counter(Simulator simulator) {
            this.simulator = simulator;
            in = new int[simulator.count()];
            on = new int[simulator.count()];
            off = new int[simulator.count()];
        }

        void count() {
            for (int i = 0; i < in.length; i++) {
                int[] ended = switch (simulator.outcome(i)) {
                    case IN -> in;
                    case ON -> on;
                    case OFF -> off;
                };
                ended[i]++;
            }
        }

        Batch batch() {
            List<Tally> tallies = new ArrayList<>();
            for (int i = 0; i < in.length; i++) {
                tallies.add(new Tally(in[i], on[i], off[i]));
            }
            return new Batch(tallies.get(0), tallies.subList(1, tallies.size()));
        }
    }
}
