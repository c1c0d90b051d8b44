package boardside.engine.tactics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How often each kind of try works, where kinds that have something in common lend each other what they know.
 *
 * <p>Model. Of n<sub>i</sub> tries of kind i, y<sub>i</sub> ~ Binomial(n<sub>i</sub>, p<sub>i</sub>) worked, with
 *
 * <pre>  logit p_i = b + sum over levels l of u_l[g_l(i)] + c_i,   b ~ N(0, 1.5^2),   u_l[g] ~ N(0, s_l^2),   c_i ~ N(0, s_0^2)</pre>
 *
 * where g<sub>l</sub>(i) is the group of kind i on level l (its shot, the family of its situation, its bag, ...). The
 * spreads s are not known: each is half-normal with scale 2, and the answer is averaged over the values the tries leave
 * possible, so that not knowing them reaches the ranges (hierarchical models with partial pooling: Gelman et al. 2013,
 * Bayesian Data Analysis, third edition, chapter 5; the average over a grid of spreads with a Gaussian approximation
 * within, corrected by the exact likelihood of the kind asked for: Rue, Martino and Chopin 2009, JRSS B 71, 319-392,
 * section 3).
 *
 * <p>Deterministic; immutable once made; thread safe.
 */
public final class RatePool {
    /** Points of the grid over a kind's logit. */
    private static final int POINTS = 241;

    /** How far out the grid goes, standard deviations. */
    static final double REACH = 7;

    /** Nodes lighter than this, against the heaviest, are left out. */
    private static final double NEGLIGIBLE = 1e-3;

    private final List<TryCount> kinds;
    private final List<PoolNode> nodes;
    private final double[] weights;
    private final List<Rate> rates;

    private RatePool(List<TryCount> kinds, List<PoolNode> nodes, double[] weights) {
        this.kinds = kinds;
        this.nodes = nodes;
        this.weights = weights;
        List<Rate> found = new ArrayList<>();
        for (int kind = 0; kind < kinds.size(); kind++) {
            found.add(rateOf(kind));
        }
        this.rates = List.copyOf(found);
    }

    /**
     * The belief after some tries.
     *
     * @param kinds at least one, each with a group (or empty) on each of {@code levels}; kinds without tries are foretold
     * @param levels which spread each level shares, 0-based without gaps: levels with equal numbers have one spread
     * @throws IllegalArgumentException if there are no kinds, or one has another number of groups
     */
    public static RatePool of(List<TryCount> kinds, List<Integer> levels) {
        if (kinds.isEmpty()) {
            throw new IllegalArgumentException("rates need at least one kind of try");
        }
        for (TryCount kind : kinds) {
            if (kind.groups().size() != levels.size()) {
                throw new IllegalArgumentException(levels.size() + " levels need as many groups, not " + kind.groups());
            }
        }
        PoolDesign design = design(kinds, levels);
        List<double[]> spreads = SpreadGrid.of(design.spreads());
        List<PoolNode> nodes = new ArrayList<>();
        double[] start = new double[design.effects() + kinds.size()];
        double best = Double.NEGATIVE_INFINITY;
        for (double[] spread : spreads) {
            PoolNode node = PoolNode.fit(design, spread, start);
            start = node.mode();
            best = Math.max(best, node.logEvidence());
            nodes.add(node);
        }
        double heaviest = best;
        List<PoolNode> kept = nodes.stream()
                .filter(node -> node.logEvidence() > heaviest + Math.log(NEGLIGIBLE))
                .toList();
        double[] weights = kept.stream()
                .mapToDouble(node -> Math.exp(node.logEvidence() - heaviest))
                .toArray();
        double sum = Arrays.stream(weights).sum();
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        return new RatePool(List.copyOf(kinds), kept, weights);
    }

    // A level on which all kinds are alike, or each is alone, says nothing beside b and c.
    private static PoolDesign design(List<TryCount> kinds, List<Integer> levels) {
        List<int[]> effects = new ArrayList<>();
        List<Integer> spreadOf = new ArrayList<>();
        Set<Integer> used = new LinkedHashSet<>();
        for (int level = 0; level < levels.size(); level++) {
            Map<String, Integer> groups = new HashMap<>();
            int[] group = new int[kinds.size()];
            int members = 0;
            for (int i = 0; i < group.length; i++) {
                String name = kinds.get(i).groups().get(level);
                group[i] = name.isEmpty() ? -1 : groups.computeIfAbsent(name, key -> groups.size());
                members += name.isEmpty() ? 0 : 1;
            }
            if (groups.size() > 1 && groups.size() < members) {
                effects.add(group);
                spreadOf.add(levels.get(level));
                used.add(levels.get(level));
            }
        }
        List<Integer> order = List.copyOf(used);
        int[] spreads = spreadOf.stream().mapToInt(order::indexOf).toArray();
        return PoolDesign.of(kinds, effects, spreads, order.size());
    }

    /** The rates, in the order of the kinds. */
    public List<Rate> rates() {
        return rates;
    }

    private Rate rateOf(int kind) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double[] variances = new double[weights.length];
        for (int n = 0; n < weights.length; n++) {
            variances[n] = nodes.get(n).variance(kind);
            double reach = REACH * Math.sqrt(variances[n]);
            low = Math.min(low, nodes.get(n).mean(kind) - reach);
            high = Math.max(high, nodes.get(n).mean(kind) + reach);
        }
        double step = (high - low) / (POINTS - 1);
        double[] likelihood = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            likelihood[i] = PoolNode.logLikelihood(kinds.get(kind), low + i * step);
        }
        double[] density = new double[POINTS];
        for (int n = 0; n < weights.length; n++) {
            nodes.get(n).addDensity(kind, variances[n], likelihood, low, step, weights[n], density);
        }
        double mean = 0;
        for (int i = 0; i < POINTS; i++) {
            mean += density[i] * logistic(low + i * step);
        }
        double from = logistic(quantile(density, low, step, 0.05));
        double to = logistic(quantile(density, low, step, 0.95));
        return new Rate(Math.min(Math.max(mean, from), to), from, to);
    }

    private static double quantile(double[] density, double low, double step, double share) {
        double below = 0;
        for (int i = 0; i < density.length; i++) {
            if (below + density[i] >= share) {
                // The mass of a point is spread evenly over its cell.
                return low + step * (i - 0.5 + (share - below) / density[i]);
            }
            below += density[i];
        }
        return low + step * (density.length - 1);
    }

    /** Chance that kind {@code one} works more often than kind {@code other}, both 0-based. */
    public double better(int one, int other) {
        double chance = 0;
        for (int n = 0; n < weights.length; n++) {
            chance += weights[n] * nodes.get(n).better(one, other);
        }
        return chance;
    }

    static double logistic(double logit) {
        return 1 / (1 + Math.exp(-logit));
    }

    /** The kinds asked about. */
    public List<TryCount> kinds() {
        return kinds;
    }
}
