package boardside.engine.odds;

import org.jspecify.annotations.Nullable;

/**
 * A solved race for one who throws first: values at (my score a, their score b), at position a * stride + b.
 *
 * @param stride length of a row
 * @param win chance to win, plus half the chance that nobody ever does
 * @param rounds expected rounds to the end where that is certain
 * @param never chance that nobody ever wins; null where that is 0 everywhere
 */
record RaceTable(int stride, double[] win, double[] rounds, double @Nullable [] never) {}
