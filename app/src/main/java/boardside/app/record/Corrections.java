package boardside.app.record;

import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Change;
import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.Ids;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.League;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Session;
import boardside.app.practice.SlideTest;
import boardside.app.practice.TrialPlan;
import boardside.app.practice.Try;
import boardside.app.store.HistoryRows;
import boardside.app.store.Transaction;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Keeps what corrections and deletions replace, and brings it back. Every change is kept as the thing before and after. */
final class Corrections {
    private final Ids ids;

    Corrections(Ids ids) {
        this.ids = ids;
    }

    /** New ids for what is kept. */
    Ids ids() {
        return ids;
    }

    /** Whether a run is deleted, as kept in the history. */
    private record Deletion(boolean deleted) {}

    private String keep(
            Transaction rows, int player, Change.Kind kind, String subject, Object earlier, Object later, String now) {
        String id = ids.next();
        rows.history()
                .add(
                        player,
                        new HistoryRows.Entry(id, now, kind, subject, Json.write(earlier), Json.write(later), null));
        return id;
    }

    void keepRound(Transaction rows, int player, String run, Round earlier, Round later, String now) {
        keep(rows, player, Change.Kind.ROUND, run, earlier, later, now);
    }

    void keepTry(Transaction rows, int player, String run, Try earlier, Try later, String now) {
        keep(rows, player, Change.Kind.TRY, run, earlier, later, now);
    }

    void keepSituation(Transaction rows, int player, KeptSituation earlier, KeptSituation later, String now) {
        keep(rows, player, Change.Kind.SITUATION, later.id(), earlier, later, now);
    }

    void keepSlideTest(Transaction rows, int player, SlideTest earlier, SlideTest later, String now) {
        keep(rows, player, Change.Kind.SLIDE_TEST, later.id(), earlier, later, now);
    }

    void keepBag(Transaction rows, int player, BagSet earlier, BagSet later, String now) {
        keep(rows, player, Change.Kind.BAG, later.id(), earlier, later, now);
    }

    void keepBoard(Transaction rows, int player, Board earlier, Board later, String now) {
        keep(rows, player, Change.Kind.BOARD, later.id(), earlier, later, now);
    }

    void keepLeague(Transaction rows, int player, League earlier, League later, String now) {
        keep(rows, player, Change.Kind.LEAGUE, later.id(), earlier, later, now);
    }

    /** Writes a trial and keeps what it was. */
    void putTrial(Transaction rows, int player, TrialPlan earlier, TrialPlan later, String now) {
        rows.trials().put(player, later);
        keep(rows, player, Change.Kind.TRIAL, later.id(), earlier, later, now);
    }

    /** Writes fixtures of a league and keeps what they were as one change; nothing happens without any. */
    void putFixtures(
            Transaction rows, int player, String league, List<Fixture> earlier, List<Fixture> later, String now) {
        if (later.isEmpty()) {
            return;
        }
        later.forEach(fixture -> rows.leagues().put(player, fixture));
        keep(rows, player, Change.Kind.FIXTURES, league, earlier, later, now);
    }

    /** Whether there was anything to change. */
    boolean editRun(Transaction rows, int player, Run run, RunEdit edit, String now) {
        RunEdit before = RunEdit.of(run);
        if (before.equals(edit)) {
            return false;
        }
        keep(rows, player, Change.Kind.RUN, run.id(), before, edit, now);
        rows.runs().edit(player, run.id(), edit.note(), edit.opponent(), edit.warmUp(), edit.score());
        return true;
    }

    /** Whether there was anything to change. */
    boolean editSession(Transaction rows, int player, Session session, String note, String now) {
        if (session.note().equals(note)) {
            return false;
        }
        Session later = new Session(session.id(), session.startedAt(), session.day(), note);
        keep(rows, player, Change.Kind.SESSION, session.id(), session, later, now);
        rows.runs().note(player, session.id(), note);
        return true;
    }

    String deleteRun(Transaction rows, int player, Run run, String now) {
        rows.runs().delete(player, run.id(), now);
        return keep(rows, player, Change.Kind.RUN_DELETED, run.id(), new Deletion(false), new Deletion(true), now);
    }

