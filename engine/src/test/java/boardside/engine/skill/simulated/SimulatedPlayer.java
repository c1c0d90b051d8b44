package boardside.engine.skill.simulated;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import boardside.engine.skill.RunCount;
import boardside.engine.skill.simulated.Regime.Use;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.apache.commons.rng.UniformRandomProvider;
import org.jspecify.annotations.Nullable;

/**
 * A player whose skill is known. A bag is kept with the logit {@code base + drift + bag + bag:approach + approach + face +
 * board + setting + conditions + day}, and a kept one is in with another of the same form:
 *
 * <ul>
 *   <li>base: kept uniform on 0..2.2, in on -1.4..0.9 (about 3 to 9 points a round);
 *   <li>drift: {@link Drift}, a curve of its own for each logit, or one for both, as often;
 *   <li>bags: the regime's law, the two logits apart; bag with approach: the same law, a third as far;
 *   <li>aggressive approach: in +0.25, kept -0.25, each uniform within 0.25 of that; fast face within 0.3 of 0;
 *   <li>narrow board: kept -0.9..-0.3; league: 0..-0.3; slow and fast conditions within 0.4 of 0;
 *   <li>days: one shift for all runs of an outing; the two logits' shifts have a correlation of 0.4..1.
 * </ul>
 *
 * An outing has one or two runs. A run keeps to one approach and mostly to one bag; a tenth is at the narrow board, a tenth
 * in the league, a fifth in said conditions, a fifth a volume drill of five sets a round; of half of those only the bags
 * in were counted.
 */
public final class SimulatedPlayer {
    /** The last day of every log. */
    public static final LocalDate TODAY = LocalDate.of(2026, 6, 30);

    private static final int KEPT = 0;
    private static final int IN = 1;
    private static final int GRID = 10;
    private static final double HALF_YEAR = 180;
    /** What players' own spreads are at least, of the regime's; at most they are as much above it. */
    private static final double LEAST = 0.25;

    private record Way(
            int bag,
            Face face,
            Approach approach,
            BoardKind board,
            Setting setting,
            @Nullable Conditions conditions,
            Drill drill) {
        Way with(int other) {
            return new Way(other, face, approach, board, setting, conditions, drill);
        }

        Optional<Conditions> said() {
            return Optional.ofNullable(conditions);
        }

        Way with(BoardKind board, Setting setting, @Nullable Conditions conditions) {
            return new Way(bag, face, approach, board, setting, conditions, drill);
        }
    }

    private final Regime regime;
    private final UniformRandomProvider random;
    private final LocalDate first;
    /** The player's own spreads of bags and days, and how far a day's two shifts go together. */
    private final double bagSpread;

    private final double daySpread;
    private final double common;
    private final double[] base;
    private final Drift.Curve[] drift = new Drift.Curve[2];
    private final double[][] bag;
    private final double[][] bagAggressive;
    private final double[] aggressive;
    private final double[] fast;
    private final double[] narrow;
    private final double[] league;
    private final double[][] conditions;
    private final double[] taste;
    /** Days' shifts in one number, equally likely. */
    private final double[] grid;
    /** Where form is said to be. */
    private final BoardKind board;

    private final Setting setting;
    private final @Nullable Conditions said;
    private final List<RunCount> log = new ArrayList<>();
    /** What was thrown when, in bags. */
    private final Map<LocalDate, Map<Way, Integer>> thrown = new LinkedHashMap<>();

    /** Draws a player and their log. */
    public SimulatedPlayer(Regime regime, UniformRandomProvider random) {
        this.regime = regime;
        this.random = random;
        first = TODAY.minusDays(regime.span());
        bagSpread = regime.bagSpread() * Drift.between(random, LEAST, 2 - LEAST);
        daySpread = regime.daySpread() * Drift.between(random, LEAST, 2 - LEAST);
        common = Drift.between(random, 0.4, 1);
        base = new double[] {Drift.between(random, 0, 2.2), Drift.between(random, -1.4, 0.9)};
        bag = new double[regime.bags()][];
        bagAggressive = new double[regime.bags()][];
        for (int b = 0; b < bag.length; b++) {
            bag[b] = pair(bagSpread);
            bagAggressive[b] = pair(regime.plain() ? 0 : bagSpread / 3);
        }
        double real = regime.plain() ? 0 : 1;
        aggressive = new double[] {real * Drift.between(random, -0.5, 0), real * Drift.between(random, 0, 0.5)};
        fast = uniform(-0.3 * real, 0.3 * real);
        narrow = new double[] {real * Drift.between(random, -0.9, -0.3), 0};
        league = uniform(-0.3 * real, 0);
        conditions = new double[][] {uniform(-0.4 * real, 0.4 * real), uniform(-0.4 * real, 0.4 * real)};
        taste = new double[regime.bags()];
        Arrays.setAll(taste, b -> Drift.between(random, -3, 3));
        grid = new double[GRID];
        Arrays.setAll(grid, i -> regime.days().quantile((i + 0.5) / GRID));
        drawDrift();
        throwAll();
        board = most(Way::board, BoardKind.REGULATION);
        setting = most(Way::setting, Setting.PRACTICE);
        said = most(Way::said, Optional.<Conditions>empty()).orElse(null);
    }

