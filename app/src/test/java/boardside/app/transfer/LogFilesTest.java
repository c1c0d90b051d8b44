package boardside.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.record.Records;
import boardside.app.record.RunEdit;
import boardside.app.record.Stores;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@ParameterizedClass
@EnumSource
class LogFilesTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");

    private static final String HEADER =
            "session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,in,on,off\n";
    private static final String ROW =
            "s,r,2026-05-01T10:00:00+02:00,total,1,me,Blue,slow,,regulation,practice,,3,1,0\n";

    private final Stores kind;

    @TempDir
    Path folder;

    private Records records;
    private int me;

    LogFilesTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        records = Stores.open(kind.location(folder), 1);
        me = records.firstPlayer().id();
    }

    @AfterEach
    void close() {
        records.close();
    }

    private LogFiles.Imported read(String... logs) {
        List<LogFiles.Source> sources = new java.util.ArrayList<>();
        for (String log : logs) {
            sources.add(
                    new LogFiles.Source((char) ('a' + sources.size()) + ".csv", log.getBytes(StandardCharsets.UTF_8)));
        }
        return LogFiles.read(records, me, sources, LogFiles.Progress.NONE);
    }

    private String written() {
        StringBuilder out = new StringBuilder();
        LogFiles.write(records, me, out);
        return out.toString();
    }

    private void refused(String log, String... faults) {
        String before = written();
        long version = records.player(me).version();
        assertThatThrownBy(() -> read(log))
                .isInstanceOfSatisfying(
                        Failure.BadInput.class,
                        failure -> assertThat(failure.faults()).containsExactly(faults));
        assertThat(written()).isEqualTo(before);
        assertThat(records.player(me).version()).isEqualTo(version);
    }

    private static Line line(String bag, int in, int on, int off) {
        return new Line(
                bag,
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                in + on + off,
                in,
                on,
                off,
                Line.Misses.NONE,
                "",
                "");
    }

    @Test
    void readsWhatItWrites() {
        LogFiles.Imported imported = read(HEADER + ROW);
        assertThat(imported.rows()).isEqualTo(1);
        assertThat(imported.stored().runs()).isEqualTo(1);
        assertThat(imported.stored().bags()).containsExactly("Blue");
        assertThat(written()).isEqualTo(HEADER + ROW);
        Run run = records.lastRun(me, null).orElseThrow();
        assertThat(run.sum()).isEqualTo(new Run.Sum(1, 4, 3, 10));
        assertThat(run.finishedAt()).isEqualTo("2026-05-01T10:00:00+02:00");
        assertThat(records.bags(me)).extracting(BagSet::name).containsExactly("Blue");
        assertThat(records.check()).isEmpty();
    }

    @Test
    void blanksHaveDefaultsAndColumnsAnyOrder() {
        read("\uFEFFon,in,off,round,run,session,started_at,drill,side,bag,face,approach,board,setting,ghost\r\n"
                + "1,3,0,1,r,s,2026-05-01T10:00:00+02:00,,,,,,,,\r\n");
        assertThat(written())
                .isEqualTo(HEADER + "s,r,2026-05-01T10:00:00+02:00,total,1,me,,,,regulation,practice,,3,1,0\n");
    }

    @Test
    void everyColumnComesBackAsGiven() {
        String log = "session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,in,on,off,thrown,"
                + "conditions,opponent,target,game,trial,warm_up,at,miss_left,miss_right,miss_short,miss_long,note\n"
                + "\"a,b\",\"r \"\"1\"\"\",2026-05-01T10:00:00.5+02:00,fixture,1,me,\"Blå, \"\"old\"\"\",slow,aggressive,narrow,"
                + "league,,3,0,1,,fast,Kim,21,2,t1,yes,2026-05-01T10:01Z,0,1,0,0,\"two\nlines\"\n"
                + "\"a,b\",\"r \"\"1\"\"\",2026-05-01T10:00:00.5+02:00,fixture,1,versus,,,,narrow,tournament,,4,0,0,,,Kim,21,2,"
                + "t1,yes,,,,,,\n"
                + "v,v,2026-05-02T10:00:00Z,volume,1,me,,,,regulation,practice,,13,,,20,,,,,,,,,,,,\n"
                + "c,c,2026-05-03T10:00:00Z,casual,1,me,,,,regulation,practice,,,,,100,,,,,,,,,,,,\n";
        read(log);
        assertThat(written()).isEqualTo(log);
    }

    @Test
    void writesInOrder() {
        String a = "s,r,2026-05-01T10:00:00+02:00,duel,";
        String tail = ",slow,,regulation,practice,,1,0,0\n";
        String noFace = ",,,regulation,practice,,1,0,0\n";
        List<String> rows = List.of(
                // 09:00 in New York is after 10:00 in Berlin.
                a + "2,a,Blue" + noFace,
                a + "2,a,Blue" + tail,
                a + "2,a,Red" + tail,
                a + "2,b,Blue" + tail,
                a + "10,a,Blue" + tail,
                "s,q,2026-05-01T09:00:00-04:00,duel,1,a,Blue" + tail,
                "s,r2,2026-05-01T09:00:00-04:00,duel,1,a,Blue" + tail);
        List<String> mixed = new java.util.ArrayList<>(rows);
        java.util.Collections.shuffle(mixed, new java.util.Random(4));
        read(HEADER + String.join("", mixed));
        assertThat(written()).isEqualTo(HEADER + String.join("", rows));
    }

    @Test
    void sameFileTwiceStoresNothingTwice() {
        read(HEADER + ROW);
        long version = records.player(me).version();
        LogFiles.Imported again = read(HEADER + ROW, HEADER + ROW + ROW);
        assertThat(again.stored().runs()).isZero();
        assertThat(again.stored().rounds()).isZero();
        assertThat(again.stored().known()).isEqualTo(1);
        assertThat(records.player(me).version()).isEqualTo(version);
        assertThat(written()).isEqualTo(HEADER + ROW);
    }

    @Test
    void laterFileMayGoOnWithARun() {
        read(HEADER + ROW.replace("3,1,0\n", "1,1,0\n"));
        LogFiles.Imported more = read(HEADER
                + ROW.replace("total,1", "total,2")
                + ROW.replace("slow,,reg", "fast,,reg").replace("3,1,0\n", "2,0,0\n"));
        assertThat(more.stored().rounds()).isEqualTo(2);
        assertThat(records.lastRun(me, null).orElseThrow().sum()).isEqualTo(new Run.Sum(2, 8, 6, 20));
        assertThat(records.check()).isEmpty();
    }

    @Test
    void correctionInTheStoreWinsAndIsTold() {
        read(HEADER + ROW);
        String bag = records.bags(me).get(0).id();
        records.apply(
                me,
                List.of(new Operation.PutRound(
                        "r", new Round(1, Side.ME, "1", List.of(line(bag, 1, 1, 2)), List.of()))),
                NOW);
        records.editRun(me, "r", new RunEdit("", "Kim", false, null));
        String corrected = written();
        LogFiles.Imported again = read((HEADER + ROW + ROW.replace("total,1", "total,2"))
                .replace(",off", ",off,opponent")
                .replace("3,1,0\n", "3,1,0,Lou\n"));
        assertThat(again.stored().kept())
                .containsExactly(
                        "run r: opponent as edited in the store, not \"Lou\"",
                        "run r, round 1: as corrected in the store");
        assertThat(again.stored().rounds()).isEqualTo(1);
        assertThat(written()).startsWith(corrected).hasLineCount(3);
        records.apply(me, List.of(new Operation.PutRound("r", new Round(2, Side.ME, "2", List.of(), List.of()))), NOW);
        assertThat(read(HEADER + ROW.replace("total,1", "total,2")).stored().kept())
                .containsExactly("run r, round 2: as taken back in the store");
        assertThat(written()).isEqualTo(corrected);
    }

    @Test
    void deletedRunStaysDeletedAndIsTold() {
        read(HEADER + ROW);
        records.deleteRun(me, "r", NOW);
        LogFiles.Imported again = read(HEADER + ROW + ROW.replace("s,r,", "s,q,"));
        assertThat(again.stored().deleted()).containsExactly("r");
        assertThat(written()).isEqualTo(HEADER + ROW.replace("s,r,", "s,q,"));
    }

    @Test
    void disagreementWithTheStoreIsRefused() {
        read(HEADER + ROW);
        refused(
                HEADER + ROW.replace("3,1,0\n", "2,2,0\n"),
                "a.csv, line 2, column in: 2 in, 2 on, 0 off, but the store has 3 in, 1 on, 0 off for this run, round,"
                        + " side, bag and face; make them the same");
        refused(
                HEADER + ROW.replace("slow,,", "slow,aggressive,"),
                "a.csv, line 2, column approach: \"aggressive\", but the store has \"\" for this run, round, side, bag and"
                        + " face; make them the same");
        refused(
                HEADER + ROW.replace("10:00", "11:00"),
                "a.csv, line 2, column started_at: \"2026-05-01T11:00:00+02:00\", but the store has"
                        + " \"2026-05-01T10:00:00+02:00\" for this run; make them the same");
        refused(
                HEADER
                        + ROW.replace("s,r,2", "z,r,2")
                        + ROW.replace("total,1", "total,2").replace("s,r,2", "z,r,2"),
                "a.csv, line 2, column session: \"z\", but the store has \"s\" for this run; make them the same");
        refused(
                HEADER + ROW.replace("Blue", "Red"),
                "a.csv, line 2, column round: with what the store has, the round would have 8 bags of one side; a round"
                        + " of total has at most 4");
    }

    @Test
    void firstTwentyFaultsAreToldAndTheRestCounted() {
        StringBuilder log = new StringBuilder(HEADER);
        for (int i = 0; i < 30; i++) {
            log.append(ROW.replace("total", "totl"));
        }
        assertThatThrownBy(() -> read(log.toString())).isInstanceOfSatisfying(Failure.BadInput.class, failure -> {
            assertThat(failure.faults()).hasSize(21);
            assertThat(failure.faults().get(19)).startsWith("a.csv, line 21, column 4 (drill): \"totl\"");
            assertThat(failure.faults().get(20)).isEqualTo("and 10 more faults; nothing was stored");
        });
    }

    @Test
    void faultInOneFileStoresNothingOfTheOther() {
        assertThatThrownBy(() -> read(HEADER + ROW, HEADER + ROW.replace("3,1,0\n", "3,1,1\n")))
                .isInstanceOfSatisfying(
                        Failure.BadInput.class,
                        failure -> assertThat(failure.faults())
                                .containsExactly(
                                        "b.csv, line 2, column 13 (in): 5 bags of one side in a round; a round of"
                                                + " total has at most 4"));
        assertThat(written()).isEqualTo(HEADER);
    }

    /** Faults that a row can have, each told by line and column: what is replaced in a sound row, by what, and the fault. */
    @Nested
    class Refused {
        @ParameterizedTest
        @ValueSource(
                strings = {
                    "s,r, > ,r, > column 1 (session): blank; give any text that names the session",
                    "s,r, > s, , > column 2 (run): blank; give any text that names the run",
                    "2026-05-01T10:00:00+02:00 > 2026-05-01T10:00:00 > column 3 (started_at): \"2026-05-01T10:00:00\" is no"
                            + " date and time with an offset; write it like 2026-05-31T18:30:00+02:00 or"
                            + " 2026-05-31T16:30:00Z",
                    "2026-05-01T10:00:00+02:00 > 2026-02-30T10:00:00Z > column 3 (started_at): \"2026-02-30T10:00:00Z\" is no"
                            + " date and time with an offset; write it like 2026-05-31T18:30:00+02:00 or"
                            + " 2026-05-31T16:30:00Z",
                    "2026-05-01T10:00:00+02:00 >  > column 3 (started_at): \"\" is no date and time with an offset; write it"
                            + " like 2026-05-31T18:30:00+02:00 or 2026-05-31T16:30:00Z",
                    "total > totals > column 4 (drill): \"totals\" is none of volume, total, race, game, climb, duel,"
                            + " placement, situation, trial, fixture, casual; use one of these",
                    ",1,me > ,0,me > column 5 (round): \"0\"; rounds are numbered from 1, a whole number",
                    ",1,me > ,one,me > column 5 (round): \"one\"; rounds are numbered from 1, a whole number",
                    ",1,me > ,,me > column 5 (round): blank; give the round's number, from 1",
                    "me > you > column 6 (side): \"you\" is none of me, a, b, versus; use one of these",
                    "slow > rough > column 8 (face): \"rough\" is none of slow, fast; use one of these",
                    "slow, > slow,bold > column 9 (approach): \"bold\" is none of conservative, aggressive; use one of these",
                    "regulation > wide > column 10 (board): \"wide\" is none of regulation, narrow; use one of these",
                    "practice > fun > column 11 (setting): \"fun\" is none of practice, league, tournament; use one of these",
                    ",,3,1,0 > ,13,3,1,0 > column 12 (ghost): \"13\"; a ghost scores 0 to 12 a round, a whole number",
                    ",,3,1,0 > ,6.5,3,1,0 > column 12 (ghost): \"6.5\"; a ghost scores 0 to 12 a round, a whole number",
                    "total > race > column 12 (ghost): blank; a race needs the ghost's points a round, 0 to 12",
                    "total > climb > column 12 (ghost): blank; a climb needs the ghost's points a round, 0 to 12",
                    "3,1,0 > -1,1,0 > column 13 (in): \"-1\"; a count of bags is 0 to 100, a whole number",
                    "3,1,0 > 3,1.0,0 > column 14 (on): \"1.0\"; a count of bags is 0 to 100, a whole number",
                    "3,1,0 > 3,1,none > column 15 (off): \"none\"; a count of bags is 0 to 100, a whole number",
                    "3,1,0 > 3,1,99999999999 > column 15 (off): \"99999999999\"; a count of bags is 0 to 100, a whole number",
                    "3,1,0 > 3,2,0 > column 13 (in): 5 bags of one side in a round; a round of total has at most 4",
                    "3,1,0 > 3,,0 > column 14 (on): blank; give both on and off, or neither and thrown",
                    "3,1,0 > 3,1, > column 15 (off): blank; give both on and off, or neither and thrown",
                    "3,1,0 > 3,, > column 14 (on): blank; give in, on and off, or thrown where only the bags in were counted",
                    "3,1,0 > ,1,0 > column 13 (in): blank; only casual throws need not be counted",
                    "3,1,0 > 3,1 > column 14: 14 fields, but the header names 15 columns; a field that holds a comma or a"
                            + " line's end stands in quotes",
                    "3,1,0 > 3,1,0,0 > column 16: 16 fields, but the header names 15 columns; a field that holds a comma or"
                            + " a line's end stands in quotes",
                    "Blue > \"Blue > column 7: the quote that opens here is never closed; add the closing one",
                    "Blue > Bl\"ue > column 7: a quote stands inside a field that does not begin with one; put the whole"
                            + " field in quotes and double those within",
                    "Blue > \"Bl\"ue > column 7: text follows the closing quote; double quotes that belong to the field",
                })
        void row(String fault) {
            String[] parts = fault.split(" > ", -1);
            refused(HEADER + ROW + ROW.replace(parts[0], parts[1]), "a.csv, line 3, " + parts[2]);
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "thrown > 5 > column 16 (thrown): 5, but in, on and off add up to 4",
                    "thrown > four > column 16 (thrown): \"four\"; a count of bags is 0 to 100, a whole number",
                    "conditions > wet > column 16 (conditions): \"wet\" is none of slow, normal, fast; use one of these",
                    "target > 0 > column 16 (target): \"0\"; 1 to 999 points to reach, a whole number",
                    "game > 0 > column 16 (game): \"0\"; games are numbered from 1, a whole number",
                    "warm_up > maybe > column 16 (warm_up): \"maybe\" is neither yes nor blank",
                    "at > noon > column 16 (at): \"noon\" is no date and time with an offset; write it like"
                            + " 2026-05-31T18:30:00+02:00 or 2026-05-31T16:30:00Z",
                    "miss_left > -1 > column 16 (miss_left): \"-1\"; a count of bags is 0 to 100, a whole number",
                })
        void columnWhenUsed(String fault) {
            String[] parts = fault.split(" > ", -1);
            String log = HEADER.strip() + "," + parts[0] + "\n" + ROW.strip() + "," + parts[1] + "\n";
            refused(log, "a.csv, line 2, " + parts[2]);
        }

        @Test
        void headerThatIsNotTheLogs() {
            refused("", "a.csv: the file is empty; the first line names the columns " + HEADER.strip());
            refused(
                    HEADER.replace("bag", "bags") + ROW,
                    "a.csv, line 1, column 7: \"bags\" is no column of the log; those are "
                            + String.join(",", LogColumns.ALL),
                    "a.csv, line 1, column bag: this column is missing; add it, blank where nothing is to be said");
            refused(
                    HEADER.replace("off", "off,off"),
                    "a.csv, line 1, column 16: \"off\" is given twice; leave one out");
        }

        @Test
        void whatIsNotText() {
            assertThatThrownBy(() -> LogFiles.read(
                            records,
                            me,
                            List.of(new LogFiles.Source(
                                    "x.csv", (HEADER + "s,r\u00e9").getBytes(StandardCharsets.ISO_8859_1))),
                            LogFiles.Progress.NONE))
                    .hasMessage("x.csv, line 2, column 2: not text: byte e9 cannot stand here; save the file as CSV in"
                            + " UTF-8");
            refused(
                    HEADER + "s,r\0",
                    "a.csv, line 2, column 2: not text: byte 00 cannot stand here; save the file as CSV in UTF-8");
        }

        @Test
        void tooManyBagsInAllLinesOfARound() {
            refused(
                    HEADER + ROW + ROW.replace("Blue", "Red").replace("3,1,0\n", "0,0,1\n"),
                    "a.csv, line 3, column 13 (in): 5 bags of one side in round 1; a round of total has at most 4");
            String volume = ROW.replace("total", "volume");
            refused(
                    HEADER
                            + volume.replace("3,1,0\n", "50,50,0\n")
                            + volume.replace("Blue", "Red").replace("3,1,0\n", "0,0,1\n"),
                    "a.csv, line 3, column 13 (in): 101 bags of one side in round 1; a round of volume has at most 100");
        }

        @Test
        void keyGivenTwiceWithDifferentCounts() {
            refused(
                    HEADER + ROW + ROW.replace("3,1,0\n", "1,3,0\n"),
                    "a.csv, line 3, column 13 (in): 1 in, 3 on, 0 off, but line 2 has 3 in, 1 on, 0 off for the same run,"
                            + " round, side, bag and face; leave one out");
        }

        @Test
        void runWithTwoStartsOrSessionsOrDrills() {
            refused(
                    HEADER + ROW + ROW.replace("total,1", "total,2").replace("10:00", "10:01"),
                    "a.csv, line 3, column 3 (started_at): \"2026-05-01T10:01:00+02:00\", but line 2 has"
                            + " \"2026-05-01T10:00:00+02:00\" for the same run; a run has one");
            refused(
                    HEADER + ROW + ROW.replace("total,1", "duel,2").replace("s,r,2", "z,r,2"),
                    "a.csv, line 3, column 4 (drill): \"duel\", but line 2 has \"total\" for the same run; a run has one",
                    "a.csv, line 3, column 1 (session): \"z\", but line 2 has \"s\" for the same run; a run has one");
        }
    }
}
