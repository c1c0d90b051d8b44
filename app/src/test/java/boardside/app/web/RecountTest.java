package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Contest;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.app.record.Applied;
import boardside.app.record.Ladder;
import boardside.app.record.Records;
import boardside.app.transfer.LogFiles;
import boardside.engine.odds.Climb;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Game;
import boardside.engine.rules.Side;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Drills thrown at random, illegal rounds and corrections among them: what is kept is legal, and what the summary says is
 * what anybody can count in the log.
 */
class RecountTest {
    private static final List<Drill> DRILLS = List.of(Drill.CLIMB, Drill.DUEL, Drill.GAME, Drill.RACE, Drill.TOTAL);

    @TempDir
    Path folder;

    static LongStream seeds() {
        return LongStream.range(500, 508);
    }

    /** One row of the log. */
    private record Row(
            String run, int round, String side, @Nullable Integer ghost, int in, int on, int off) {
        int points() {
            return 3 * in + on;
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void whatIsKeptIsLegalAndTheSummaryIsARecount(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        try (Records records = Records.open(folder.resolve("store.db").toString());
                Server server = Server.start(records, ServerOptions.local(0), Clock.systemDefaultZone())) {
            int me = records.firstPlayer().id();
            Map<String, Setup> setups = new TreeMap<>();
            Map<String, Drill> drills = new TreeMap<>();
            OffsetDateTime start = OffsetDateTime.parse("2026-05-01T10:00:00Z");
            for (int i = 0; i < 12; i++) {
                Drill drill = DRILLS.get(i % DRILLS.size());
                Setup setup = setup(drill, random);
                String run = "run-" + (char) ('a' + i);
                setups.put(run, setup);
                drills.put(run, drill);
                throwRun(records, me, run, drill, setup, start.plusMinutes(30L * i), random);
            }
            StringBuilder log = new StringBuilder();
            LogFiles.write(records, me, log);
            Map<String, List<Row>> rows = rows(log.toString());
            rows.forEach((run, own) -> {
                Drill drill = java.util.Objects.requireNonNull(drills.get(run));
                Setup setup = java.util.Objects.requireNonNull(setups.get(run));
                legal(drill, setup, own);
                String page = Wire.get(Wire.HERE, server.port(), "/runs/" + run + "/summary")
                        .body();
                assertThat(page).as("seed " + seed + ", " + drill + "\n" + own).contains(headline(drill, setup, own));
                rates(own)
                        .forEach(rate -> assertThat(page)
                                .as("seed " + seed + ", " + drill)
                                .contains(rate));
            });
            ladder(records, me, rows, drills, setups);
            assertThat(records.check()).isEmpty();
        }
    }

    private static Setup setup(Drill drill, UniformRandomProvider random) {
        Contest contest = drill == Drill.DUEL
                ? new Contest(true, true, false, random.nextBoolean(), FirstThrow.SWAP, 0, null)
                : drill == Drill.GAME
                        ? new Contest(false, true, false, true, FirstThrow.KEEP, random.nextInt(11) - 5, null)
                        : null;
        int ghost = random.nextInt(9);
        GhostPlay play = drill.needsGhost() && random.nextBoolean()
                ? new GhostPlay(GhostPlay.Kind.LEVEL, String.valueOf(ghost), List.of(ghost, 0, 6, 4))
                : null;
        Stakes stakes = random.nextInt(4) == 0 ? new Stakes(false, 2, null, null, false) : null;
        return Setup.plain().with(draft -> {
            draft.contest = contest;
            draft.ghost = drill.needsGhost() ? ghost : null;
            draft.ghostPlay = play;
            draft.stakes = drill == Drill.GAME ? null : stakes;
        });
    }

    private static void throwRun(
            Records records,
            int me,
            String run,
            Drill drill,
            Setup setup,
            OffsetDateTime start,
            UniformRandomProvider random) {
        apply(
                records,
                me,
                new Operation.StartRun(
                        records.ids().next(), run, "s", drill, start.toString(), false, "", null, null, setup));
        int refused = 0;
        for (int number = 1; number <= 25; number++) {
            for (Side side : sides(setup)) {
                // In a game, theirs may be missing.
                if (side != Side.VERSUS || random.nextInt(40) > 0) {
                    refused += put(records, me, run, number, side, setup, finish(random)) ? 0 : 1;
                }
            }
            if (random.nextInt(5) == 0) {
                int earlier = 1 + random.nextInt(number);
                put(records, me, run, earlier, sides(setup).get(0), setup, finish(random));
            }
        }
        Side wrong = setup.contest() != null && setup.contest().alone() ? Side.ME : Side.B;
        if (setup.contest() != null) {
            assertThat(put(records, me, run, 1, wrong, setup, finish(random))).isFalse();
        }
        if (drill != Drill.TOTAL && setup.contest() == null) {
            assertThat(refused).as("a race ends before its 25th round").isPositive();
        }
    }

    private static List<Side> sides(Setup setup) {
        return setup.contest() == null ? List.of(Side.ME) : setup.contest().sides();
    }

    private static Finish finish(UniformRandomProvider random) {
        return Finish.values().get(random.nextInt(Finish.values().size()));
    }

    /** Whether it was stored. */
    private static boolean put(Records records, int me, String run, int number, Side side, Setup setup, Finish finish) {
        GhostPlay play = setup.ghostPlay();
        Line line = new Line(
                "",
                null,
                null,
                setup.board(),
                setup.setting(),
                null,
                play == null ? setup.ghost() : (Integer) play.in(number),
                4,
                finish.in(),
                finish.on(),
                finish.off(),
                Line.Misses.NONE,
                "",
                "");
        return apply(
                records,
                me,
                new Operation.PutRound(
                        run, new Round(number, side, records.ids().next(), List.of(line), List.of())));
    }

    private static boolean apply(Records records, int me, Operation operation) {
        return records.apply(me, List.of(operation), Instant.EPOCH).get(0) instanceof Applied.Stored;
    }

    private static Map<String, List<Row>> rows(String log) {
        Map<String, List<Row>> rows = new TreeMap<>();
        String[] lines = log.split("\n");
        List<String> columns = List.of(lines[0].split(",", -1));
        for (int i = 1; i < lines.length; i++) {
            String[] fields = lines[i].split(",", -1);
            String ghost = fields[columns.indexOf("ghost")];
            Row row = new Row(
                    fields[columns.indexOf("run")],
                    Integer.parseInt(fields[columns.indexOf("round")]),
                    fields[columns.indexOf("side")].isEmpty() ? "me" : fields[columns.indexOf("side")],
                    ghost.isEmpty() ? null : Integer.valueOf(ghost),
                    Integer.parseInt(fields[columns.indexOf("in")]),
                    Integer.parseInt(fields[columns.indexOf("on")]),
                    Integer.parseInt(fields[columns.indexOf("off")]));
            rows.computeIfAbsent(row.run(), run -> new ArrayList<>()).add(row);
        }
        return rows;
    }

    private static void legal(Drill drill, Setup setup, List<Row> rows) {
        for (Row row : rows) {
            assertThat(row.in() + row.on() + row.off()).isEqualTo(4);
            assertThat(sides(setup).stream().map(Side::word)).contains(row.side());
            GhostPlay play = setup.ghostPlay();
            assertThat(row.ghost())
                    .isEqualTo(
                            !drill.needsGhost() ? null : play == null ? setup.ghost() : (Integer) play.in(row.round()));
        }
        Recount recount = recount(drill, setup, rows);
        assertThat(rows.stream().mapToInt(Row::round)).allSatisfy(round -> {
            if (recount.end > 0) {
                assertThat(round).isLessThanOrEqualTo(recount.end);
            }
        });
    }

    /** A game counted with nothing but the rules at hand. */
    private static final class Recount {
        private int mine;
        private int theirs;
        private int scored;
        private int end;
        private boolean known = true;
        private Game.Result result = Game.Result.OPEN;
    }

    private static Recount recount(Drill drill, Setup setup, List<Row> rows) {
        Recount game = new Recount();
        Contest contest = setup.contest();
        if (contest != null) {
            game.mine = Math.max(0, contest.headStart());
            game.theirs = Math.max(0, -contest.headStart());
        }
        int last = rows.stream().mapToInt(Row::round).max().orElse(0);
        for (int number = 1; number <= last && game.end == 0; number++) {
            Integer my = points(rows, number, contest != null && contest.alone() ? "a" : "me");
            Integer their = drill.needsGhost()
                    ? ghost(rows, number)
                    : points(rows, number, contest != null && contest.alone() ? "b" : "versus");
            if (my == null && their == null) {
                continue;
            }
            if (drill == Drill.GAME && their == null && number < last) {
                game.known = false;
            }
            if (drill != Drill.TOTAL && game.known && my != null && their != null) {
                game.mine += Math.max(0, my - their);
                game.theirs += Math.max(0, their - my);
                game.scored++;
            }
            if (game.mine >= 21 || game.theirs >= 21) {
                game.result = game.mine >= 21 ? Game.Result.WON : Game.Result.LOST;
                game.end = number;
            } else if (setup.stakes() != null && my != null && my < 2) {
                game.result = Game.Result.LOST;
                game.end = number;
            } else if (setup.stakes() != null && drill == Drill.DUEL && their != null && their < 2) {
                game.result = Game.Result.WON;
                game.end = number;
            }
        }
        return game;
    }

    private static @Nullable Integer points(List<Row> rows, int number, String side) {
        return rows.stream()
                .filter(row -> row.round() == number && row.side().equals(side))
                .map(Row::points)
                .findFirst()
                .orElse(null);
    }

    private static @Nullable Integer ghost(List<Row> rows, int number) {
        return rows.stream()
                .filter(row -> row.round() == number)
                .map(Row::ghost)
                .findFirst()
                .orElse(null);
    }

    private static String headline(Drill drill, Setup setup, List<Row> rows) {
        Recount game = recount(drill, setup, rows);
        if (drill == Drill.TOTAL) {
            return rows.stream().mapToInt(Row::points).sum() + " points in " + rows.size() + " rounds";
        }
        String score = game.mine + "\u2013" + game.theirs;
        if (drill.needsGhost()) {
            return switch (game.result) {
                case WON -> "won " + score + " in " + game.scored + " rounds";
                case LOST -> score + " after " + game.scored + " rounds";
                case OPEN -> score + " so far";
            };
        }
        if (game.result == Game.Result.OPEN) {
            long mine =
                    rows.stream().filter(row -> !row.side().equals("versus")).count();
            return game.known ? score + " so far" : mine + " rounds, score not known";
        }
        boolean won = game.result == Game.Result.WON;
        if (drill == Drill.GAME) {
            return (won ? "won " : "lost ") + score;
        }
        return (won ? "side a" : "side b") + " won " + Math.max(game.mine, game.theirs) + "\u2013"
                + Math.min(game.mine, game.theirs);
    }

    /** Points a round of each side, as the page writes them. */
    private static List<String> rates(List<Row> rows) {
        TreeMap<String, List<Row>> sides = new TreeMap<>();
        rows.forEach(row ->
                sides.computeIfAbsent(row.side(), side -> new ArrayList<>()).add(row));
        return sides.values().stream()
                .map(own -> String.format(
                        java.util.Locale.ROOT,
                        "%.1f points a round",
                        own.stream().mapToInt(Row::points).average().orElseThrow()))
                .toList();
    }

    private static void ladder(
            Records records,
            int me,
            Map<String, List<Row>> rows,
            Map<String, Drill> drills,
            Map<String, Setup> setups) {
        List<String> climbs = drills.keySet().stream()
                .filter(run -> drills.get(run) == Drill.CLIMB && rows.containsKey(run))
                .toList();
        int next = -1;
        for (String run : climbs) {
            Setup setup = java.util.Objects.requireNonNull(setups.get(run));
            Game.Result result = recount(Drill.CLIMB, setup, java.util.Objects.requireNonNull(rows.get(run))).result;
            if (result != Game.Result.OPEN) {
                next = Climb.next(java.util.Objects.requireNonNull(setup.ghost()), result == Game.Result.WON);
            }
        }
        assertThat(Ladder.of(records, me).next().orElse(-1)).isEqualTo(next);
    }
}
