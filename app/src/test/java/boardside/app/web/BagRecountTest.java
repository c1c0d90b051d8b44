package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.BagSet;
import boardside.app.practice.Exercise;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.app.record.Applied;
import boardside.app.record.Records;
import boardside.app.transfer.Backups;
import boardside.app.transfer.LogFiles;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Drills that are no games, thrown at random with nonsense among it: volume with several sets, just throwing, games of a
 * league, and tries. What is kept is legal, and what the summary says anybody can count in the log. {@link RecountTest}
 * does the same for games and totals.
 */
class BagRecountTest {
    private static final JsonMapper JSON = new JsonMapper();
    private static final int PLANNED = 10;

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(longs = {601, 602, 603, 604})
    void theSummaryIsARecountOfTheExport(long seed) throws Exception {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        try (Records records = Records.open(folder.resolve("store.db").toString());
                Server server = Server.start(records, ServerOptions.local(0), Clock.systemDefaultZone())) {
            int me = records.firstPlayer().id();
            List<String> sets = new ArrayList<>(List.of(""));
            for (String name : List.of("Mill Pond", "Dry Ridge", "Birch Low")) {
                sets.add(records.saveBag(me, BagSet.named(records.ids().next(), name))
                        .id());
            }
            Map<String, Drill> drills = new TreeMap<>();
            for (int i = 0; i < 9; i++) {
                Drill drill = List.of(Drill.VOLUME, Drill.CASUAL, Drill.FIXTURE).get(i % 3);
                String run = "run-" + (char) ('a' + i);
                drills.put(run, drill);
                throwRun(records, me, run, drill, sets, random);
            }
            tries(records, me, "tries-a", null, random);
            tries(records, me, "tries-b", new Stakes(false, null, 3, null, false), random);
            assertThat(records.check()).isEmpty();

            StringBuilder log = new StringBuilder();
            LogFiles.write(records, me, log);
            Map<String, Sum> sums = count(log.toString(), drills);
            assertThat(sums.keySet()).isEqualTo(drills.keySet());
            sums.forEach((run, sum) -> assertThat(headline(server, run))
                    .as("seed " + seed + ", " + drills.get(run))
                    .isEqualTo(sum.words(Objects.requireNonNull(drills.get(run)))));

            StringBuilder all = new StringBuilder();
            Backups.export(records, me, all);
            countTries(all.toString())
                    .forEach((run, words) -> assertThat(headline(server, run))
                            .as("seed " + seed + ", " + run)
                            .isEqualTo(words));
        }
    }

    private static String headline(Server server, String run) {
        String page =
                Wire.get(Wire.HERE, server.port(), "/runs/" + run + "/summary").body();
        return page.replaceFirst("(?s).*<h1 id=\"result\">", "").replaceFirst("(?s)</h1>.*", "");
    }

    /** Rounds of several sets, some counted in full and some by the bags in; too many bags, doubled sets, rounds too many. */
    private static void throwRun(
            Records records, int me, String run, Drill drill, List<String> sets, UniformRandomProvider random) {
        Setup setup = Setup.plain().with(draft -> draft.rounds = drill == Drill.FIXTURE ? PLANNED : null);
        assertThat(apply(records, me, start(records, run, drill, setup))).isTrue();
        int refused = 0;
        for (int i = 0; i < 25; i++) {
            int number = 1 + random.nextInt(14);
            List<Line> lines = new ArrayList<>();
            int kinds = drill == Drill.FIXTURE ? 1 : 1 + random.nextInt(3);
            for (int line = 0; line < kinds; line++) {
                lines.add(line(drill, sets.get(random.nextInt(sets.size())), random));
            }
            boolean takenBack = random.nextInt(8) == 0;
            boolean stored = apply(
                    records,
                    me,
                    new Operation.PutRound(
                            run,
                            new Round(
                                    number, Side.ME, records.ids().next(), takenBack ? List.of() : lines, List.of())));
            boolean twice = lines.stream().map(Line::bag).distinct().count() < lines.size();
            boolean beyond = drill == Drill.FIXTURE && number > PLANNED;
            boolean tooMany = lines.stream().mapToInt(Line::thrown).sum() > drill.mostBags();
            assertThat(stored)
                    .as(drill + " round " + number + " " + lines)
                    .isEqualTo(takenBack || !twice && !beyond && !tooMany);
            refused += stored ? 0 : 1;
        }
        // The last word of every run is a legal round, so that none is empty.
        assertThat(apply(
                        records,
                        me,
                        new Operation.PutRound(
                                run,
                                new Round(1, Side.ME, records.ids().next(), List.of(plain("", 4, 2, 1)), List.of()))))
                .isTrue();
        assertThat(refused).as(drill + ": nonsense refused").isPositive();
    }

    private static Line line(Drill drill, String bag, UniformRandomProvider random) {
        if (drill == Drill.FIXTURE) {
            int in = random.nextInt(5);
            return plain(bag, random.nextInt(5) == 0 ? 5 + in : 4, in, random.nextInt(5 - in));
        }
        int thrown = random.nextInt(6) == 0 ? 60 : 1 + random.nextInt(20);
        int in = random.nextInt(thrown + 1);
        return switch (random.nextInt(drill == Drill.CASUAL ? 3 : 2)) {
            case 0 -> plain(bag, thrown, in, random.nextInt(thrown - in + 1));
            case 1 -> line(bag, thrown, in, null, null);
            default -> line(bag, thrown, null, null, null);
        };
    }