    void undo(Transaction rows, int player, String id, String now) {
        HistoryRows.Entry entry =
                rows.history().find(player, id).orElseThrow(() -> new Failure.NotFound("there is no change " + id));
        if (entry.undone()) {
            rows.rollBack();
            return;
        }
        String subject = entry.subject();
        switch (entry.kind()) {
            case ROUND -> undoRound(rows, player, subject, Json.read(entry.earlier(), Round.class), now);
            case TRY -> undoTry(rows, player, subject, Json.read(entry.earlier(), Try.class), now);
            case SITUATION -> {
                KeptSituation before = rows.situations().find(player, subject).orElseThrow();
                KeptSituation earlier = Json.read(entry.earlier(), KeptSituation.class);
                KeptSituation after = new KeptSituation(
                        subject, ids.nextAfter(before.op()), earlier.name(), earlier.position(), earlier.retired());
                keepSituation(rows, player, before, after, now);
                rows.situations().put(player, after);
            }
            case SLIDE_TEST -> {
                SlideTest before = rows.slideTests().find(player, subject).orElseThrow();
                SlideTest.Tapped tapped =
                        Json.read(entry.earlier(), SlideTest.class).tapped();
                new SlideTestRecording(rows, player, this, now)
                        .put(new SlideTest(subject, ids.nextAfter(before.op()), tapped));
            }
            case RUN -> {
                Run run = rows.runs().find(player, subject).orElseThrow();
                editRun(rows, player, run, Json.read(entry.earlier(), RunEdit.class), now);
            }
            case RUN_DELETED -> {
                boolean deleted = Json.read(entry.earlier(), Deletion.class).deleted();
                rows.runs().delete(player, subject, deleted ? now : null);
                keep(
                        rows,
                        player,
                        Change.Kind.RUN_DELETED,
                        subject,
                        new Deletion(!deleted),
                        new Deletion(deleted),
                        now);
            }
            case SESSION ->
                editSession(
                        rows,
                        player,
                        rows.runs().session(player, subject).orElseThrow(),
                        Json.read(entry.earlier(), Session.class).note(),
                        now);
            case BAG -> {
                BagSet before = rows.players().bag(player, subject).orElseThrow();
                BagSet after = Json.read(entry.earlier(), BagSet.class);
                if (rows.players().bags(player).stream()
                        .anyMatch(other ->
                                other.name().equals(after.name()) && !other.id().equals(after.id()))) {
                    throw new Failure.BadInput("the name \"" + after.name()
                            + "\" has been given to another bag set; rename that one first");
                }
                keepBag(rows, player, before, after, now);
                rows.players().put(player, after);
            }
            case BOARD -> {
                Board before = rows.players().board(player, subject).orElseThrow();
                Board after = Json.read(entry.earlier(), Board.class);
                if (rows.players().boards(player).stream()
                        .anyMatch(other ->
                                other.name().equals(after.name()) && !other.id().equals(after.id()))) {
                    throw new Failure.BadInput(
                            "the name \"" + after.name() + "\" has been given to another board; rename that one first");
                }
                keepBoard(rows, player, before, after, now);
                rows.players().put(player, after);
            }
            case LEAGUE -> {
                League before = rows.leagues().find(player, subject).orElseThrow();
                League after = Json.read(entry.earlier(), League.class);
                keepLeague(rows, player, before, after, now);
                rows.leagues().put(player, after);
            }
            case TRIAL ->
                putTrial(
                        rows,
                        player,
                        rows.trials().find(player, subject).orElseThrow(),
                        Json.read(entry.earlier(), TrialPlan.class),
                        now);
            case FIXTURES -> {
                List<Fixture> after = fixtures(entry.earlier());
                List<Fixture> before = after.stream()
                        .map(fixture ->
                                rows.leagues().fixture(player, fixture.id()).orElseThrow())
                        .toList();
                putFixtures(rows, player, subject, before, after, now);
            }
        }
        rows.history().undone(player, id, now);
    }

