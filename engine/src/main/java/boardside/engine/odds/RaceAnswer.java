package boardside.engine.odds;

/** What is to be said of a race from one score. */
public sealed interface RaceAnswer {
    /** The chance to win, with what chance there is of a race without end counted half. */
    double winOrHalf();

    /**
     * A race that ends with certainty.
     *
     * @param winProbability chance that the first side wins, 0..1
     * @param expectedRounds rounds still to be thrown, on average; rounds without points count
     */
    record Ends(double winProbability, double expectedRounds) implements RaceAnswer {
        @Override
        public double winOrHalf() {
            return winProbability;
        }
    }

    /**
     * A race that may go on for ever.
     *
     * @param winOrHalf chance that the first side wins, plus half the chance that nobody does
     * @param never chance that nobody ever wins, above 0
     * @param reason why, as the end of a sentence
     */
    record Endless(double winOrHalf, double never, String reason) implements RaceAnswer {}
}
