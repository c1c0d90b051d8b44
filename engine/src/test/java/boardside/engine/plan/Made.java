package boardside.engine.plan;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.BoardKind;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/** Players, means and choices made up at random. */
final class Made {
    private Made() {}

    static Means means(Random random) {
        Set<BoardKind> boards = EnumSet.of(BoardKind.values()[random.nextInt(2)]);
        if (random.nextBoolean()) {
            boards = EnumSet.allOf(BoardKind.class);
        }
        // Short sessions are as frequent as long ones.
        int minutes = (int) Math.round(Math.exp(Math.log(5) + random.nextDouble() * Math.log(48)));
        return new Means(
                Math.min(240, minutes),
                Energy.values()[random.nextInt(3)],
                1 + random.nextInt(6),
                boards,
                random.nextBoolean());
    }

    static PlayerState player(Random random) {
        if (random.nextInt(12) == 0) {
            return PlayerState.unknown();
        }
        BagChances likely = chances(random);
        ChanceRange range = new ChanceRange(likely, moved(likely, -0.03), moved(likely, 0.03));
        List<Rival> rivals = new ArrayList<>();
        if (random.nextInt(4) > 0) {
            rivals.add(Rival.ghost(1 + random.nextInt(11)));
        }
        if (random.nextBoolean()) {
            rivals.add(Rival.league("Ines", RoundDistribution.of(chances(random)), 3, 10, random.nextInt(14)));
        }
        List<Tried> targets = new ArrayList<>();
        for (int i = random.nextInt(5); i > 0; i--) {
            String target = new Target(Depth.values()[i % 3], Lane.values()[random.nextInt(3)]).text();
            targets.add(tried(random, target, Shot.BLOCK));
        }
        List<Tried> shots = new ArrayList<>();
        for (int i = random.nextInt(6); i > 0; i--) {
            shots.add(tried(random, "s" + i, Shot.values()[random.nextInt(Shot.values().length)]));
        }
        Map<Activity, Double> pace = new HashMap<>();
        for (Activity activity : Activity.values()) {
            if (random.nextInt(3) == 0) {
                pace.put(activity, 1 + 12 * random.nextDouble());
            }
        }
        Map<String, Double> refused = new HashMap<>();
        for (String choice : List.of("volume", "race", "total:aggressive", "slide")) {
            if (random.nextInt(4) == 0) {
                refused.put(choice, 3 * random.nextDouble());
            }
        }
        List<String> bags = List.of("Blue", "Red", "Green", "Black").subList(0, random.nextInt(5));
        return new PlayerState(
                new PlayerState.Form(
                        Optional.of(range),
                        ability(random),
                        ability(random),
                        ability(random),
                        random.nextBoolean() ? Optional.empty() : Optional.of(new Interval(0.3, -0.2, 0.9)),
                        random.nextBoolean() ? Optional.empty() : Optional.of(new Interval(0.8, 0.2, 1.4))),
                rivals,
                targets,
                shots,
                new Due(
                        random.nextBoolean()
                                ? Optional.empty()
                                : Optional.of(new Due.Ladder(random.nextInt(13), random.nextInt(40))),
                        random.nextInt(3) > 0
                                ? Optional.empty()
                                : Optional.of(new Due.Trial(
                                        "t",
                                        "Blue or Red",
                                        List.of("Blue", "Red"),
                                        BoardKind.REGULATION,
                                        2 + random.nextInt(3),
                                        6)),
                        random.nextBoolean()
                                ? Due.Boards.UNTESTED
                                : new Due.Boards(random.nextInt(60), random.nextBoolean())),
                new Habits(
                        bags,
                        pace,
                        refused,
                        random.nextInt(800),
                        random.nextBoolean() ? Double.POSITIVE_INFINITY : random.nextInt(900)),
                random.nextBoolean() ? Set.of() : Set.of(Theme.Kind.FINISH),
                random.nextBoolean() ? Map.of() : worths(random));
    }

    private static Map<Shot, Interval> worths(Random random) {
        Map<Shot, Interval> worths = new HashMap<>();
        for (Shot shot : Shot.values()) {
            if (random.nextInt(4) > 0) {
                double wins = 3 * random.nextDouble();
                worths.put(shot, new Interval(wins, 0.5 * wins, 2 * wins));
            }
        }
        return worths;
    }

    static BagChances chances(Random random) {
        double in = random.nextDouble();
        return new BagChances(in, (1 - in) * random.nextDouble());
    }

    private static BagChances moved(BagChances bag, double by) {
        double in = Math.min(1, Math.max(0, bag.in() + by));
        return new BagChances(in, Math.min(bag.on(), 1 - in));
    }

    static Ability ability(Random random) {
        return new Ability(
                random.nextInt(20_000),
                random.nextInt(5) == 0 ? Double.POSITIVE_INFINITY : random.nextInt(40),
                random.nextDouble(),
                0.3 + random.nextDouble() * 2);
    }

    private static Tried tried(Random random, String id, Shot shot) {
        double rate = random.nextDouble();
        return new Tried(
                id,
                shot.word(),
                id,
                BoardKind.values()[random.nextInt(4) / 3],
                new Interval(rate, rate * 0.7, 1 - (1 - rate) * 0.7),
                random.nextInt(200),
                ability(random));
    }
}
