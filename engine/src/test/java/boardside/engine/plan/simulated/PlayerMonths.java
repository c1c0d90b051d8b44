package boardside.engine.plan.simulated;

import boardside.engine.plan.Activity;
import boardside.engine.plan.Block;
import boardside.engine.plan.Energy;
import boardside.engine.plan.Means;
import boardside.engine.plan.Planner;
import boardside.engine.plan.Reason;
import boardside.engine.rules.BoardKind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;

/**
 * Months of practice by {@link Learner}s: the same player, days and minutes once by the plan and once by each of some fixed
 * routines, and what the month added to the chance of winning.
 */
public final class PlayerMonths {
    private static final int DAYS = 30;
    private static final List<Integer> MINUTES = List.of(8, 15, 15, 30, 30, 60, 120);

    /** A round of four alone: ten in seven minutes. */
    private static final double PACE = 40.0 / 7;

    private PlayerMonths() {}

    /**
     * A policy's months.
     *
     * @param gain mean added to the chance of winning
     * @param error its standard error
     * @param behind mean by which the plan's months did better, player by player; 0 for the plan
     * @param behindError its standard error
     */
    public record Figures(double gain, double error, double behind, double behindError) {}

    /** What is thrown in so many minutes on a day. */
    private interface Policy {
        List<Block> session(Learner learner, int minutes, int day);
    }

    private static Map<String, Policy> policies() {
        Map<String, Policy> all = new LinkedHashMap<>();
        all.put(
                "plan",
                (learner, minutes, day) -> Planner.plan(
                                new Means(minutes, Energy.NORMAL, 1, Set.of(BoardKind.REGULATION), false),
                                learner.told(day))
                        .blocks());
        all.put("rounds of four", (learner, minutes, day) -> routine(minutes, List.of("total:aggressive")));
        all.put("bags in only", (learner, minutes, day) -> routine(minutes, List.of("volume")));
        all.put("races only", (learner, minutes, day) -> routine(minutes, List.of("race")));
        all.put("thirds", (learner, minutes, day) -> routine(minutes, List.of("total:conservative", "volume", "race")));
        all.put(
                "a drill a day",
                (learner, minutes, day) -> routine(
                        minutes,
                        List.of(List.of(
                                        "total:aggressive",
                                        "placement:2-middle",
                                        "race",
                                        "situation:push",
                                        "volume",
                                        "situation:airmail")
                                .get(day % 6))));
        return all;
    }

    /** Drills one after the other, each as long; warm-up and breaks as anybody takes them, so that these do not decide. */
    private static List<Block> routine(int minutes, List<String> choices) {
        List<Block> blocks = new ArrayList<>();
        int left = minutes;
        if (minutes >= 25) {
            blocks.add(block("warm-up", Activity.WARM_UP, 4));
            left -= 4;
        }
        int breaks = Math.max(0, left / 30 - (left % 30 == 0 ? 1 : 0));
        left -= 5 * breaks;
        int parts = Math.max(choices.size(), breaks + 1);
        for (int part = 0; part < parts; part++) {
            int length = left * (part + 1) / parts - left * part / parts;
            if (length > 1) {
                String choice = choices.get(part * choices.size() / parts);
                blocks.add(block(choice, activity(choice), length));
            }
            if (breaks > 0 && part < parts - 1 && (part + 1) * (breaks + 1) / parts > part * (breaks + 1) / parts) {
                blocks.add(block("break", Activity.BREAK, 5));
            }
        }
        return blocks;
    }

    private static Activity activity(String choice) {
        return choice.startsWith("placement")
                ? Activity.PLACEMENT
                : choice.startsWith("situation")
                        ? Activity.SITUATION
                        : choice.equals("race")
                                ? Activity.RACE
                                : choice.equals("volume") ? Activity.VOLUME : Activity.TOTAL;
    }

    private static Block block(String choice, Activity activity, int minutes) {
        double pace = PACE * (activity == Activity.PLACEMENT ? 0.8 : activity == Activity.SITUATION ? 0.6 : 1);
        int bags = activity == Activity.BREAK ? 0 : (int) ((minutes - 1) * pace);
        return new Block(
                choice,
                activity,
                minutes,
                bags,
                bags / 4,
                List.of(),
                null,
                null,
                null,
                null,
                "",
                new Reason.FirstNumbers(),
                false);
    }

    /**
     * Throws the months.
     *
     * @param players player-months, 2 or more
     */
    public static Map<String, Figures> play(int players, long seed) {
        Map<String, Policy> policies = policies();
        Map<String, double[]> gains = new LinkedHashMap<>();
        policies.forEach((name, policy) -> {
            double[] each = new double[players];
            for (int i = 0; i < players; i++) {
                each[i] = month(policy, seed + i);
            }
            gains.put(name, each);
        });
        double[] plan = Objects.requireNonNull(gains.get("plan"));
        Map<String, Figures> figures = new LinkedHashMap<>();
        gains.forEach((name, each) -> {
            double[] behind = new double[players];
            for (int i = 0; i < players; i++) {
                behind[i] = plan[i] - each[i];
            }
            figures.put(name, new Figures(mean(each), error(each), mean(behind), error(behind)));
        });
        return figures;
    }

    private static double month(Policy policy, long seed) {
        Learner learner = new Learner(seed);
        Random days = new Random(~seed);
        double start = learner.win();
        for (int day = 0; day < DAYS; day++) {
            if (days.nextInt(5) < 2) {
                int minutes = MINUTES.get(days.nextInt(MINUTES.size()));
                learner.practise(policy.session(learner, minutes, day), day);
            }
            learner.sleep();
        }
        return learner.win() - start;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static double error(double[] values) {
        double mean = mean(values);
        double square = 0;
        for (double value : values) {
            square += (value - mean) * (value - mean);
        }
        return Math.sqrt(square / (values.length - 1) / values.length);
    }
}
