package boardside.engine.skill;

import boardside.engine.rules.Tally;
import java.util.Collection;

/**
 * Bags added up.
 *
 * @param thrown bags thrown
 * @param in of these, in the hole
 * @param known bags whose on and off were counted
 * @param knownIn of these, in the hole
 * @param knownOn of these, on the board
 * @param fullRounds full rounds of four whose finish was counted
 * @param fourBaggers of these, all in
 */
record Counts(long thrown, long in, long known, long knownIn, long knownOn, long fullRounds, long fourBaggers) {
    static final Counts NONE = new Counts(0, 0, 0, 0, 0, 0, 0);

    static Counts of(Collection<RunCount> counts) {
        Counts sum = NONE;
        for (RunCount count : counts) {
            sum = sum.plus(of(count));
        }
        return sum;
    }

    static Counts of(RunCount count) {
        Tally known = count.known();
        return new Counts(
                count.thrown(),
                count.in(),
                known.thrown(),
                known.in(),
                known.on(),
                count.fullRounds(),
                count.fourBaggers());
    }

    static Counts of(Tally tally) {
        return new Counts(tally.thrown(), tally.in(), tally.thrown(), tally.in(), tally.on(), 0, 0);
    }

    Counts plus(Counts other) {
        return new Counts(
                thrown + other.thrown,
                in + other.in,
                known + other.known,
                knownIn + other.knownIn,
                knownOn + other.knownOn,
                fullRounds + other.fullRounds,
                fourBaggers + other.fourBaggers);
    }

    long knownOff() {
        return known - knownIn - knownOn;
    }
}
