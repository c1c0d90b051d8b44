package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.BagSet;
import boardside.app.practice.Contest;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.transfer.LogFiles;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Duels of one approach against the other, counted from the records. */
@ParameterizedClass
@EnumSource
class PlaybooksTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");
    private static final String HEADER =
            "session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,in,on,off";

    private final Stores kind;
    private final StringBuilder log = new StringBuilder(HEADER).append('\n');

    @TempDir
    Path folder;

    private Records records;
    private Player me;

    PlaybooksTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        records = Stores.open(kind.location(folder), 1);
        me = records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT);
    }

    @AfterEach
    void close() {
        records.close();
    }

    /** Seven rounds of three points more for the first side, or the second: 21 to nil. */
    private void duel(String run, String first, String second, boolean firstWins, int rounds) {
        for (int round = 1; round <= rounds; round++) {
            row(run, round, "a", first, firstWins ? "2,1,1" : "1,1,2");
            row(run, round, "b", second, firstWins ? "1,1,2" : "2,1,1");
        }
    }

    private void row(String run, int round, String side, String way, String counts) {
        log.append("s,%s,2026-05-30T18:00:00Z,duel,%d,%s,%s,regulation,practice,,%s%n"
                .formatted(run, round, side, way, counts)
                .replace("\r", ""));
    }

    private void imported() {
        LogFiles.read(
                records,
                me.id(),
                List.of(new LogFiles.Source("log", log.toString().getBytes(StandardCharsets.UTF_8))),
                LogFiles.Progress.NONE);
    }

    private Throws.Key key(String bag, @Nullable Face face) {
        return new Throws.Key(
                records.bags(me.id()).stream()
                        .filter(set -> set.name().equals(bag))
                        .findFirst()
                        .map(BagSet::id)
                        .orElse(""),
                face);
    }

    @Test
    void countsDuelsOfTheTwoApproachesWithTheSameFaceOfABagSet() {
        duel("d1", "Blue,slow,conservative", "Blue,slow,aggressive", true, 7);
        duel("d2", "Blue,slow,aggressive", "Blue,slow,conservative", true, 7);
        duel("d3", "Blue,slow,conservative", "Blue,slow,aggressive", false, 7);
        duel("d4", "Blue,fast,conservative", "Blue,fast,aggressive", true, 7);
        duel("d5", "Red,,conservative", "Red,,aggressive", false, 7);
        // None of these is a test of the approach with one face of one bag set.
        duel("x1", "Blue,slow,conservative", "Red,slow,aggressive", true, 7);
        duel("x2", "Blue,slow,conservative", "Blue,fast,aggressive", true, 7);
        duel("x3", "Blue,slow,conservative", "Blue,slow,conservative", true, 7);
        duel("x4", "Blue,slow,conservative", "Blue,slow,", true, 7);
        // Not finished.
        duel("x5", "Blue,slow,conservative", "Blue,slow,aggressive", true, 6);
        // Changed on the way.
        duel("x6", "Blue,slow,conservative", "Blue,slow,aggressive", true, 6);
        row("x6", 7, "a", "Blue,slow,conservative", "2,1,1");
        row("x6", 7, "b", "Blue,fast,aggressive", "1,1,2");
        imported();
        Map<Throws.Key, int[]> duels = Playbooks.duels(records, me.id());
        assertThat(duels).hasSize(3);
        assertThat(duels.get(key("Blue", Face.SLOW))).containsExactly(1, 2);
        assertThat(duels.get(key("Blue", Face.FAST))).containsExactly(1, 0);
        assertThat(duels.get(key("Red", null))).containsExactly(0, 1);
    }

    @Test
    void aHeadStartOrADeletedRunDoesNotCount() {
        recorded("even", 0);
        recorded("head-start", 5);
        recorded("deleted", 0);
        records.deleteRun(me.id(), "deleted", NOW);
        Map<Throws.Key, int[]> duels = Playbooks.duels(records, me.id());
        assertThat(duels).hasSize(1);
        assertThat(duels.get(new Throws.Key("", null))).containsExactly(1, 0);
    }

    /** Recorded at the boards: conservative against aggressive, seven rounds to the first. */
    private void recorded(String run, int headStart) {
        Contest.Way other = new Contest.Way("", null, Approach.AGGRESSIVE);
        Contest contest = new Contest(true, true, false, true, FirstThrow.KEEP, headStart, other);
        Setup setup = Setup.plain().with(draft -> {
            draft.approach = Approach.CONSERVATIVE;
            draft.target = 21;
            draft.contest = contest;
        });
        List<Operation> operations = new ArrayList<>();
        operations.add(new Operation.StartRun(
                records.ids().next(), run, "s", Drill.DUEL, "2026-05-31T18:00:00Z", false, "", 21, null, setup));
        for (int round = 1; round <= 7 - headStart / 3; round++) {
            operations.add(put(run, round, Side.A, Approach.CONSERVATIVE, 2));
            operations.add(put(run, round, Side.B, Approach.AGGRESSIVE, 1));
        }
        records.applyAll(me.id(), operations, NOW);
    }

    private Operation put(String run, int round, Side side, Approach approach, int in) {
        Line line = new Line(
                "",
                null,
                approach,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                4,
                in,
                1,
                3 - in,
                Line.Misses.NONE,
                "",
                "");
        return new Operation.PutRound(run, new Round(round, side, records.ids().next(), List.of(line), List.of()));
    }
}
