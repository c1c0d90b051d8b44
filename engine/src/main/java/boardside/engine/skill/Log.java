package boardside.engine.skill;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import boardside.engine.skill.Variances.Prior;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A player's records as the model sees them: cells in runs, days and nodes of time, and the covariates that stand for
 * bags, faces, approaches, boards, settings, conditions and drills.
 *
 * <p>A node is a day, or in a long log so many days that there are at most about {@value #MOST_NODES}: ten years make
 * nodes of eight days, within which drift is far smaller than the days' own effects. Nodes begin at fixed dates.
 *
 * <p>Bags have a random effect each, and so have bags with approaches where there are several of both. Of every other
 * trait with several words, each word but the usual one has a fixed effect with a normal prior of mean 0; the priors are
 * weak: a standard deviation of 0.4 on the logit scale is about a point a round (common practice, no source). Unknown
 * words are words of their own.
 */
final class Log {
    private static final int MOST_NODES = 500;
    /** More bags with approaches than this are given an effect only where they were thrown. */
    private static final int MOST_CROSSED = 48;

    private static final double FIXED = 0.4;
    private static final double NARROW = 0.8;
    private static final double DRILL = 0.2;

    /** Prior means of the logits: 7 bags in 10 kept, 4 of 10 kept ones in; and their standard deviation. */
    static final double[] MEAN = {0.85, -0.4};

    private static final double LEVEL_DEVIATION = 2.5;

    /** Priors of standard deviations; drift per square root of a day. See docs/skill.md. */
    static final Prior DRIFT = new Prior(1.5, 72);

    static final Prior DAYS = new Prior(1.5, 10);
    static final Prior RUNS = new Prior(1.5, 20);
    static final Prior BAGS = new Prior(1.5, 9);
    static final Prior CROSSED = new Prior(1.5, 22);
    private static final double[] Z = {0.8, 0.6};

    private static final Comparator<RunCount> ORDER =
            Comparator.comparing(RunCount::day).thenComparing(RunCount::run).thenComparing(Log::rest);

    final List<RunCount> counts;
    final Map<Trait, Levels> levels = new EnumMap<>(Trait.class);
    final Levels drills = new Levels();
    final Cells cells;
    final BagCounts bags;
    final Variances variances;
    /** Days that a node stands for. */
    final int grain;

    /** What each covariate stands for; unlike its number, the same in every log. */
    final List<String> names = new ArrayList<>();

    /** Ways to throw in the order met, which are the cells' patterns, and the number of each count's. */
    private final List<Way> ways;

    private final int[] kindOf;
    private final int[] bagColumn;
    private final Map<Trait, int[]> columns = new EnumMap<>(Trait.class);
    private final int[] drillColumn;
    private final int[] crossedColumn;

    /** From counts in any order, at least one. */
    Log(Collection<RunCount> unsorted) {
        List<RunCount> sorted = new ArrayList<>(unsorted);
        sorted.sort(ORDER);
        counts = Collections.unmodifiableList(sorted);
        kindOf = new int[counts.size()];
        List<RunCount> examples = new ArrayList<>();
        kinds(examples);
        List<Integer> kind = new ArrayList<>();
        List<Double> fixed = new ArrayList<>();
        bagColumn = new int[levels(Trait.BAG).size()];
        Arrays.fill(bagColumn, -1);
        boolean severalBags = bagColumn.length > 1;
        for (int i = 0; severalBags && i < bagColumn.length; i++) {
            bagColumn[i] = kind.size();
            names.add("bag " + levels(Trait.BAG).word(i));
            kind.add(0);
            fixed.add(0.0);
        }
        int approaches = levels(Trait.APPROACH).size();
        crossedColumn = new int[bagColumn.length * approaches];
        Arrays.fill(crossedColumn, -1);
        if (severalBags && approaches > 1) {
            boolean[] met = new boolean[crossedColumn.length];
            Arrays.fill(met, crossedColumn.length <= MOST_CROSSED);
            for (RunCount count : examples) {
                met[crossed(levels(Trait.BAG).number(count.bag()), number(Trait.APPROACH, count))] = true;
            }
            for (int i = 0; i < met.length; i++) {
                if (met[i]) {
                    crossedColumn[i] = kind.size();
                    names.add(levels(Trait.APPROACH).word(i % approaches) + " with bag "
                            + levels(Trait.BAG).word(i / approaches));
                    kind.add(1);
                    fixed.add(0.0);
                }
            }
        }
        for (Trait trait : Trait.values()) {
            if (trait != Trait.BAG) {
                Levels own = levels(trait);
                columns.put(
                        trait,
                        fixed(
                                trait.word() + " ",
                                own,
                                usual(trait),
                                trait == Trait.BOARD ? NARROW : FIXED,
                                kind,
                                fixed));
            }
        }
        drillColumn = fixed("drill ", drills, drills.reference(""), DRILL, kind, fixed);

        LocalDate firstDay = counts.get(0).day();
        LocalDate lastDay = counts.get(counts.size() - 1).day();
        grain = (int) ((lastDay.toEpochDay() - firstDay.toEpochDay()) / MOST_NODES) + 1;
        ways = examples.stream().map(this::way).toList();
        Structure structure = new Structure();
        cells = structure.cells(kind.size());
        bags = structure.bags();
        int kinds = kind.stream().max(Comparator.naturalOrder()).orElse(-1) + 1;
        Prior[] priors = Arrays.copyOf(new Prior[] {DRIFT, DAYS, RUNS, BAGS, CROSSED}, 3 + kinds);
        variances = new Variances(
                cells,
                true,
                true,
                true,
                kind.stream().mapToInt(Integer::intValue).toArray(),
                fixed.stream().mapToDouble(Double::doubleValue).toArray(),
                1 / (LEVEL_DEVIATION * LEVEL_DEVIATION),
                1,
                priors,
                Z);
    }

    private static String rest(RunCount count) {
        return count.bag()
                + ' '
                + count.face()
                + ' '
                + count.approach()
                + ' '
                + count.board()
                + ' '
                + count.setting()
                + ' '
                + count.conditions()
                + ' '
                + count.drill()
                + ' '
                + count.known();
    }

    private int[] fixed(
            String name, Levels levels, int reference, double deviation, List<Integer> kind, List<Double> fixed) {
        int[] columns = new int[levels.size()];
        for (int i = 0; i < columns.length; i++) {
            columns[i] = i == reference ? -1 : kind.size();
            if (i != reference) {
                names.add(name + levels.word(i));
                kind.add(-1);
                fixed.add(1 / (deviation * deviation));
            }
        }
        return columns;
    }

    Levels levels(Trait trait) {
        return java.util.Objects.requireNonNull(levels.get(trait));
    }

    private int[] columns(Trait trait) {
        return java.util.Objects.requireNonNull(columns.get(trait));
    }

    private int number(Trait trait, RunCount count) {
        return levels(trait).number(trait.of(count));
    }

    private int crossed(int bag, int approach) {
        return bag * levels(Trait.APPROACH).size() + approach;
    }

    /** The number of the word that answers speak of unless told otherwise. */
    int usual(Trait trait) {
        return levels(trait)
                .reference(
                        switch (trait) {
                            case BOARD -> BoardKind.REGULATION.word();
                            case SETTING -> Setting.PRACTICE.word();
                            // What was not said is more likely normal than what was said not to be.
                            case CONDITIONS ->
                                levels(trait).number(Conditions.NORMAL.word()) >= 0 ? Conditions.NORMAL.word() : "";
                            case BAG, FACE, APPROACH -> "\0";
                        });
    }

    /** Bags thrown. */
    double thrown() {
        return counts.stream().mapToLong(RunCount::thrown).sum();
    }

    /** The date of a day of the cells. */
    LocalDate day(int d) {
        return first(cells.dayRuns[d]).day();
    }

    private RunCount first(int run) {
        return counts.get(cells.runCells[run]);
    }

    /** Orders a run of this log and one of another by day and name. */
    int compareRuns(int run, Log other, int otherRun) {
        RunCount mine = first(run);
        RunCount theirs = other.first(otherRun);
        int byDay = mine.day().compareTo(theirs.day());
        return byDay != 0 ? byDay : mine.run().compareTo(theirs.run());
    }

    private Way way(RunCount count) {
        return new Way(
                number(Trait.BAG, count),
                number(Trait.FACE, count),
                number(Trait.APPROACH, count),
                number(Trait.BOARD, count),
                number(Trait.SETTING, count),
                number(Trait.CONDITIONS, count),
                drills.number(count.drill().word()));
    }

    /** A way's covariates; at the usual mix where it says so. */
    Row row(Way way) {
        double[] value = new double[cells.covariates];
        add(value, bagColumn[way.bag()], 1);
        add(value, crossedColumn[crossed(way.bag(), way.approach())], 1);
        add(value, columns(Trait.FACE)[way.face()], 1);
        add(value, columns(Trait.APPROACH)[way.approach()], 1);
        add(value, columns(Trait.BOARD)[way.board()], 1);
        add(value, columns(Trait.SETTING)[way.setting()], 1);
        Levels conditions = levels(Trait.CONDITIONS);
        if (way.conditions() != Way.USUAL) {
            add(value, columns(Trait.CONDITIONS)[way.conditions()], 1);
        } else {
            int normal = usual(Trait.CONDITIONS);
            int blank = conditions.number("");
            double bags = conditions.thrown(normal);
            if (blank >= 0 && blank != normal) {
                double share = conditions.thrown(blank) / (bags + conditions.thrown(blank));
                add(value, columns(Trait.CONDITIONS)[blank], share);
                add(value, columns(Trait.CONDITIONS)[normal], 1 - share);
            } else {
                add(value, columns(Trait.CONDITIONS)[normal], 1);
            }
        }
        if (way.drill() != Way.USUAL) {
            add(value, drillColumn[way.drill()], 1);
        } else {
            double all = 0;
            for (int i = 0; i < drills.size(); i++) {
                all += drills.thrown(i);
            }
            for (int i = 0; i < drills.size(); i++) {
                add(value, drillColumn[i], drills.thrown(i) / all);
            }
        }
        return Row.of(value);
    }

    private static void add(double[] value, int column, double by) {
        if (column >= 0) {
            value[column] += by;
        }
    }

    /** Covariates that are not 0, and their values. */
    record Row(int[] columns, double[] values) {
        static Row of(double[] value) {
            int[] columns = new int[value.length];
            double[] values = new double[value.length];
            int n = 0;
            for (int j = 0; j < value.length; j++) {
                if (value[j] != 0) {
                    columns[n] = j;
                    values[n++] = value[j];
                }
            }
            return new Row(Arrays.copyOf(columns, n), Arrays.copyOf(values, n));
        }
    }

    /** What tells ways to throw apart, before anything is numbered. */
    private record Words(
            String bag,
            @Nullable Face face,
            @Nullable Approach approach,
            BoardKind board,
            Setting setting,
            @Nullable Conditions conditions,
            Drill drill) {}

    /** Numbers the ways to throw in the order met, and the words in them. */
    private void kinds(List<RunCount> examples) {
        for (Trait trait : Trait.values()) {
            levels.put(trait, new Levels());
        }
        Map<Words, Integer> met = new HashMap<>();
        List<Long> bags = new ArrayList<>();
        for (int c = 0; c < kindOf.length; c++) {
            RunCount count = counts.get(c);
            Words words = new Words(
                    count.bag(),
                    count.face(),
                    count.approach(),
                    count.board(),
                    count.setting(),
                    count.conditions(),
                    count.drill());
            Integer known = met.get(words);
            if (known == null) {
                known = examples.size();
                met.put(words, known);
                examples.add(count);
                bags.add(0L);
            }
            kindOf[c] = known;
            bags.set(known, bags.get(known) + count.thrown());
        }
        for (int i = 0; i < examples.size(); i++) {
            for (Trait trait : Trait.values()) {
                levels(trait).add(trait.of(examples.get(i)), bags.get(i));
            }
            drills.add(examples.get(i).drill().word(), bags.get(i));
        }
    }

    /** The way of one of the sorted counts. */
    Way way(int cell) {
        return ways.get(kindOf[cell]);
    }

    private int[][] patternColumns() {
        return ways.stream()
                .map(way -> IntStream.of(
                                bagColumn[way.bag()],
                                crossedColumn[crossed(way.bag(), way.approach())],
                                columns(Trait.FACE)[way.face()],
                                columns(Trait.APPROACH)[way.approach()],
                                columns(Trait.BOARD)[way.board()],
                                columns(Trait.SETTING)[way.setting()],
                                columns(Trait.CONDITIONS)[way.conditions()],
                                drillColumn[way.drill()])
                        .filter(column -> column >= 0)
                        .sorted()
                        .toArray())
                .toArray(int[][]::new);
    }

    /** The node that a day falls into. */
    long node(LocalDate day) {
        return Math.floorDiv(day.toEpochDay(), grain);
    }

    /** A node's time: the middle of its days. */
    double time(long node) {
        return node * grain + (grain - 1) / 2.0;
    }

    /** Runs, days and nodes as they follow one another in the sorted counts. */
    private final class Structure {
        private final int n = counts.size();
        private final int[] runCells = new int[n + 1];
        private final int[] dayRuns = new int[n + 1];
        private final int[] nodeDays = new int[n + 1];
        private final double[] times = new double[n];
        private int runs;
        private int days;
        private int nodes;

        Cells cells(int covariates) {
            for (int c = 0; c < n; c++) {
                RunCount count = counts.get(c);
                RunCount before = counts.get(Math.max(0, c - 1));
                boolean newDay = c == 0 || !before.day().equals(count.day());
                boolean newNode = c == 0 || newDay && node(before.day()) != node(count.day());
                if (newNode) {
                    times[nodes] = time(node(count.day()));
                    nodeDays[nodes++] = days;
                }
                if (newDay) {
                    dayRuns[days++] = runs;
                }
                if (newDay || !before.run().equals(count.run())) {
                    runCells[runs++] = c;
                }
            }
            runCells[runs] = n;
            dayRuns[days] = runs;
            nodeDays[nodes] = days;
            int[][] columns = patternColumns();
            double[][] values = new double[columns.length][];
            for (int p = 0; p < columns.length; p++) {
                values[p] = new double[columns[p].length];
                Arrays.fill(values[p], 1);
            }
            return new Cells(
                    2,
                    covariates,
                    columns,
                    values,
                    kindOf,
                    Arrays.copyOf(runCells, runs + 1),
                    Arrays.copyOf(dayRuns, days + 1),
                    Arrays.copyOf(nodeDays, nodes + 1),
                    Arrays.copyOf(times, nodes));
        }

        BagCounts bags() {
            double[] thrown = new double[n];
            double[] kept = new double[n];
            double[] in = new double[n];
            double[] onlyThrown = new double[n];
            double[] onlyIn = new double[n];
            for (int c = 0; c < n; c++) {
                RunCount count = counts.get(c);
                thrown[c] = count.known().thrown();
                kept[c] = count.known().in() + count.known().on();
                in[c] = count.known().in();
                onlyThrown[c] = count.thrownOnlyIn();
                onlyIn[c] = count.inOnlyIn();
            }
            return new BagCounts(thrown, kept, kept, in, onlyThrown, onlyIn);
        }
    }
}