    private static Line plain(String bag, int thrown, int in, int on) {
        return line(bag, thrown, in, on, thrown - in - on);
    }

    private static Line line(
            String bag, int thrown, @Nullable Integer in, @Nullable Integer on, @Nullable Integer off) {
        return new Line(
                bag,
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                thrown,
                in,
                on,
                off,
                Line.Misses.NONE,
                "",
                "");
    }

    private static void tries(
            Records records, int me, String run, @Nullable Stakes stakes, UniformRandomProvider random) {
        Exercise.Step step = new Exercise.Step(Shot.SLIDE, null, Position.EMPTY);
        Setup setup = Setup.plain().with(draft -> {
            draft.stakes = stakes;
            draft.exercise = new Exercise(List.of(), List.of(step), false, Exercise.Call.MINE, null, null, "", "", "");
        });
        apply(records, me, start(records, run, Drill.SITUATION, setup));
        Try.How how = new Try.How("", null, null, BoardKind.REGULATION, Setting.PRACTICE, null);
        for (int i = 0; i < 30; i++) {
            int number = 1 + random.nextInt(20);
            boolean takenBack = random.nextInt(5) == 0;
            Try.Played played = new Try.Played(
                    Side.ME, Shot.SLIDE, null, Position.EMPTY, "", null, false, random.nextBoolean(), null, how, "");
            apply(records, me, new Operation.PutTry(records.ids().next(), run, number, takenBack ? null : played));
        }
    }

    private static Operation start(Records records, String run, Drill drill, Setup setup) {
        return new Operation.StartRun(
                records.ids().next(), run, "s", drill, "2026-05-01T10:00:00Z", false, "", null, null, setup);
    }

    /** Whether it was stored. */
    private static boolean apply(Records records, int me, Operation operation) {
        return records.apply(me, List.of(operation), Instant.EPOCH).get(0) instanceof Applied.Stored;
    }

    /** What a run's rows add up to; the bags of each round are looked at on the way. */
    private static final class Sum {
        private int thrown;
        private int in;
        private int on;
        private boolean full = true;
        private final Map<Integer, Integer> byRound = new HashMap<>();

        private String words(Drill drill) {
            if (drill == Drill.FIXTURE) {
                return (3 * in + on) + " points in " + byRound.size() + " rounds";
            }
            if (drill == Drill.CASUAL) {
                return full ? (3 * in + on) + " points in " + byRound.size() + " rounds" : thrown + " bags thrown";
            }
            return in + " of " + thrown + " bags in";
        }
    }

    private static Map<String, Sum> count(String log, Map<String, Drill> drills) {
        Map<String, Sum> sums = new TreeMap<>();
        String[] lines = log.split("\n");
        List<String> columns = List.of(lines[0].split(",", -1));
        for (int i = 1; i < lines.length; i++) {
            String[] fields = lines[i].split(",", -1);
            String run = fields[columns.indexOf("run")];
            Drill drill = Objects.requireNonNull(drills.get(run));
            int round = Integer.parseInt(fields[columns.indexOf("round")]);
            Integer in = number(fields[columns.indexOf("in")]);
            Integer on = number(fields[columns.indexOf("on")]);
            Integer off = number(fields[columns.indexOf("off")]);
            Integer thrown = number(fields[columns.indexOf("thrown")]);
            int bags =
                    thrown != null ? thrown : (in == null ? 0 : in) + (on == null ? 0 : on) + (off == null ? 0 : off);
            Sum sum = sums.computeIfAbsent(run, name -> new Sum());
            sum.thrown += bags;
            sum.in += in == null ? 0 : in;
            sum.on += on == null ? 0 : on;
            sum.full &= on != null;
            int ofRound = sum.byRound.merge(round, bags, Integer::sum);
            assertThat(ofRound).isLessThanOrEqualTo(drill.mostBags());
            assertThat(drill == Drill.FIXTURE ? round : 1).isLessThanOrEqualTo(PLANNED);
        }
        return sums;
    }

    private static @Nullable Integer number(String field) {
        return field.isEmpty() ? null : Integer.valueOf(field);
    }

    /** By run, how many tries worked; under sudden death none may follow the miss that ends it. */
    private static Map<String, String> countTries(String export) throws Exception {
        Map<String, String> words = new TreeMap<>();
        for (String text : export.split("\n")) {
            JsonNode line = JSON.readTree(text);
            if (!line.path("kind").asText().equals("run")
                    || !line.path("drill").asText().equals("situation")) {
                continue;
            }
            int tries = 0;
            int worked = 0;
            int most = line.path("setup").path("stakes").path("misses").asInt(1000);
            for (JsonNode one : line.path("tries")) {
                JsonNode played = one.path("played");
                if (played.has("worked")) {
                    assertThat(tries - worked).as("no try after the end").isLessThan(most);
                    tries++;
                    worked += played.path("worked").asBoolean() ? 1 : 0;
                }
            }
            words.put(line.path("id").asText(), worked + " of " + tries + " worked");
        }
        assertThat(words).hasSize(2);
        return words;
    }
}