    private void undoRound(Transaction rows, int player, String run, Round earlier, String now) {
        String newest = rows.rounds()
                .find(player, run, earlier.number(), earlier.side())
                .map(stored -> stored.round().op())
                .orElse("");
        Recording recording = new Recording(rows, player, this, now);
        try {
            recording.putRound(
                    run,
                    new Round(
                            earlier.number(),
                            earlier.side(),
                            ids.nextAfter(newest),
                            earlier.lines(),
                            earlier.thrown()));
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput(String.valueOf(e.getMessage()));
        }
        recording.refresh();
    }

    private void undoTry(Transaction rows, int player, String runId, Try earlier, String now) {
        String newest =
                rows.tries().find(player, runId, earlier.number()).map(Try::op).orElse("");
        Run run = rows.runs()
                .find(player, runId)
                .filter(found -> !found.deleted())
                .orElseThrow(() -> new Failure.BadInput("the run was deleted; bring it back first"));
        new TryRecording(rows, player, this, now)
                .put(run, new Try(earlier.number(), ids.nextAfter(newest), earlier.played()));
    }

    /** A history entry in plain words. */
    static Change told(HistoryRows.Entry entry) {
        String says = switch (entry.kind()) {
            case ROUND -> {
                Round earlier = Json.read(entry.earlier(), Round.class);
                Round later = Json.read(entry.later(), Round.class);
                yield "round " + earlier.number() + ": before " + told(earlier) + ", after " + told(later);
            }
            case TRY -> {
                Try earlier = Json.read(entry.earlier(), Try.class);
                yield "try " + earlier.number() + ": before " + told(earlier) + ", after "
                        + told(Json.read(entry.later(), Try.class));
            }
            case SITUATION ->
                told(Json.read(entry.earlier(), KeptSituation.class), Json.read(entry.later(), KeptSituation.class));
            case SLIDE_TEST ->
                told(Json.read(entry.earlier(), SlideTest.class), Json.read(entry.later(), SlideTest.class));
            case RUN -> told(Json.read(entry.earlier(), RunEdit.class), Json.read(entry.later(), RunEdit.class));
            case RUN_DELETED -> Json.read(entry.later(), Deletion.class).deleted() ? "deleted" : "brought back";
            case SESSION ->
                "note before: \""
                        + Json.read(entry.earlier(), Session.class).note() + "\", after: \""
                        + Json.read(entry.later(), Session.class).note() + "\"";
            case BAG -> told(Json.read(entry.earlier(), BagSet.class), Json.read(entry.later(), BagSet.class));
            case BOARD -> told(Json.read(entry.earlier(), Board.class), Json.read(entry.later(), Board.class));
            case LEAGUE ->
                LeagueWords.told(Json.read(entry.earlier(), League.class), Json.read(entry.later(), League.class));
            case TRIAL -> told(Json.read(entry.earlier(), TrialPlan.class), Json.read(entry.later(), TrialPlan.class));
            case FIXTURES -> LeagueWords.told(fixtures(entry.earlier()), fixtures(entry.later()));
        };
        boolean ofRun = switch (entry.kind()) {
            case ROUND, TRY, RUN, RUN_DELETED -> true;
            case SESSION, SITUATION, BAG, BOARD, LEAGUE, FIXTURES, TRIAL, SLIDE_TEST -> false;
        };
        return new Change(entry.id(), entry.at(), entry.kind(), ofRun ? entry.subject() : "", says, entry.undone());
    }

    private static List<Fixture> fixtures(String json) {
        return List.of(Json.read(json, Fixture[].class));
    }

    private static String told(Round round) {
        if (round.lines().isEmpty()) {
            return "nothing";
        }
        int in = 0;
        int on = 0;
        boolean counted = true;
        for (Line line : round.lines()) {
            in += line.in() == null ? 0 : line.in();
            on += line.on() == null ? 0 : line.on();
            counted &= line.on() != null;
        }
        return counted
                ? in + " in, " + on + " on, " + (round.bags() - in - on) + " off"
                : in + " in of " + round.bags();
    }