    private double[] pair(double spread) {
        return new double[] {
            spread * regime.effects().sample(random), spread * regime.effects().sample(random)
        };
    }

    private double[] uniform(double low, double high) {
        return new double[] {Drift.between(random, low, high), Drift.between(random, low, high)};
    }

    private void drawDrift() {
        drift[KEPT] = regime.drift().draw(random);
        drift[IN] = random.nextBoolean() ? drift[KEPT] : regime.drift().draw(random);
        if (regime.drift() == Drift.RISE) {
            double low = 0;
            double high = 6;
            for (int step = 0; step < 50; step++) {
                double scale = (low + high) / 2;
                drift[KEPT] = t -> scale * (t + 1);
                drift[IN] = drift[KEPT];
                Way way = way(0);
                if (points(way, TODAY) - points(way, first) < 1) {
                    low = scale;
                } else {
                    high = scale;
                }
            }
        }
    }

    /** The records, as the app would hand them to the engine. */
    public List<RunCount> log() {
        return List.copyOf(log);
    }

    /** How many bag sets were thrown. */
    public int bags() {
        return regime.bags();
    }

    /** The name of a bag set. */
    public String bagName(int number) {
        return "bag " + number;
    }

    /** True points per round on a day: at the mix of the last 90 days, on average over good and bad days. */
    public double points(LocalDate day) {
        return average(this::asForm, day, TODAY.minusDays(90));
    }

    /** True points per round today with one bag set, at the mix of everything thrown. */
    public double points(int number) {
        return average(way -> way.with(number), TODAY, LocalDate.MIN);
    }

    /** Points per round as thrown with one bag set, adjusted for nothing; NaN where none were counted. */
    public double raw(int number) {
        Tally sum = Tally.NONE;
        for (RunCount count : log) {
            sum = count.bag().equals(bagName(number)) ? sum.plus(count.known()) : sum;
        }
        return Finish.BAGS * (double) sum.points() / sum.thrown();
    }

    /** Throws a total of some rounds on a new day, today, in a way taken from the mix of the last 90 days. */
    public int nextTotal(int rounds) {
        List<Way> ways = new ArrayList<>();
        thrown.forEach((day, counts) -> {
            if (day.isAfter(TODAY.minusDays(90))) {
                counts.forEach((way, bags) -> ways.addAll(Collections.nCopies(bags, way)));
            }
        });
        Way way = asForm(ways.get(random.nextInt(ways.size())));
        double[] shift = day();
        int total = 0;
        for (int i = 0; i < rounds; i++) {
            total += round(chances(way, TODAY, shift)).points();
        }
        return total;
    }

    /** As thrown, but where form is said to be: regulation board, practice, no said conditions, if there are any such. */
    private Way asForm(Way way) {
        return way.with(board, setting, said);
    }

    /** The usual word if it was thrown, else the one thrown most. */
    private <T> T most(Function<Way, T> trait, T usual) {
        Map<T, Integer> bags = new LinkedHashMap<>();
        thrown.values()
                .forEach(counts -> counts.forEach((way, number) -> bags.merge(trait.apply(way), number, Integer::sum)));
        return bags.containsKey(usual)
                ? usual
                : Collections.max(bags.entrySet(), Map.Entry.comparingByValue()).getKey();
    }

    private double average(UnaryOperator<Way> changed, LocalDate day, LocalDate after) {
        Map<Way, Integer> mix = new LinkedHashMap<>();
        thrown.forEach((when, counts) -> {
            if (when.isAfter(after)) {
                counts.forEach((way, bags) -> {
                    mix.merge(changed.apply(way), bags, Integer::sum);
                });
            }
        });
        double sum = 0;
        double weight = 0;
        for (Map.Entry<Way, Integer> entry : mix.entrySet()) {
            sum += entry.getValue() * points(entry.getKey(), day);
            weight += entry.getValue();
        }
        return sum / weight;
    }

    /** Points per round, averaged over days at equally likely quantiles of what they shift. */
    private double points(Way way, LocalDate day) {
        double sum = 0;
        for (int i = 0; i < GRID; i++) {
            for (int j = 0; j < GRID; j++) {
                double[] chances = chances(way, day, shift(grid[i], grid[j]));
                sum += Finish.BAGS * (3 * chances[IN] + chances[KEPT] - chances[IN]);
            }
        }
        return sum / (GRID * GRID);
    }

    private double[] shift(double first, double own) {
        double rest = Math.sqrt(1 - common * common);
        return new double[] {daySpread * first, daySpread * (common * first + rest * own)};
    }

    private double[] day() {
        return shift(regime.days().sample(random), regime.days().sample(random));
    }

