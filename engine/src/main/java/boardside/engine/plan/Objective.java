package boardside.engine.plan;

import java.util.List;

/**
 * What a session is worth, games more won in a hundred; docs/plan.md has the formula in one place:
 *
 * <pre>  V = warm(w) fresh(W / (B + 1)) sum over themes k of T_k
 *   T_k = mix(visits) u_k N (1 - exp(-x_k / N)) + sum over its choices of due + knowing (1 - sqrt(n / (n + x)))</pre>
 *
 * with x<sub>k</sub> the bags thrown at theme k, u<sub>k</sub> what one fresh bag of them brings on average, W the minutes of
 * practice, B the breaks and w whether there was a warm-up.
 */
final class Objective {
    /** Minutes of a warm-up; common practice, no source. */
    static final int WARM_UP = 4;

    /** Bags of a warm-up: three easy rounds of four. */
    static final int WARM_UP_BAGS = 12;

    /** What a session without a warm-up is worth against one with it (warm-up decrement: Adams 1961, recalled); chosen. */
    static final double COLD = 0.88;

    /** Minutes of a break; common practice, no source. */
    static final int BREAK = 5;

    /** Minutes of practice that ask for a break at most; common practice, no source. */
    static final int BOUT = 25;

    private Objective() {}

    /** So many minutes of a choice. */
    record Visit(Choice choice, int minutes) {
        int bags() {
            return choice.throwsIn(minutes);
        }
    }

    /** What a theme's visits bring to a fresh, warm player; all are of one theme, at least one. */
    static double theme(List<Visit> visits) {
        double bags = 0;
        double brought = 0;
        double beside = 0;
        for (int i = 0; i < visits.size(); i++) {
            Choice choice = visits.get(i).choice();
            bags += visits.get(i).bags();
            brought += visits.get(i).bags() * choice.perBag();
            double same = 0;
            boolean first = true;
            for (int j = 0; j < visits.size(); j++) {
                if (visits.get(j).choice() == choice) {
                    same += visits.get(j).bags();
                    first &= j >= i;
                }
            }
            if (first && same > 0) {
                beside += choice.due() + choice.knowing() * (1 - Math.sqrt(choice.known() / (choice.known() + same)));
            }
        }
        double value = bags == 0 ? 0 : brought / bags * Learning.effective(bags);
        value = value * (visits.size() > 1 ? 1 + Learning.MIXING : 1) + beside;
        return value;
    }

    /**
     * What is left of it after warm-up and tiring.
     *
     * @param work minutes of practice
     * @param breaks breaks between them
     */
    static double session(double themes, int work, int breaks, boolean warm, Energy energy) {
        double bout = (double) work / (breaks + 1) / energy.stamina();
        return (warm ? 1 : COLD) * Math.exp(-0.5 * bout * bout) * themes;
    }

    /**
     * The most breaks that so much practice can hold: one in {@value #BOUT} minutes. As no block is longer than {@value
     * Choice#LONGEST}, that is fewer than there are blocks to lie between.
     */
    static int mostBreaks(int work) {
        return work / BOUT;
    }
}
