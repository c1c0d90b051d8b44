package boardside.engine.tactics.advice;

import boardside.engine.physics.Board;
import boardside.engine.physics.Phi;
import boardside.engine.physics.Range;
import boardside.engine.physics.ThrowKernel;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Game;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Verdict;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Ranks the shots of a position by the chance to win the game.
 *
 * <p>Each shot is thrown through the draws of the player's throw model; the rest of the round follows the base policies of
 * both sides ({@link Rollouts}), its end is worth what {@link Matchup} says exactly. With one bag left there is no rest, and
 * the samples are a lattice over the errors of that throw: an integral. Immutable; thread safe.
 */
public final class Adviser {
    /** Two shots whose chances to win differ by less are as good as each other: half a point in a hundred. */
    static final double NOTHING = 0.005;

    private static final ThrowKernel KERNEL = new ThrowKernel(Board.of(BoardKind.REGULATION));

    private final Matchup matchup;

    /** An adviser of the first of two throwers. */
    public Adviser(Matchup matchup) {
        this.matchup = matchup;
    }

    /**
     * The advice.
     *
     * @param position I am to throw next
     * @param game the score before this round, and who threw first in it, as {@link RoundPosition#meFirst} says
     * @param samples rests of the round to sample over all shots, at least 1; more make the errors smaller
     * @param seed any; the same gives the same
     * @throws IllegalArgumentException if it is not my throw, or the game is over
     */
    public Advice advise(RoundPosition position, Game game, long samples, long seed) {
        check(position, game);
        Lie lie = Lie.of(position);
        List<Call> calls = Candidates.of(lie);
        double[][] values = matchup.values(game);
        double[] none = new double[values.length];
        List<Sampled<Call>> ranked = Rollouts.halving(
                matchup.turns(),
                lie,
                calls,
                samples,
                seed,
                sampled -> Estimate.of(sampled, values, evidence(sampled.shot(), position), none)
                        .value());
        long used = ranked.stream().mapToLong(Sampled::samples).sum();
        return told(position, best(ranked), values, used);
    }

    private static void check(RoundPosition position, Game game) {
        if (position.next() != Side.ME || position.leftMe() == 0) {
            throw new IllegalArgumentException("advice is for my throw: next is me, with at least one bag left");
        }
        if (game.over()) {
            throw new IllegalArgumentException("score: the game is over at " + game.mine() + "-" + game.theirs()
                    + "; both scores are below " + game.rules().target());
        }
        if (game.meFirst() != position.meFirst()) {
            throw new IllegalArgumentException("who threw first in this round follows from the bags left");
        }
    }

    Evidence evidence(Call call, RoundPosition position) {
        return Evidence.of(call, position.board(), matchup.me().tries());
    }

    /** The first of each kind: a push at a bag, say, is told once, at its best aim. */
    static List<Sampled<Call>> best(List<Sampled<Call>> ranked) {
        List<Sampled<Call>> best = new ArrayList<>();
        Set<List<Object>> kinds = new HashSet<>();
        for (Sampled<Call> sampled : ranked) {
            if (kinds.add(Candidates.kind(sampled.shot()))) {
                best.add(sampled);
            }
        }
        return best;
    }

    private Advice told(RoundPosition position, List<Sampled<Call>> ranked, double[][] values, long samples) {
        double[][] nets = nets(values.length);
        List<Estimate> wins = new ArrayList<>();
        List<Estimate> points = new ArrayList<>();
        List<Evidence> known = new ArrayList<>();
        for (Sampled<Call> sampled : ranked) {
            Evidence evidence = evidence(sampled.shot(), position);
            double[] doubts = evidence.doubts(sampled.share(), values.length, wins.size());
            known.add(evidence);
            wins.add(Estimate.of(sampled, values, evidence, doubts));
            points.add(Estimate.of(sampled, nets, evidence, doubts));
        }
        List<ShotAdvice> shots = new ArrayList<>();
        for (int i = 0; i < ranked.size(); i++) {
            Sampled<Call> sampled = ranked.get(i);
            Estimate win = wins.get(i);
            int other = i == 0 && ranked.size() > 1 ? 1 : 0;
            double behind = wins.get(0).value() - win.value();
            double behindError = i == 0 ? 0 : win.errorAgainst(wins.get(0));
            double probability = i == 0 ? 0.5 : probabilityBehind(wins.get(0), win, behindError);
            shots.add(new ShotAdvice(
                    sampled.shot(),
                    sampled.shot().release(matchup.me().usual()),
                    win.range(),
                    win.error(),
                    points.get(i).range(),
                    risk(sampled, win.rate()),
                    new BreakEven(
                            ranked.get(other).shot(),
                            wins.get(other).value(),
                            win.ifWorked(),
                            win.ifNot(),
                            made(known.get(i), sampled, win.rate())),
                    probability,
                    Math.max(0, behind),
                    behindError,
                    i > 0 && (behind < NOTHING || Verdict.of(probability) == Verdict.OPEN),
                    known.get(i).tries()));
        }
        return new Advice(shots, samples);
    }

    static double[][] nets(int draws) {
        double[] nets = new double[2 * Lie.MOST + 1];
        for (int i = 0; i < nets.length; i++) {
            nets[i] = i - Lie.MOST;
        }
        double[][] all = new double[draws][];
        Arrays.fill(all, nets);
        return all;
    }

    static double probabilityBehind(Estimate best, Estimate other, double error) {
        double[] behind = other.behind(best);
        double sum = 0;
        for (double one : behind) {
            sum += Phi.at(one / Math.max(error, 1e-9));
        }
        return sum / behind.length;
    }

    /** The best shot in the course of a game that is played out; both throwers known, without tries. */
    Call best(Lie lie, Game game, long samples, long seed) {
        double[][] values = matchup.values(game);
        double[] none = new double[values.length];
        List<Sampled<Call>> ranked = Rollouts.halving(
                matchup.turns(),
                lie,
                Candidates.of(lie),
                samples,
                seed,
                sampled -> Estimate.of(sampled, values, Evidence.untried(sampled.shot(), lie.count() == 0), none)
                        .value());
        return ranked.get(0).shot();
    }

    Rate made(Evidence evidence, Sampled<Call> sampled, double rate) {
        if (evidence.doubted()) {
            return evidence.range(sampled.share());
        }
        // On an empty board the chance at each draw has a closed form.
        double[] chances = matchup.me().draws().stream()
                .mapToDouble(model -> KERNEL.chances(model).in())
                .toArray();
        double[] equal = new double[chances.length];
        Arrays.fill(equal, 1.0 / equal.length);
        Range range = Range.of(chances, equal);
        return new Rate(Math.max(range.low(), Math.min(range.high(), rate)), range.low(), range.high());
    }

    private static double risk(Sampled<?> sampled, double rate) {
        return rate * losing(sampled, true) + (1 - rate) * losing(sampled, false);
    }

    private static double losing(Sampled<?> sampled, boolean worked) {
        long[] counts = sampled.counts(worked, 2 * Lie.MOST + 1);
        long all = Arrays.stream(counts).sum();
        long lost = Arrays.stream(counts, 0, Lie.MOST).sum();
        return all == 0 ? 0 : (double) lost / all;
    }
}