    /** Chance of a bag to be kept, and to be in. */
    private double[] chances(Way way, LocalDate day, double[] shift) {
        double time = (day.toEpochDay() - TODAY.toEpochDay()) / HALF_YEAR;
        double[] chances = new double[2];
        for (int m = 0; m < 2; m++) {
            double logit = base[m] + drift[m].at(time) + bag[way.bag()][m] + shift[m];
            logit += way.approach() == Approach.AGGRESSIVE ? aggressive[m] + bagAggressive[way.bag()][m] : 0;
            logit += way.face() == Face.FAST ? fast[m] : 0;
            logit += way.board() == BoardKind.NARROW ? narrow[m] : 0;
            logit += way.setting() == Setting.LEAGUE ? league[m] : 0;
            logit += way.conditions() == Conditions.SLOW ? conditions[0][m] : 0;
            logit += way.conditions() == Conditions.FAST ? conditions[1][m] : 0;
            chances[m] = 1 / (1 + Math.exp(-logit));
        }
        chances[IN] *= chances[KEPT];
        return chances;
    }

    private void throwAll() {
        int left = regime.rounds();
        for (int outing = 0; outing < regime.outings(); outing++) {
            double time = regime.outings() == 1 ? 1 : outing / (regime.outings() - 1.0);
            LocalDate day = first.plusDays(Math.round(time * regime.span()));
            double[] shift = day();
            int today = left / (regime.outings() - outing);
            left -= today;
            int runs = today >= 10 && random.nextBoolean() ? 2 : 1;
            for (int run = 0; run < runs; run++) {
                int rounds = today / (runs - run);
                today -= rounds;
                run(day, time, shift, "run " + outing + "-" + run, rounds);
            }
        }
    }

    private void run(LocalDate day, double time, double[] shift, String name, int rounds) {
        Way way = way(bag(time));
        boolean onlyIn = way.drill() == Drill.VOLUME && random.nextBoolean();
        if (rounds >= 4 && random.nextInt(3) == 0) {
            int half = rounds / 2;
            count(day, shift, name, way, half, onlyIn);
            count(day, shift, name, way.with(bag(time)), rounds - half, onlyIn);
        } else {
            count(day, shift, name, way, rounds, onlyIn);
        }
    }

    private int bag(double time) {
        if (regime.use() == Use.HALVES) {
            return random.nextDouble() < 0.8 == time < 0.5 ? 0 : 1;
        }
        double[] weight = new double[regime.bags()];
        double sum = 0;
        for (int b = 0; b < weight.length; b++) {
            weight[b] = regime.use() == Use.EVEN ? 1 : Math.exp(taste[b] * (time - 0.5));
            sum += weight[b];
        }
        double u = sum * random.nextDouble();
        int b = 0;
        while (b < weight.length - 1 && u >= weight[b]) {
            u -= weight[b++];
        }
        return b;
    }

    private Way way(int number) {
        if (regime.plain()) {
            return new Way(
                    number,
                    Face.SLOW,
                    Approach.CONSERVATIVE,
                    BoardKind.REGULATION,
                    Setting.PRACTICE,
                    null,
                    Drill.TOTAL);
        }
        return new Way(
                number,
                random.nextInt(3) == 0 ? Face.FAST : Face.SLOW,
                random.nextInt(3) == 0 ? Approach.AGGRESSIVE : Approach.CONSERVATIVE,
                random.nextInt(10) == 0 ? BoardKind.NARROW : BoardKind.REGULATION,
                random.nextInt(10) == 0 ? Setting.LEAGUE : Setting.PRACTICE,
                random.nextInt(5) > 0 ? null : random.nextBoolean() ? Conditions.SLOW : Conditions.FAST,
                random.nextInt(5) == 0 ? Drill.VOLUME : random.nextInt(4) == 0 ? Drill.RACE : Drill.TOTAL);
    }

    private void count(LocalDate day, double[] shift, String run, Way way, int rounds, boolean onlyIn) {
        int[] finishes = new int[Finish.values().size()];
        Tally sum = Tally.NONE;
        for (int i = 0; i < rounds; i++) {
            Finish finish = round(chances(way, day, shift));
            finishes[finish.index()] += way.drill() == Drill.VOLUME ? 0 : 1;
            sum = sum.plus(new Tally(finish.in(), finish.on(), finish.off()));
        }
        log.add(new RunCount(
                day,
                run,
                way.drill(),
                bagName(way.bag()),
                way.face(),
                way.approach(),
                way.board(),
                way.setting(),
                way.conditions(),
                rounds,
                onlyIn ? Tally.NONE : sum,
                onlyIn ? sum.thrown() : 0,
                onlyIn ? sum.in() : 0,
                Arrays.stream(finishes).boxed().toList()));
        thrown.computeIfAbsent(day, made -> new LinkedHashMap<>()).merge(way, sum.thrown(), Integer::sum);
    }

    private Finish round(double[] chances) {
        int in = 0;
        int on = 0;
        for (int i = 0; i < Finish.BAGS; i++) {
            double u = random.nextDouble();
            in += u < chances[IN] ? 1 : 0;
            on += u >= chances[IN] && u < chances[KEPT] ? 1 : 0;
        }
        return new Finish(in, on, Finish.BAGS - in - on);
    }
}
