package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.practice.Try;
import boardside.app.transfer.Backups;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Random practice of tries, with corrections, repeats, bags taken back and nonsense in it: what is stored is legal, and what
 * rates are made of equals a recount of the JSON Lines that {@code export --all} writes.
 */
class TryRecountTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");
    private static final JsonMapper JSON = new JsonMapper();

    @TempDir
    Path folder;

    private int ops;

    private String op() {
        return "01900000-0000-7000-8000-%012d".formatted(++ops);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void countsEqualARecountFromTheExport(long seed) throws Exception {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        try (Records records = Records.open(folder.resolve("store.db").toString())) {
            int me =
                    records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
            List<Operation> operations = new ArrayList<>();
            for (int run = 1; run <= 6; run++) {
                Drill drill = run % 2 == 0 ? Drill.SITUATION : Drill.PLACEMENT;
                operations.add(new Operation.StartRun(
                        op(),
                        "run " + run,
                        "s",
                        drill,
                        "2026-06-01T18:00:00+02:00",
                        run > 4,
                        "",
                        null,
                        null,
                        Setup.plain()));
                for (int i = 0; i < 30; i++) {
                    operations.add(
                            new Operation.PutTry(op(), "run " + run, 1 + random.nextInt(20), played(random, drill)));
                    if (random.nextInt(5) == 0) {
                        operations.add(operations.get(random.nextInt(operations.size())));
                    }
                }
            }
            int refused = 0;
            for (Applied applied : records.apply(me, operations, NOW)) {
                refused += applied instanceof Applied.Refused ? 1 : 0;
            }
            assertThat(refused).as("nonsense refused, seed " + seed).isPositive();
            assertThat(records.check()).isEmpty();

            StringBuilder export = new StringBuilder();
            Backups.export(records, me, export);
            Map<String, int[]> recount = recount(export.toString());
            Map<String, int[]> counted = new TreeMap<>();
            for (Drill drill : List.of(Drill.PLACEMENT, Drill.SITUATION)) {
                for (TryRates.Row row : TryRates.of(records, me, drill, LocalDate.parse("2026-06-01"), Set.of())
                        .rows()) {
                    Target target = row.target();
                    String key = drill == Drill.PLACEMENT && target != null
                            ? target.text() + "/" + row.board().word()
                            : row.position().code(row.board() == BoardKind.NARROW ? 12 : 24) + "/"
                                    + row.shot().word() + "/" + row.board().word();
                    counted.put(key, new int[] {row.tries(), row.worked()});
                }
            }
            assertThat(counted.keySet()).isEqualTo(recount.keySet());
            counted.forEach(
                    (key, sum) -> assertThat(sum).as(key + ", seed " + seed).isEqualTo(recount.get(key)));
        }
    }

    /** By hand from the lines: no class of the program's but the board's parts has a hand in it. */
    private static Map<String, int[]> recount(String export) throws Exception {
        Map<String, int[]> sums = new TreeMap<>();
        for (String text : export.split("\n")) {
            JsonNode line = JSON.readTree(text);
            if (!line.path("kind").asText().equals("run") || line.path("warmUp").asBoolean()) {
                continue;
            }
            for (JsonNode one : line.path("tries")) {
                JsonNode played = one.path("played");
                if (!played.path("side").asText().equals("me")) {
                    continue;
                }
                String board = played.path("how").path("board").asText();
                double width = board.equals("narrow") ? 12 : 24;
                String key;
                boolean worked = played.path("worked").asBoolean();
                if (line.path("drill").asText().equals("placement")) {
                    JsonNode target = played.path("target");
                    key = target.path("depth").asText() + "-"
                            + target.path("lane").asText() + "/" + board;
                    JsonNode spot = played.path("rest").path("spot");
                    boolean there = !spot.isMissingNode()
                            && Target.at(
                                            new Spot(
                                                    spot.path("x").asDouble(),
                                                    spot.path("y").asDouble()),
                                            width)
                                    .text()
                                    .equals(key.substring(0, key.indexOf('/')));
                    assertThat(worked).as("a try is what its rest says").isEqualTo(there);
                } else {
                    List<String> bags = new ArrayList<>();
                    for (JsonNode bag : played.path("position").path("bags")) {
                        Spot spot =
                                new Spot(bag.path("x").asDouble(), bag.path("y").asDouble());
                        bags.add(bag.path("side").asText() + ":"
                                + Target.at(spot, width).text());
                    }
                    bags.sort(null);
                    key = (bags.isEmpty() ? "open" : String.join(" ", bags)) + "/"
                            + played.path("shot").asText() + "/" + board;
                }
                int[] sum = sums.computeIfAbsent(key, name -> new int[2]);
                sum[0]++;
                sum[1] += worked ? 1 : 0;
            }
        }
        return sums;
    }

    /** Mostly legal; now and then a lie about where a bag lies, or a bag beside the narrow board. */
    private static Try.@Nullable Played played(UniformRandomProvider random, Drill drill) {
        if (random.nextInt(8) == 0) {
            return null;
        }
        BoardKind board = random.nextInt(5) == 0 ? BoardKind.NARROW : BoardKind.REGULATION;
        double width = board == BoardKind.NARROW ? 12 : 24;
        Try.How how = new Try.How("", null, null, board, Setting.PRACTICE, null);
        Side side = random.nextInt(6) == 0 ? Side.VERSUS : Side.ME;
        if (drill == Drill.SITUATION) {
            Position position = Situation.values()[random.nextInt(Situation.values().length)].position();
            Shot shot =
                    List.of(Shot.SLIDE, Shot.CUT_LEFT, Shot.PUSH, Shot.AIRMAIL).get(random.nextInt(4));
            return new Try.Played(side, shot, null, position, "", null, true, random.nextBoolean(), null, how, "");
        }
        Target target = new Target(Depth.values()[random.nextInt(6)], Lane.values()[random.nextInt(3)]);
        Try.Rest rest;
        boolean there = false;
        if (random.nextInt(4) == 0) {
            rest = new Try.Rest(Outcome.OFF, "short", null);
        } else {
            Spot spot = random.nextBoolean()
                    ? target.centre(width)
                    : new Spot(width * (random.nextDouble() - 0.5), 36 * random.nextDouble());
            if (spot.inHole()) {
                rest = new Try.Rest(Outcome.IN, "", null);
            } else {
                rest = new Try.Rest(Outcome.ON, "", spot);
                there = Target.at(spot, width).equals(target);
            }
        }
        boolean told = random.nextInt(10) == 0 ? !there : there;
        return new Try.Played(side, Shot.BLOCK, target, Position.EMPTY, "", null, false, told, rest, how, "");
    }
}
