package boardside.app.record;

import boardside.app.practice.Board;
import boardside.app.practice.Exercise;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Try;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.RatePool;
import boardside.engine.tactics.TryCount;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Chains of shots: how often each shot works, and how often all of them do, one after the other, none laid by hand. */
public final class Chains {
    private Chains() {}

    /**
     * A chain of shots over all its runs.
     *
     * @param shots the chain
     * @param steps by shot, its tries
     * @param goes goes at it that are over
     * @param worked of those, the ones in which every shot worked and nothing was laid by hand in between
     * @param rate how often that happens
     */
    public record Row(List<Exercise.Step> shots, List<Step> steps, int goes, int worked, Rate rate) {}

    /** One shot of a chain: its tries, whether or not what came before it worked. */
    public record Step(int tries, int worked, Rate rate) {}

    /** A player's chains up to a day, that day included. */
    public static List<Row> of(Records records, int player, LocalDate asOf) {
        Map<String, List<Try>> byRun = records.chainTries(player, asOf.toString());
        Map<String, Exercise> exercises = new LinkedHashMap<>();
        Map<String, int[]> counts = new LinkedHashMap<>();
        Map<String, List<int[]>> steps = new LinkedHashMap<>();
        new TreeMap<>(byRun).forEach((id, tries) -> {
            Setup setup =
                    records.run(player, id).map(detail -> detail.run().setup()).orElseGet(Setup::plain);
            Exercise exercise = setup.exercise();
            if (exercise == null || !exercise.chain()) {
                return;
            }
            String name = exercise.shots().stream().map(Chains::told).collect(Collectors.joining(" > "));
            exercises.putIfAbsent(name, exercise);
            TryStanding.Sum goes = TryStanding.after(setup, tries).of(Side.ME);
            int[] sum = counts.computeIfAbsent(name, key -> new int[2]);
            sum[0] += goes.tries();
            sum[1] += goes.worked();
            List<int[]> ofSteps = steps.computeIfAbsent(
                    name,
                    key -> exercise.shots().stream().map(shot -> new int[2]).collect(Collectors.toList()));
            for (Try tried : tries) {
                Try.Played played = tried.played();
                Try.Link link = played == null ? null : played.chain();
                if (played != null && link != null && link.step() <= ofSteps.size()) {
                    int[] ofStep = ofSteps.get(link.step() - 1);
                    ofStep[0]++;
                    ofStep[1] += played.worked() ? 1 : 0;
                }
            }
        });
        if (exercises.isEmpty()) {
            return List.of();
        }
        List<TryCount> whole = new ArrayList<>();
        List<TryCount> single = new ArrayList<>();
        exercises.forEach((name, exercise) -> {
            int[] sum = counts.getOrDefault(name, new int[2]);
            whole.add(new TryCount(List.of(), sum[0], sum[1]));
            List<int[]> ofSteps = steps.getOrDefault(name, List.of());
            for (int i = 0; i < ofSteps.size(); i++) {
                single.add(new TryCount(
                        List.of(exercise.shots().get(i).shot().word()), ofSteps.get(i)[0], ofSteps.get(i)[1]));
            }
        });
        List<Rate> wholeRates = RatePool.of(whole, List.of()).rates();
        List<Rate> singleRates = RatePool.of(single, List.of(0)).rates();
        List<Row> rows = new ArrayList<>();
        int at = 0;
        for (Exercise exercise : exercises.values()) {
            List<Step> found = new ArrayList<>();
            for (int i = 0; i < exercise.shots().size(); i++, at++) {
                found.add(new Step(single.get(at).tries(), single.get(at).worked(), singleRates.get(at)));
            }
            TryCount sum = whole.get(rows.size());
            rows.add(new Row(exercise.shots(), found, sum.tries(), sum.worked(), wholeRates.get(rows.size())));
        }
        return rows;
    }

    private static String told(Exercise.Step step) {
        return step.shot().word()
                + (step.target() == null ? "" : " " + step.target().text()) + " at "
                + step.position().code(Board.REGULATION_WIDTH);
    }

    /** Whether a run goes through a chain. */
    public static boolean chained(Run run) {
        Exercise exercise = run.setup().exercise();
        return exercise != null && exercise.chain();
    }
}