    private static String told(Try tried) {
        Try.Played played = tried.played();
        return played == null ? "nothing" : played.shot().word() + (played.worked() ? " worked" : " did not work");
    }

    private static String told(KeptSituation earlier, KeptSituation later) {
        List<String> parts = new ArrayList<>();
        part(parts, "name", earlier.name(), later.name());
        part(
                parts,
                "bags",
                earlier.position().code(Spot.HALF_WIDTH * 2),
                later.position().code(Spot.HALF_WIDTH * 2));
        if (earlier.retired() != later.retired()) {
            parts.add(later.retired() ? "now put away" : "in use again");
        }
        return String.join("; ", parts);
    }

    private static String told(SlideTest earlier, SlideTest later) {
        if (later.tapped() == null || earlier.tapped() == null) {
            return later.tapped() == null ? "deleted" : "brought back";
        }
        List<String> parts = new ArrayList<>();
        part(
                parts,
                "slides",
                SlideText.of(earlier.tapped().slides()),
                SlideText.of(later.tapped().slides()));
        part(
                parts,
                "conditions",
                word(earlier.tapped().conditions()),
                word(later.tapped().conditions()));
        part(parts, "face", word(earlier.tapped().face()), word(later.tapped().face()));
        if (!earlier.tapped().bag().equals(later.tapped().bag())) {
            parts.add("another bag set");
        }
        return String.join("; ", parts);
    }

    private static @Nullable String word(@Nullable Word word) {
        return word == null ? null : word.word();
    }

    private static String told(TrialPlan earlier, TrialPlan later) {
        if (earlier.deleted() != later.deleted()) {
            return later.deleted() ? "deleted" : "brought back";
        }
        List<String> parts = new ArrayList<>();
        part(parts, "state", earlier.state().word(), later.state().word());
        return String.join("; ", parts);
    }

    private static String told(RunEdit earlier, RunEdit later) {
        List<String> parts = new ArrayList<>();
        part(parts, "note", earlier.note(), later.note());
        part(parts, "opponent", earlier.opponent(), later.opponent());
        if (earlier.warmUp() != later.warmUp()) {
            parts.add(later.warmUp() ? "now a warm-up" : "no longer a warm-up");
        }
        part(parts, "final score", told(earlier.score()), told(later.score()));
        return String.join("; ", parts);
    }

    private static @Nullable String told(Run.@Nullable Score score) {
        return score == null ? null : score.mine() + "-" + score.theirs();
    }

    private static String told(BagSet earlier, BagSet later) {
        List<String> parts = new ArrayList<>();
        part(parts, "name", earlier.name(), later.name());
        part(parts, "slow face", earlier.slowSpeed(), later.slowSpeed());
        part(parts, "fast face", earlier.fastSpeed(), later.fastSpeed());
        part(parts, "ounces", earlier.weight(), later.weight());
        part(parts, "fill", earlier.fill(), later.fill());
        part(parts, "note", earlier.note(), later.note());
        if (earlier.retired() != later.retired()) {
            parts.add(later.retired() ? "now retired" : "in use again");
        }
        return String.join("; ", parts);
    }

    private static String told(Board earlier, Board later) {
        List<String> parts = new ArrayList<>();
        part(parts, "name", earlier.name(), later.name());
        part(parts, "kind", earlier.kind().word(), later.kind().word());
        part(parts, "inches wide", earlier.width(), later.width());
        part(parts, "inches high in front", earlier.front(), later.front());
        part(parts, "note", earlier.note(), later.note());
        if (earlier.retired() != later.retired()) {
            parts.add(later.retired() ? "now retired" : "in use again");
        }
        return String.join("; ", parts);
    }

    static void part(List<String> parts, String what, @Nullable Object earlier, @Nullable Object later) {
        if (!Objects.equals(earlier, later)) {
            parts.add(what + " before: \"" + shown(earlier) + "\", after: \"" + shown(later) + "\"");
        }
    }

    private static String shown(@Nullable Object value) {
        return value == null ? "" : value.toString();
    }
}
