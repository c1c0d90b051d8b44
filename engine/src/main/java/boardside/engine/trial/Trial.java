package boardside.engine.trial;

import boardside.engine.rules.Tally;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import boardside.engine.skill.Trait;
import boardside.engine.trial.TrialState.Standing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A fair comparison of ways to throw: what the records of it say. The same records give the same answer.
 *
 * <p>Differences are credible intervals under a belief, before anything is thrown, that two candidates differ by a normal
 * amount with a standard deviation of {@value #USUAL_DIFFERENCE} points a round; without it, a difference at which a trial
 * stopped would be too large on average. What was measured is pulled towards that belief by {@value #MOST_PULL} standard
 * errors at most, so that a large difference is not talked away (limited translation: Efron and Morris 1971, Journal of the
 * American Statistical Association 66, 807-815). Decisions do not use it: they are made by {@link Boundaries boundaries}.
 */
public final class Trial {
    /**
     * How much two of a player's candidates usually differ, points per round: bags that differ by 0.17 on either logit, as
     * the skill model's law of variances has it, by about 0.5; a little more, for faces and approaches. Common practice,
     * no source.
     */
    static final double USUAL_DIFFERENCE = 0.7;

    /** How far the belief may pull what was measured, in standard errors. */
    static final double MOST_PULL = 1.5;

    /** Standard deviations to the ends of a 90 % interval. */
    private static final double NINETY = 1.6448536269514722;

    private final TrialDesign design;
    private final TrialSentences sentences;

    private Trial(TrialDesign design, TrialSentences sentences) {
        this.design = design;
        this.sentences = sentences;
    }

    /**
     * A trial of some candidates.
     *
     * @param names what sentences call the candidates, in their order
     * @param by what the candidates differ in
     * @throws IllegalArgumentException unless there is a name for each
     */
    public static Trial of(TrialDesign design, List<String> names, Set<Trait> by) {
        if (names.size() != design.candidates()) {
            throw new IllegalArgumentException(
                    "a name for each of " + design.candidates() + " candidates, not " + names.size());
        }
        return new Trial(design, new TrialSentences(design, List.copyOf(names), Set.copyOf(by)));
    }

    /**
     * How it stands.
     *
     * @param runs units of each run in the order thrown, the earliest run first; not modified
     * @throws IllegalArgumentException if a unit is of no candidate
     */
    public TrialState state(List<List<Unit>> runs) {
        Procedure procedure = Procedure.of(design, runs);
        List<List<Unit>> blocks = procedure.blocks();
        Map<Integer, Procedure.Dropped> dropped = new HashMap<>();
        procedure.dropped().forEach(drop -> dropped.put(drop.candidate(), drop));
        List<Integer> order = order(procedure);
        int first = order.get(0);
        List<Standing> standings = new ArrayList<>();
        for (int candidate : order) {
            Procedure.Dropped drop = dropped.get(candidate);
            // Thrown to the block it dropped out after, or to the last.
            int thrown = drop == null ? blocks.size() : drop.after();
            List<List<Unit>> shared = blocks.subList(0, thrown);
            standings.add(new Standing(
                    candidate,
                    thrown * TrialDesign.ROUNDS,
                    thrown == 0 ? null : Skill.pointsPerRound(bags(candidate, shared)),
                    thrown == 0 || candidate == first ? null : lead(first, candidate, procedure.inPlay(), shared),
                    drop == null ? null : (Integer) drop.after()));
        }
        Interval second = standings.get(1).behind();
        Interval lead = second == null ? new Interval(0, 0, 0) : second;
        double needed = blocks.isEmpty() || procedure.inPlay().size() < 2 ? 0 : needed(procedure);
        TrialState said = new TrialState(
                procedure.ending(),
                blocks.size(),
                design.longest(),
                standings,
                lead,
                needed,
                procedure.inPlay(),
                procedure.rest().stream().map(Unit::candidate).toList(),
                procedure.unused(),
                "");
        return new TrialState(
                said.ending(),
                said.blocks(),
                said.longest(),
                said.standings(),
                said.lead(),
                said.needed(),
                said.inPlay(),
                said.rest(),
                said.unused(),
                sentences.of(said));
    }

    private double needed(Procedure procedure) {
        Look look = Look.at(procedure.inPlay(), procedure.blocks());
        return Boundaries.winner(procedure.inPlay().size(), design.longest(), look.blocks()) * look.error();
    }

    private static List<Integer> order(Procedure procedure) {
        List<Integer> inPlay = new ArrayList<>(procedure.inPlay());
        if (!procedure.blocks().isEmpty() && inPlay.size() > 1) {
            Look look = Look.at(procedure.inPlay(), procedure.blocks());
            inPlay.sort(Comparator.comparingDouble(
                    candidate -> -look.points()[procedure.inPlay().indexOf(candidate)]));
        }
        List<Integer> order = new ArrayList<>(inPlay);
        List<Procedure.Dropped> dropped = procedure.dropped();
        for (int i = dropped.size() - 1; i >= 0; i--) {
            order.add(dropped.get(i).candidate());
        }
        return order;
    }

    /** How far one is ahead of another, by the blocks that both were thrown in. */
    private static Interval lead(int first, int second, List<Integer> inPlay, List<List<Unit>> shared) {
        List<Integer> compared = new ArrayList<>(inPlay);
        if (!compared.contains(second)) {
            compared.add(second);
        }
        Look look = Look.at(compared, shared);
        double apart = look.points()[compared.indexOf(first)] - look.points()[compared.indexOf(second)];
        return believed(apart, look.error());
    }

    /** What is believed of a difference after it was measured with a standard error. */
    static Interval believed(double apart, double error) {
        double before = USUAL_DIFFERENCE * USUAL_DIFFERENCE;
        double weight = Math.max(before / (before + error * error), 1 - MOST_PULL * error / Math.abs(apart));
        double deviation = Math.sqrt(weight) * error;
        double mean = weight * apart;
        return new Interval(mean, mean - NINETY * deviation, mean + NINETY * deviation);
    }

    private static Tally bags(int candidate, List<List<Unit>> blocks) {
        Tally bags = Tally.NONE;
        for (List<Unit> block : blocks) {
            for (Unit unit : block) {
                bags = unit.candidate() == candidate ? bags.plus(unit.bags()) : bags;
            }
        }
        return bags;
    }
}
