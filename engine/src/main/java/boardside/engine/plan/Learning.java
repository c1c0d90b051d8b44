package boardside.engine.plan;

/**
 * The learning model that the plan goes by. It is a model: its shapes come from the studies named, most of its constants are
 * chosen, and docs/plan.md lists them all. A skill is a chance on the scale of logits; practice moves it.
 */
public final class Learning {
    /** Success is best within these (Guadagnoli and Lee 2004, Journal of Motor Behavior 36, 212-224: an optimum between; where it lies is chosen). */
    static final double EASIEST = 2.0 / 3;

    static final double HARDEST = 0.5;

    /** How far outside of that the benefit has fallen to 0.61; chosen. */
    private static final double TOLERANCE = 0.25;

    /**
     * Logits per e-fold of bags: the law of practice (Newell and Rosenbloom 1981, in Anderson (ed.), Cognitive Skills and
     * Their Acquisition, 1-55) has gains per bag fall as one over the bags thrown; the size is chosen.
     */
    static final double PER_FOLD = 0.5;

    /** Bags everybody has thrown at anything before the first record; chosen. */
    static final double BEFORE = 1000;

    /** Bags after which a block teaches 0.37 of what it did at first; chosen. */
    static final double SATURATION = 80;

    /** What a theme gains by coming twice in a session with something else between; chosen small, see docs/plan.md. */
    static final double MIXING = 0.1;

    /** What a bag still teaches when the same was practised earlier the same day; chosen. */
    private static final double SAME_DAY = 0.5;

    /** Bags under pressure that win back 0.63 of what is lost under it; chosen. */
    private static final double CLOSES = 1500;

    private Learning() {}

    /**
     * What practice at this difficulty teaches, 1 where it teaches most.
     *
     * @param success chance of succeeding at what is asked, 0..1
     */
    static double challenge(double success) {
        double off = success > EASIEST ? success - EASIEST : success < HARDEST ? HARDEST - success : 0;
        return Math.exp(-0.5 * (off / TOLERANCE) * (off / TOLERANCE));
    }

    /**
     * Days between practices after which most is kept until a day: 0.75 days times the days until then to the power of 0.6,
     * which goes through the optimal gaps of Cepeda et al. 2008 (Psychological Science 19, 1095-1102): 20 to 40 % of a week,
     * 5 to 10 % of a year. They studied facts, not throws.
     *
     * @param horizon days until it matters, 1 or more
     */
    static double bestGap(double horizon) {
        return 0.75 * Math.pow(horizon, 0.6);
    }

    /**
     * What practice teaches so long after the last of its kind, 0.5..1.
     *
     * @param days since then, 0 or more; infinite where there was none
     */
    static double spacing(double days, double horizon) {
        return SAME_DAY + (1 - SAME_DAY) * Math.min(1, days / bestGap(horizon));
    }

    /**
     * Logits a bag brings at best.
     *
     * @param bags thrown at this so far
     * @param pace how fast it has been coming, 1 as usual
     */
    static double perBag(double bags, double pace) {
        return pace * PER_FOLD / (BEFORE + bags);
    }

    /** Share of what is lost under pressure that a bag under pressure wins back. */
    static double closing(double pace) {
        return pace / CLOSES;
    }

    /** Fresh bags that so many in a row are worth. */
    static double effective(double bags) {
        return SATURATION * -Math.expm1(-bags / SATURATION);
    }
}
