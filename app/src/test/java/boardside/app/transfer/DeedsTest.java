package boardside.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.DayBags;
import boardside.app.practice.Player;
import boardside.app.record.Deeds;
import boardside.app.record.Load;
import boardside.app.record.Records;
import boardside.app.record.Stores;
import boardside.engine.rules.Drill;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Bests against a recount from the exported log, and the load. */
class DeedsTest {
    @TempDir
    Path folder;

    static LongStream seeds() {
        return LongStream.range(7_800, 7_830);
    }

    /** One side's round as the log has it: bags, points and whether all were counted. */
    private record Seen(int bags, int points, boolean counted) {
        Seen plus(Seen other) {
            return new Seen(bags + other.bags, points + other.points, counted && other.counted);
        }

        boolean full() {
            return bags == 4 && counted;
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void bestsAreThoseOfTheExportedLog(long seed) {
        try (Records records = Stores.open(folder.resolve(seed + ".db").toString(), seed)) {
            int me =
                    records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
            byte[] log = new RandomLogs(seed).next().getBytes(StandardCharsets.UTF_8);
            LogFiles.read(records, me, List.of(new LogFiles.Source("log", log)), LogFiles.Progress.NONE);
            Map<String, Integer> expected = recount(records, me);
            Map<String, Integer> told = new TreeMap<>();
            for (Deeds.Best best : records.deeds().bests(me)) {
                if (best.kind() instanceof Deeds.Kind.Total total) {
                    told.put("total " + total.rounds(), best.held().value());
                } else if (best.kind() instanceof Deeds.Kind.Streak) {
                    told.put("streak", best.held().value());
                } else if (best.kind() instanceof Deeds.Kind.Twenty twenty) {
                    told.put("twenty " + twenty.drill().word(), best.held().value());
                }
            }
            assertThat(told).isEqualTo(expected);
            assertThat(records.check()).isEmpty();
        }
    }

    private static Map<String, Integer> recount(Records records, int me) {
        StringBuilder out = new StringBuilder();
        LogFiles.write(records, me, out);
        List<List<String>> rows = rows(out.toString());
        List<String> head = rows.get(0);
        Map<String, List<Map<String, String>>> runs = new LinkedHashMap<>();
        for (List<String> row : rows.subList(1, rows.size())) {
            Map<String, String> cells = new LinkedHashMap<>();
            for (int i = 0; i < head.size(); i++) {
                cells.put(head.get(i), row.get(i));
            }
            runs.computeIfAbsent(cell(cells, "run"), run -> new ArrayList<>()).add(cells);
        }
        Map<String, Integer> best = new TreeMap<>();
        runs.forEach((run, lines) -> {
            boolean counts = lines.get(0).getOrDefault("warm_up", "").isEmpty()
                    && records.run(me, run).orElseThrow().run().finishedAt() != null;
            if (counts) {
                recount(best, lines);
            }
        });
        return best;
    }

    private static void recount(Map<String, Integer> best, List<Map<String, String>> lines) {
        String drill = cell(lines.get(0), "drill");
        Map<String, TreeMap<Integer, Seen>> sides = new TreeMap<>();
        for (Map<String, String> line : lines) {
            String side = cell(line, "side");
            if (side.equals("versus")) {
                continue;
            }
            String on = cell(line, "on");
            boolean counted = !on.isEmpty();
            String thrown = line.getOrDefault("thrown", "");
            int bags =
                    counted ? number(line, "in") + number(line, "on") + number(line, "off") : Integer.parseInt(thrown);
            sides.computeIfAbsent(side, key -> new TreeMap<>())
                    .merge(
                            Integer.parseInt(cell(line, "round")),
                            new Seen(bags, counted ? 3 * number(line, "in") + number(line, "on") : 0, counted),
                            Seen::plus);
        }
        int rounds = 0;
        int bags = 0;
        int points = 0;
        boolean counted = true;
        for (TreeMap<Integer, Seen> side : sides.values()) {
            List<Seen> thrown =
                    side.values().stream().filter(seen -> seen.bags() > 0).toList();
            for (int from = 0; from < thrown.size(); from++) {
                int row = 0;
                int sum = 0;
                for (int to = from; to < thrown.size() && thrown.get(to).full(); to++) {
                    sum += thrown.get(to).points();
                    row = thrown.get(to).points() == 12 && row == to - from ? row + 1 : row;
                    if (to - from == 4
                            && List.of("total", "race", "climb", "game", "duel", "fixture", "trial")
                                    .contains(drill)) {
                        best.merge("twenty " + drill, sum, Math::max);
                    }
                }
                if (row > 0) {
                    best.merge("streak", row, Math::max);
                }
            }
            rounds += thrown.size();
            bags += thrown.stream().mapToInt(Seen::bags).sum();
            points += thrown.stream().mapToInt(Seen::points).sum();
            counted &= thrown.stream().allMatch(Seen::counted);
        }
        boolean total = drill.equals(Drill.TOTAL.word()) || drill.equals(Drill.FIXTURE.word());
        if (total && counted && bags == 4 * rounds && List.of(5, 10, 15, 20).contains(rounds)) {
            best.merge("total " + rounds, points, Math::max);
        }
    }

    private static String cell(Map<String, String> line, String column) {
        return line.getOrDefault(column, "");
    }

    private static int number(Map<String, String> line, String column) {
        return Integer.parseInt(cell(line, column));
    }

    /** A plain reader of the exported text (RFC 4180). */
    private static List<List<String>> rows(String text) {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quoted && c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == ',' || c == '\n')) {
                row.add(cell.toString());
                cell.setLength(0);
                if (c == '\n') {
                    rows.add(row);
                    row = new ArrayList<>();
                }
            } else {
                cell.append(c);
            }
        }
        return rows;
    }

    @Test
    void gamesWonAndGhostsBeaten() {
        try (Records records = Stores.open(folder.resolve("games.db").toString(), 1)) {
            int me =
                    records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
            String head = "session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,in,on,off\n";
            StringBuilder log = new StringBuilder(head);
            race(log, "quick", "2026-05-01T10:00:00Z", 3, 12, 12, 12);
            race(log, "lost", "2026-05-01T11:00:00Z", 9, 0, 0, 0);
            race(log, "better", "2026-05-02T10:00:00Z", 6, 12, 12, 6, 12, 9);
            LogFiles.read(
                    records,
                    me,
                    List.of(new LogFiles.Source("log", log.toString().getBytes(StandardCharsets.UTF_8))),
                    LogFiles.Progress.NONE);
            Map<String, String> held = new TreeMap<>();
            records.deeds()
                    .bests(me)
                    .forEach(best -> held.put(
                            best.kind().getClass().getSimpleName(),
                            best.held().value() + " " + best.held().run()));
            assertThat(held).containsEntry("Fewest", "3 quick").containsEntry("Ghost", "6 better");
            assertThat(held).containsEntry("Streak", "3 quick");
            assertThat(records.deeds().newBests(me, "better"))
                    .extracting(best -> best.kind().getClass().getSimpleName())
                    .containsExactly("Ghost");
            assertThat(records.deeds().milestones(me).reached())
                    .contains(
                            new Deeds.Milestone.Ghost(3, "2026-05-01"),
                            new Deeds.Milestone.Ghost(6, "2026-05-02"),
                            new Deeds.Milestone.Streak(3, "2026-05-01"));
        }
    }

    private static void race(StringBuilder log, String run, String start, int ghost, int... points) {
        for (int round = 1; round <= points.length; round++) {
            int in = points[round - 1] / 3;
            log.append(String.join(
                            ",",
                            Arrays.asList(
                                    run,
                                    run,
                                    start,
                                    "race",
                                    String.valueOf(round),
                                    "me",
                                    "",
                                    "",
                                    "",
                                    "regulation",
                                    "practice",
                                    String.valueOf(ghost),
                                    String.valueOf(in),
                                    "0",
                                    String.valueOf(4 - in))))
                    .append('\n');
        }
    }

    /** The usual week is the mean of the four before; a rise by half is sharp, less is not, and little is nothing. */
    @Test
    void theLoadIsHeldAgainstTheFourWeeksBefore() {
        LocalDate today = LocalDate.parse("2026-06-30");
        List<DayBags> days = new ArrayList<>();
        for (int ago = 34; ago >= 7; ago -= 7) {
            days.add(new DayBags(today.minusDays(ago).toString(), 200, 2));
        }
        days.add(new DayBags(today.minusDays(3).toString(), 250, 2));
        Load steady = Load.of(days, today);
        assertThat(steady).isEqualTo(new Load(0, 250, 200, 4));
        assertThat(steady.sharp()).isFalse();
        days.add(new DayBags(today.toString(), 50, 1));
        assertThat(Load.of(days, today)).isEqualTo(new Load(50, 300, 200, 4));
        assertThat(Load.of(days, today).sharp()).isTrue();
        assertThat(Load.of(days, today.plusDays(40))).isEqualTo(new Load(0, 0, 0, 0));
        Load back = Load.of(List.of(new DayBags(today.toString(), 240, 3)), today);
        assertThat(back.sharp()).isFalse();
        assertThat(back.comeback()).isTrue();
        assertThat(Load.of(List.of(new DayBags(today.toString(), 150, 3)), today)
                        .comeback())
                .isFalse();
    }
}
