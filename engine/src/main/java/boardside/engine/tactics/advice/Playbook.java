package boardside.engine.tactics.advice;

import boardside.engine.physics.Range;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Verdict;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What to play, and what to practise, in the common situations: one player's own numbers, once for all. Samples of the rest
 * of a round serve every score, since only what its end is worth differs.
 *
 * @param lines by situation, then standing
 * @param worths what each shot is worth practising, what wins most games first
 */
public record Playbook(List<Line> lines, List<Worth> worths) {
    /** How much better a shot is imagined: ten in a hundred. */
    public static final double BETTER = 0.1;

    /** Lists copied. */
    public Playbook {
        lines = List.copyOf(lines);
        worths = List.copyOf(worths);
    }

    /** Who leads, before a round. */
    public enum Standing {
        /** 17-11. */
        AHEAD(17, 11),
        /** 11-11. */
        EVEN(11, 11),
        /** 11-17. */
        BEHIND(11, 17);

        private final int mine;
        private final int theirs;

        Standing(int mine, int theirs) {
            this.mine = mine;
            this.theirs = theirs;
        }

        /** My points. */
        public int mine() {
            return mine;
        }

        /** Their points. */
        public int theirs() {
            return theirs;
        }
    }

    /**
     * One situation at one score.
     *
     * @param situation what lies there, by its name
     * @param standing the score
     * @param position what lies there, mirrored for who throws from the right, and the bags left: both have thrown as often, I am
     *     next
     * @param play the best shot and how it stands
     * @param next the best of another kind of shot (a block elsewhere is of the same kind), or the second best where all are of one
     * @param behind chance to win that it gives away, 0 or more
     * @param asGood whether the two are as good as each other as far as can be told
     * @param practise the shot that gains most here if it works ten in a hundred more often
     * @param gain chance to win that it gains
     */
    public record Line(
            Situation situation,
            Standing standing,
            RoundPosition position,
            Play play,
            Play next,
            double behind,
            boolean asGood,
            Call practise,
            double gain) {}

    /**
     * A shot in a situation.
     *
     * @param call the shot
     * @param winProbability with it
     * @param simulationError standard error of sampling
     * @param breakEven against the other shot
     */
    public record Play(Call call, Range winProbability, double simulationError, BreakEven breakEven) {}

    /**
     * What practising a shot is worth.
     *
     * @param shot which
     * @param gain what it adds to the chance to win a game, per time that one of the situations comes up, if the shot works ten
     *     in a hundred more often: the mean over all situations and standings, each counted once
     * @param perGame what it adds to the chance to win a game, if it works ten in a hundred more often throughout: the gain of each
     *     situation as often as boards like it come up in a game of base policies ({@link Occasions}). To first order: what is
     *     gained at one throw changes nothing at the next (the sum of advantages over the states that are come by; Kakade and
     *     Langford 2002, "Approximately optimal approximate reinforcement learning", ICML; recalled from memory)
     * @param situations situations in which it gains anything
     */
    public record Worth(Shot shot, Range gain, Range perGame, int situations) {}

    /** What one shot adds where it works more often; the range is what is not known of the player. */
    public Worth worth(Shot shot) {
        return worths.stream()
                .filter(worth -> worth.shot() == shot)
                .findFirst()
                .orElse(new Worth(shot, new Range(0, 0, 0), new Range(0, 0, 0), 0));
    }

    /**
     * Works it out.
     *
     * @param mirrored whether situations are mirrored, for somebody who throws from the right of the board
     * @param samples rests of the round for each shot of each situation
     * @param seed any; the same gives the same
     */
    public static Playbook of(Matchup matchup, boolean mirrored, int samples, long seed) {
        Adviser adviser = new Adviser(matchup);
        Map<Situation, Double> occasions = Occasions.of(matchup);
        double lost = 1 - (matchup.win(true) + matchup.win(false)) / 2;
        List<Line> lines = new ArrayList<>();
        Map<Shot, Gains> gains = new EnumMap<>(Shot.class);
        for (Situation situation : Situation.values()) {
            Position drawn = situation.position();
            RoundPosition position = RoundPosition.of(mirrored ? drawn.mirrored() : drawn);
            Lie lie = Lie.of(position);
            List<Sampled<Call>> sampled = new ArrayList<>();
            Candidates.of(lie).forEach(call -> sampled.add(new Sampled<>(call)));
            Rollouts.sample(matchup.turns(), lie, sampled, Math.max(2, samples / Rollouts.REPLICATES), seed);
            double often = occasions.getOrDefault(situation, 0.0);
            Map<Shot, Boolean> here = new EnumMap<>(Shot.class);
            for (Standing standing : Standing.values()) {
                Valued valued = new Valued(adviser, matchup, position, sampled, standing);
                lines.add(valued.line(situation, standing));
                valued.gains(here)
                        .forEach((shot, byDraw) ->
                                gains.computeIfAbsent(shot, Gains::new).add(byDraw, often));
            }
            here.keySet().forEach(shot -> gains.computeIfAbsent(shot, Gains::new).situations++);
        }
        List<Worth> worths = new ArrayList<>(
                gains.values().stream().map(one -> one.worth(lost)).toList());
        worths.sort(Comparator.comparingDouble((Worth worth) -> -worth.perGame().estimate()));
        return new Playbook(lines, worths);
    }

    /** What a shot gains, added up over situations and standings, by draw of the player. */
    private static final class Gains {
        private final Shot shot;
        private double[] each = new double[0];
        private double[] game = new double[0];
        private int situations;

