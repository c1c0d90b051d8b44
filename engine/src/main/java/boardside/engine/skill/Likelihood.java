package boardside.engine.skill;

/** What was observed, cell by cell, as a function of the cells' linear predictors: eta at 2 c + k. */
interface Likelihood {
    /** Logarithm of the likelihood, but for a constant. */
    double value(double[] eta);

    /**
     * First derivatives, and weights: the expected second derivatives with their sign turned.
     *
     * @param slope filled, at 2 c + k
     * @param weight filled, at 3 c: 00, 01, 11; a positive semidefinite matrix
     */
    void slopes(double[] eta, double[] slope, double[] weight);

    /**
     * How the weights change along each predictor, seen through the predictors' covariances.
     *
     * @param covariance at 3 c: 00, 01, 11
     * @param change filled, at 2 c + k: the trace of covariance times the derivative of the weight by eta k
     */
    void change(double[] eta, double[] covariance, double[] change);

    /** Whether observed second derivatives are the expected ones. */
    boolean canonical();

    /**
     * Observed second derivatives with their sign turned, where they differ from the expected ones.
     *
     * @param weight filled as by {@link #slopes}; need not be positive semidefinite
     */
    void observed(double[] eta, double[] weight);
}
