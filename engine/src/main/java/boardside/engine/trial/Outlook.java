package boardside.engine.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What a trial will probably take, before it starts: for some true differences, how much must be thrown until it settles
 * with a chance of {@value #PROBABLY}, and how likely it settles within its length.
 *
 * @param design the trial
 * @param swings how much the player's rounds differ by luck
 * @param minutesPerRound the player's pace
 * @param reaches one per difference, the smallest difference first
 * @param sentence what the screen says
 */
public record Outlook(TrialDesign design, Swings swings, double minutesPerRound, List<Reach> reaches, String sentence) {
    /** The chance with which "probably" comes true. */
    public static final double PROBABLY = 0.8;

    /** Differences that are asked about, points per round. */
    public static final List<Double> DIFFERENCES = List.of(0.2, 0.5, 1.0);

    /** Rounds in all from which on they are called thousands. */
    private static final long THOUSANDS = 2000;

    /** Chance below which a trial is said not to show a difference. */
    private static final double WORTH_A_TRY = 0.2;

    /** Lists copied. */
    public Outlook {
        reaches = List.copyOf(reaches);
    }

    /**
     * What one difference takes.
     *
     * @param difference points per round the best is ahead of all others
     * @param roundsEach rounds of four with each candidate
     * @param rounds rounds in all
     * @param minutes the same at the player's pace
     * @param within whether that is no more than the trial's length; if not, a longer trial would need so many
     * @param chance that this trial finds the winner within its length
     */
    public record Reach(
            double difference, long roundsEach, long rounds, double minutes, boolean within, double chance) {}

    /**
     * The outlook of a trial.
     *
     * @param minutesPerRound above 0
     */
    public static Outlook of(TrialDesign design, Swings swings, double minutesPerRound) {
        if (!(minutesPerRound > 0)) {
            throw new IllegalArgumentException("a round takes more than 0 minutes, not " + minutesPerRound);
        }
        List<Reach> reaches = new ArrayList<>();
        for (double difference : DIFFERENCES) {
            long blocks = blocks(design, swings, difference);
            long each = blocks * TrialDesign.ROUNDS;
            long all = each * design.candidates();
            double power = FixedLength.power(
                    difference, swings.ofUnits(), swings.ofUnits(), critical(design), design.longest());
            reaches.add(new Reach(
                    difference,
                    each,
                    all,
                    all * minutesPerRound,
                    blocks <= design.longest(),
                    Math.pow(power, independent(design))));
        }
        return new Outlook(design, swings, minutesPerRound, reaches, sentence(design, reaches));
    }

    /** The boundary of the last two: who is behind by more has dropped out before. */
    private static double critical(TrialDesign design) {
        return Boundaries.constant(2, design.longest());
    }

    /** The best must beat every other one; as these differences share the best, that is as hard as about half as many. */
    private static double independent(TrialDesign design) {
        return design.candidates() / 2.0;
    }

    private static long blocks(TrialDesign design, Swings swings, double difference) {
        double variance = swings.ofUnits();
        double power = Math.pow(PROBABLY, 1 / independent(design));
        for (int n = 1; n <= design.longest(); n++) {
            double critical = critical(design) * Boundaries.shape(design.longest(), n);
            if (FixedLength.each(difference, variance, variance, critical, power) <= n) {
                return n;
            }
        }
        // A longer trial has its boundary fall to the same constant at its own end.
        return (long) Math.ceil(FixedLength.each(difference, variance, variance, critical(design), power));
    }

    private static String sentence(TrialDesign design, List<Reach> reaches) {
        List<String> take = new ArrayList<>();
        List<String> found = new ArrayList<>();
        int seldom = 0;
        for (int i = reaches.size() - 1; i >= 0; i--) {
            Reach reach = reaches.get(i);
            String size = TrialSentences.number(reach.difference());
            String points = size + (reach.difference() == 1 ? " point" : " points");
            take.add((take.isEmpty() ? "about " : "") + rounded(reach.roundsEach())
                    + (take.isEmpty() ? " rounds with each" : "") + " (" + time(reach.minutes())
                    + (reach.rounds() >= THOUSANDS ? ", thousands of rounds" : "") + ") if "
                    + (take.isEmpty() ? "one is truly " + points + " a round better" : "it is " + size));
            if (reach.chance() >= WORTH_A_TRY) {
                found.add(points + " in about " + Math.round(100 * reach.chance()) + " of 100 cases");
            } else {
                seldom++;
            }
        }
        return "To find the better one probably takes " + String.join(", ", take) + ". This trial ends after "
                + design.longest() * TrialDesign.ROUNDS + " with each: it finds "
                + (found.isEmpty()
                        ? "none of these often."
                        : TrialSentences.list(found) + (seldom == 0 ? "." : ", smaller ones seldom."));
    }

    /** Two digits, since it is no better known. */
    private static String rounded(long rounds) {
        long unit = 1;
        while (rounds / unit >= 100) {
            unit *= 10;
        }
        return String.format(Locale.ROOT, "%,d", Math.round((double) rounds / unit) * unit);
    }

    private static String time(double minutes) {
        if (minutes < 100) {
            return "about " + Math.round(minutes) + " minutes";
        }
        return "about " + Math.round(minutes / 60) + " hours";
    }
}