        Gains(Shot shot) {
            this.shot = shot;
        }

        void add(double[] byDraw, double often) {
            if (each.length == 0) {
                each = new double[byDraw.length];
                game = new double[byDraw.length];
            }
            for (int k = 0; k < byDraw.length; k++) {
                each[k] += byDraw[k] / (Situation.values().length * Standing.values().length);
                game[k] += byDraw[k] * often / Standing.values().length;
            }
        }

        /**
         * What it all comes to.
         *
         * @param lost chance to lose a game: no more than that can be won, so large sums of gains are bent to stay below it
         */
        Worth worth(double lost) {
            double[] equal = new double[each.length];
            Arrays.fill(equal, 1.0 / equal.length);
            for (int k = 0; k < game.length; k++) {
                game[k] = lost > 0 ? lost * -Math.expm1(-game[k] / lost) : 0;
            }
            return new Worth(shot, Range.of(each, equal), Range.of(game, equal), situations);
        }
    }

    /** The shots of a situation at one score. */
    private static final class Valued {
        private final Adviser adviser;
        private final RoundPosition position;
        private final List<Sampled<Call>> ranked;
        private final List<Estimate> wins = new ArrayList<>();

        Valued(
                Adviser adviser,
                Matchup matchup,
                RoundPosition position,
                List<Sampled<Call>> sampled,
                Standing standing) {
            this.adviser = adviser;
            this.position = position;
            double[][] values = matchup.values(
                    new Game(GameRules.STANDARD, standing.mine(), standing.theirs(), position.meFirst(), 0));
            Map<Sampled<Call>, Estimate> all = new IdentityHashMap<>();
            for (Sampled<Call> one : sampled) {
                Evidence evidence = adviser.evidence(one.shot(), position);
                all.put(
                        one,
                        Estimate.of(one, values, evidence, evidence.doubts(one.share(), values.length, all.size())));
            }
            List<Sampled<Call>> order = new ArrayList<>(sampled);
            order.sort(Comparator.comparingDouble((Sampled<Call> one) -> -value(all, one)));
            ranked = Adviser.best(order);
            ranked.forEach(one -> wins.add(estimate(all, one)));
        }

        private static double value(Map<Sampled<Call>, Estimate> all, Sampled<Call> one) {
            return estimate(all, one).value();
        }

        private static Estimate estimate(Map<Sampled<Call>, Estimate> all, Sampled<Call> one) {
            return Objects.requireNonNull(all.get(one));
        }

        private Play play(int at, int against) {
            Sampled<Call> one = ranked.get(at);
            Estimate win = wins.get(at);
            Evidence evidence = adviser.evidence(one.shot(), position);
            return new Play(
                    one.shot(),
                    win.range(),
                    win.error(),
                    new BreakEven(
                            ranked.get(against).shot(),
                            wins.get(against).value(),
                            win.ifWorked(),
                            win.ifNot(),
                            adviser.made(evidence, one, win.rate())));
        }

        Line line(Situation situation, Standing standing) {
            int next = other();
            double behind = wins.get(0).value() - wins.get(next).value();
            double error = wins.get(next).errorAgainst(wins.get(0));
            double probability = Adviser.probabilityBehind(wins.get(0), wins.get(next), error);
            int practise = 0;
            for (int i = 1; i < wins.size(); i++) {
                practise = gain(i) > gain(practise) ? i : practise;
            }
            return new Line(
                    situation,
                    standing,
                    position,
                    play(0, next),
                    play(next, 0),
                    behind,
                    behind < Adviser.NOTHING || Verdict.of(probability) == Verdict.OPEN,
                    ranked.get(practise).shot(),
                    gain(practise));
        }

        /** The best of another kind than the best one. */
        private int other() {
            Shot best = ranked.get(0).shot().shot();
            for (int i = 1; i < ranked.size(); i++) {
                if (ranked.get(i).shot().shot() != best) {
                    return i;
                }
            }
            return 1;
        }

        /** What the chance to win gains if a shot works more often, and the best is then played. */
        private double gain(int at) {
            Estimate win = wins.get(at);
            double more = Math.min(BETTER, 1 - win.rate()) * (win.ifWorked() - win.ifNot());
            return Math.max(0, win.value() + more - wins.get(0).value());
        }

        /**
         * What each shot gains by draw of the player: at each, the best shot of that draw is played before and after.
         *
         * @param here filled with the shots that gain anything
         */
        Map<Shot, double[]> gains(Map<Shot, Boolean> here) {
            int draws = wins.get(0).byDraw().length;
            double[] best = new double[draws];
            Arrays.fill(best, Double.NEGATIVE_INFINITY);
            List<double[]> all = wins.stream().map(Estimate::byDraw).toList();
            for (double[] one : all) {
                for (int k = 0; k < draws; k++) {
                    best[k] = Math.max(best[k], one[k]);
                }
            }
            Map<Shot, double[]> most = new EnumMap<>(Shot.class);
            for (int i = 0; i < wins.size(); i++) {
                Estimate win = wins.get(i);
                double more = Math.min(BETTER, 1 - win.rate()) * (win.ifWorked() - win.ifNot());
                Shot shot = ranked.get(i).shot().shot();
                double[] gained = most.computeIfAbsent(shot, key -> new double[draws]);
                for (int k = 0; k < draws; k++) {
                    gained[k] = Math.max(gained[k], all.get(i)[k] + more - best[k]);
                }
                if (gain(i) > 0) {
                    here.put(shot, Boolean.TRUE);
                }
            }
            return most;
        }
    }
}
