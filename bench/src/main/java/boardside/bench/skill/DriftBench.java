package boardside.bench.skill;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import boardside.engine.rules.Word;
import boardside.engine.skill.DriftKinds;
import boardside.engine.skill.DriftKinds.Kind;
import boardside.engine.skill.RunCount;
import boardside.engine.skill.simulated.Drift;
import boardside.engine.skill.simulated.Regime;
import boardside.engine.skill.simulated.SimulatedPlayer;
import boardside.engine.skill.simulated.Spread;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Which law of drift says most about days it has not seen: none, a random walk, a damped one, a smooth curve. Each learns
 * from a simulated player's log without its last day, and without its last 30 days, and is scored by the logarithm of the
 * chance that it gave to what was thrown then; what stands here is how much more or less than the random walk, per player.
 * With the CSV log of a store, the same is asked of that store at the end of each of its last 18 months.
 *
 * <pre>
 * mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.skill.DriftBench [--players 100] [LOG.csv]
 * </pre>
 */
public final class DriftBench {
    private static final long SEED = 1_000_000;
    private static final List<Drift> DRIFTS = List.of(Drift.NONE, Drift.SMOOTH, Drift.STEPPED, Drift.RISE);
    private static final List<Integer> ROUNDS = List.of(300, 1000);
    private static final int MONTH = 30;
    private static final int MONTHS = 18;

    private DriftBench() {}

    public static void main(String[] args) throws IOException {
        int players = 100;
        List<String> logs = new ArrayList<>();
        for (int i = 0; i < args.length; i++) {
            if (args[i].equals("--players")) {
                players = Integer.parseInt(args[++i]);
            } else {
                logs.add(args[i]);
            }
        }
        heading();
        for (int rounds : ROUNDS) {
            for (Drift drift : DRIFTS) {
                Regime regime = Regime.usual(rounds, drift, Spread.UNIFORM, 0.2);
                simulated(regime, players);
            }
        }
        for (String log : logs) {
            ofStore(read(Path.of(log)));
        }
    }

    private static void heading() {
        StringBuilder head = new StringBuilder("| drift of the player | asked about |");
        StringBuilder line = new StringBuilder("| --- | --- |");
        for (Kind kind : others()) {
            head.append(' ').append(word(kind)).append(" |");
            line.append(" --- |");
        }
        System.out.println(head);
        System.out.println(line);
    }

    private static List<Kind> others() {
        List<Kind> others = new ArrayList<>(List.of(Kind.values()));
        others.remove(Kind.WALK);
        return others;
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static void simulated(Regime regime, int players) {
        List<Map<Kind, Double>> day = new ArrayList<>();
        List<Map<Kind, Double>> month = new ArrayList<>();
        for (int i = 0; i < players; i++) {
            List<RunCount> log = new SimulatedPlayer(regime, RandomSource.XO_RO_SHI_RO_128_PP.create(SEED + i)).log();
            day.add(gains(log, SimulatedPlayer.TODAY));
            month.add(gains(log, SimulatedPlayer.TODAY.minusDays(MONTH)));
        }
        row(word(regime.drift()) + ", " + regime.rounds() + " rounds", "last day", day);
        row("", "last 30 days", month);
    }

    private static void ofStore(List<RunCount> all) {
        LocalDate last =
                all.stream().map(RunCount::day).max(LocalDate::compareTo).orElseThrow();
        List<Map<Kind, Double>> gains = new ArrayList<>();
        for (int month = MONTHS - 1; month >= 1; month--) {
            LocalDate from = last.minusDays((long) month * MONTH);
            List<RunCount> log = all.stream()
                    .filter(count -> count.day().isBefore(from.plusDays(MONTH)))
                    .toList();
            boolean both = log.stream().anyMatch(count -> count.day().isBefore(from))
                    && log.stream().anyMatch(count -> !count.day().isBefore(from));
            if (both) {
                gains.add(gains(log, from));
            }
        }
        row("the log, " + gains.size() + " months", "next 30 days", gains);
    }

    private static Map<Kind, Double> gains(List<RunCount> log, LocalDate from) {
        double walk = DriftKinds.score(log, from, Kind.WALK);
        Map<Kind, Double> gains = new LinkedHashMap<>();
        for (Kind kind : others()) {
            gains.put(kind, DriftKinds.score(log, from, kind) - walk);
        }
        return gains;
    }

    private static void row(String player, String asked, List<Map<Kind, Double>> gains) {
        StringBuilder row = new StringBuilder("| " + player + " | " + asked + " |");
        for (Kind kind : others()) {
            double[] each = gains.stream().mapToDouble(gain -> gain.get(kind)).toArray();
            double sum = 0;
            double square = 0;
            for (double gain : each) {
                sum += gain / each.length;
                square += gain * gain / each.length;
            }
            double error = Math.sqrt(Math.max(0, square - sum * sum) / each.length);
            row.append(String.format(Locale.ROOT, " %+.3f ± %.3f |", sum, error));
        }
        System.out.println(row);
    }

    /** My own counts in a log as the program exports it, by run and way; {@code placement} and the like do not count. */
    private static List<RunCount> read(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        List<String> head = fields(lines.get(0));
        Map<List<String>, int[]> counts = new LinkedHashMap<>();
        for (String line : lines.subList(1, lines.size())) {
            List<String> fields = fields(line);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < head.size(); i++) {
                row.put(head.get(i), fields.get(i));
            }
            boolean mine = !row.getOrDefault("side", "").equals("versus")
                    && row.getOrDefault("warm_up", "").isEmpty();
            if (!mine || row.getOrDefault("drill", "").equals("casual")) {
                continue;
            }
            List<String> key = new ArrayList<>();
            for (String name : List.of("started_at", "run", "drill", "bag", "face", "approach", "board", "setting")) {
                key.add(row.get(name));
            }
            key.add(row.getOrDefault("conditions", ""));
            int[] sum = counts.computeIfAbsent(key, made -> new int[6]);
            sum[0]++;
            if (row.getOrDefault("on", "").isEmpty()) {
                sum[4] += Integer.parseInt(row.get("thrown"));
                sum[5] += Integer.parseInt(row.get("in"));
            } else {
                sum[1] += Integer.parseInt(row.get("in"));
                sum[2] += Integer.parseInt(row.get("on"));
                sum[3] += Integer.parseInt(row.get("off"));
            }
        }
        List<RunCount> log = new ArrayList<>();
        counts.forEach((key, sum) -> log.add(new RunCount(
                LocalDate.parse(key.get(0).substring(0, 10)),
                key.get(1),
                word(Drill.values(), key.get(2)),
                key.get(3),
                key.get(4).isEmpty() ? null : word(Face.values(), key.get(4)),
                key.get(5).isEmpty() ? null : word(Approach.values(), key.get(5)),
                word(BoardKind.values(), key.get(6)),
                word(Setting.values(), key.get(7)),
                key.get(8).isEmpty() ? null : word(Conditions.values(), key.get(8)),
                sum[0],
                new Tally(sum[1], sum[2], sum[3]),
                sum[4],
                sum[5],
                Collections.nCopies(Finish.values().size(), 0))));
        return log;
    }

    private static <T extends Word> T word(T[] values, String word) {
        for (T value : values) {
            if (value.word().equals(word)) {
                return value;
            }
        }
        throw new IllegalArgumentException("unknown word " + word);
    }

    /** Fields of a line of CSV; a field in quotes does not go over lines. */
    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }
}
