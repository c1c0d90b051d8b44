package boardside.app.record;

import boardside.app.practice.BagOrder;
import boardside.app.practice.BagSet;
import boardside.app.practice.Challenge;
import boardside.app.practice.Contest;
import boardside.app.practice.Fixture;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.League;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.PlannedBlock;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.app.practice.Setup;
import boardside.app.practice.SlideTest;
import boardside.app.practice.Stakes;
import boardside.app.practice.TrialPlan;
import boardside.app.practice.Try;
import boardside.app.season.Arrangement;
import boardside.app.season.MatchSide;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.TieBreak;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Weeks;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.plan.Activity;
import boardside.engine.plan.Energy;
import boardside.engine.plan.Goal;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A small store with something of everything, the same each time. */
public final class SampleStore {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");

    private final Records records;
    private int ops;

    private SampleStore(Records records) {
        this.records = records;
    }

    /** Fills an empty store. */
    public static void fill(Records records) {
        new SampleStore(records).fill();
    }

    private String op() {
        return "01900000-0000-7000-8000-%012d".formatted(++ops);
    }

    private void fill() {
        int me = records.addPlayer("Äsa", Player.Hand.LEFT, Player.Hand.RIGHT).id();
        int kim = records.addPlayer("Kim", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        records.savePreferences(me, "{\"units\":\"cm\"}");
        records.saveBag(me, BagSet.named("b1", "Blue"));
        records.saveBag(me, new BagSet("b1", "Blue, broken in", 4, 7, 15.5, "resin", "first ones", false));
        records.saveBag(me, new BagSet("b2", "Red", null, null, null, "", "", true));

        start(me, "total", "s1", Drill.TOTAL, "2026-05-01T18:00:00+02:00", false, null, "");
        put(me, "total", new Round(1, Side.ME, op(), List.of(line("b1", null, 3, 1, 0)), List.of()));
        put(me, "total", new Round(2, Side.ME, op(), List.of(line("b1", null, 0, 0, 4)), List.of()));
        put(me, "total", new Round(2, Side.ME, op(), List.of(line("b1", null, 1, 0, 3)), List.of()));
        put(me, "total", new Round(3, Side.ME, op(), List.of(line("b1", null, 4, 0, 0)), List.of()));
        put(me, "total", new Round(3, Side.ME, op(), List.of(), List.of()));
        finish(me, "total", "2026-05-01T18:10:00+02:00");
        records.editRun(me, "total", new RunEdit("gusty", "", false, null));

        start(me, "race", "s1", Drill.RACE, "2026-05-01T18:20:00+02:00", false, 6, "");
        put(me, "race", new Round(1, Side.ME, op(), List.of(line("b2", 6, 2, 2, 0)), List.of()));

        start(me, "duel", "s2", Drill.DUEL, "2026-05-02T23:30:00-05:00", true, null, "Lou");
        put(
                me,
                "duel",
                new Round(
                        1,
                        Side.A,
                        op(),
                        List.of(line("b1", null, 1, 1, 0)),
                        List.of(
                                new Round.Thrown(
                                        "b1",
                                        Face.FAST,
                                        Outcome.IN,
                                        "",
                                        "slide",
                                        new Round.Point(0, 39),
                                        new Round.Point(-1.25, 22.5),
                                        null),
                                new Round.Thrown(
                                        "b1",
                                        Face.FAST,
                                        Outcome.ON,
                                        "short",
                                        "",
                                        null,
                                        null,
                                        new Round.Point(3, 12)))));
        put(me, "duel", new Round(1, Side.VERSUS, op(), List.of(line("", null, 4, 0, 0)), List.of()));
        records.editSession(me, "s2", "at Lou's");

        start(me, "blocks", "s2", Drill.PLACEMENT, "2026-05-02T23:40:00-05:00", false, null, "");
        Target left = Target.parse("2-left");
        attempt(me, "blocks", 1, tried(Shot.BLOCK, left, Position.EMPTY, null, true, new Spot(-8.25, 25)));
        attempt(me, "blocks", 2, tried(Shot.BLOCK, left, Position.EMPTY, null, false, new Spot(0, 25)));
        attempt(me, "blocks", 2, tried(Shot.BLOCK, left, Position.EMPTY, null, false, null));
        attempt(me, "blocks", 3, tried(Shot.BLOCK, left, Position.EMPTY, null, false, null));
        attempt(me, "blocks", 3, null);
        Position gate = new Position(List.of(new Lying(0, 33, Side.VERSUS)));
        apply(me, new Operation.KeepSituation(op(), "k1", "Doorway", gate, false));
        apply(me, new Operation.KeepSituation(op(), "k1", "Doorstep", gate, false));
        apply(me, new Operation.KeepSituation(op(), "k2", "Nothing there", Position.EMPTY, true));
        start(me, "round", "s2", Drill.SITUATION, "2026-05-02T23:45:00-05:00", false, null, "Lou");
        attempt(me, "round", 1, tried(Shot.CUT_LEFT, null, gate, new Try.Link(1, 1, 2), true, null));

        start(me, "gone", "s2", Drill.TOTAL, "2026-05-02T23:50:00-05:00", false, null, "");
        put(me, "gone", new Round(1, Side.ME, op(), List.of(line("", null, 0, 0, 4)), List.of()));
        records.deleteRun(me, "gone", NOW);

        start(kim, "volume", "s1", Drill.VOLUME, "2026-05-03T10:00:00Z", false, null, "");
        Line onlyIn = new Line(
                "",
                null,
                null,
                BoardKind.NARROW,
                Setting.PRACTICE,
                Conditions.FAST,
                null,
                20,
                13,
                null,
                null,
                new Line.Misses(2, null, 5, 0),
                "2026-05-03T10:01:00Z",
                "new boards");
        put(kim, "volume", new Round(1, Side.ME, op(), List.of(onlyIn), List.of()));
        game(kim);
        leagueNight(me);
        trial(me);
        plans(me, kim);
        seasons();
        slideTests(me);
        matchNight(me);
    }

    /** A match thrown with rounds sent late, one set right by the organiser, one typed in by them, and a video. */
    private void matchNight(int me) {
        Season season = records.seasons()
                .add(new NewSeason(
                        "Näight",
                        new SeasonRules(1, 2, new LeaguePoints(2, 1, 0), List.of(), Meetings.SINGLE, 0, false),
                        new Weeks(LocalDateTime.parse("2026-05-04T18:30"), ZoneId.of("America/Chicago")),
                        List.of(new NewSeason.Division("All", List.of("Äsa", "Bo"))),
                        false,
                        ""));
        String match = season.matches().get(0).id();
        start(me, "match", "s4", Drill.FIXTURE, "2026-05-10T20:00:00+02:00", false, null, "Bo");
        records.apply(
                me,
                List.of(new Operation.ChangeSetup(
                        op(),
                        "match",
                        records.run(me, "match").orElseThrow().run().setup().with(draft -> draft.rounds = 2))),
                NOW);
        apply(me, new Operation.PlayMatch(op(), season.id(), match, 1, "match"));
        put(me, "match", new Round(1, Side.ME, op(), List.of(line("b1", null, 4, 0, 0)), List.of()));
        put(me, "match", new Round(2, Side.ME, op(), List.of(line("b1", null, 1, 3, 0)), List.of()));
        records.matchNights().correct(season.id(), match, 1, MatchSide.FIRST, 2, new Finish(2, 2, 0));
        records.matchNights().correct(season.id(), match, 1, MatchSide.SECOND, 1, new Finish(0, 0, 4));
        records.matchNights().stream(season.id(), match, MatchSide.FIRST, "https://video.example/äsa");
    }

    /** A slide test that was mended, one at a narrow board with nothing else told, and one deleted. */
    private void slideTests(int me) {
        SlideTest.Tapped tapped = new SlideTest.Tapped(
                "2026-05-12T19:00:00+02:00",
                "b1",
                Face.SLOW,
                BoardKind.REGULATION,
                Conditions.FAST,
                List.of(
                        new SlideTest.Slid(Outcome.ON, new Round.Point(0.5, 14), new Round.Point(-1.25, 33)),
                        new SlideTest.Slid(Outcome.IN, new Round.Point(0, 20), null)));
        apply(me, new Operation.KeepSlideTest(op(), "slides-1", tapped));
        SlideTest.Tapped bare = new SlideTest.Tapped(
                "2026-05-12T19:10:00Z",
                "",
                null,
                BoardKind.NARROW,
                null,
                List.of(
                        new SlideTest.Slid(Outcome.ON, new Round.Point(-3, 12), new Round.Point(-3, 30.5)),
                        new SlideTest.Slid(Outcome.OFF, new Round.Point(5, 30), null)));
        apply(me, new Operation.KeepSlideTest(op(), "slides-2", bare));
        apply(
                me,
                new Operation.KeepSlideTest(
                        op(),
                        "slides-1",
                        new SlideTest.Tapped(
                                tapped.at(), "b1", Face.FAST, BoardKind.REGULATION, Conditions.FAST, tapped.slides())));
        apply(me, new Operation.KeepSlideTest(op(), "slides-3", tapped));
        apply(me, new Operation.KeepSlideTest(op(), "slides-3", null));
    }

    /** A game under stakes whose final score was told, and told again. */
    private void game(int player) {
        Contest contest = new Contest(
                false, true, false, false, FirstThrow.SWAP, -3, new Contest.Way("", Face.FAST, Approach.AGGRESSIVE));
        Setup setup = Setup.plain().with(draft -> {
            draft.contest = contest;
            draft.stakes = new Stakes(true, null, null, 12, true);
            draft.order = BagOrder.MIXED;
            draft.ghostPlay = new GhostPlay(GhostPlay.Kind.MONTH, "2026-04", List.of(4, 0, 12));
        });
        apply(
                player,
                new Operation.StartRun(
                        op(), "game", "s3", Drill.GAME, "2026-05-04T10:00:00Z", false, "Lou", null, null, setup));
        put(player, "game", new Round(1, Side.ME, op(), List.of(line("", null, 2, 1, 1)), List.of()));
        put(player, "game", new Round(1, Side.VERSUS, op(), List.of(line("", null, 0, 1, 3)), List.of()));
        put(player, "game", new Round(2, Side.ME, op(), List.of(line("", null, 2, 1, 1)), List.of()));
        apply(player, new Operation.ScoreRun(op(), "game", new Run.Score(21, 18)));
        apply(player, new Operation.ScoreRun(op(), "game", new Run.Score(18, 21)));
    }

    private void leagueNight(int me) {
        String league = records.leagues()
                .save(
                        me,
                        new League(
                                "", "Tuesday Post", "Äsa", "America/Chicago", 3, 10, LeaguePoints.STANDARD, "", false))
                .id();
        records.leagues()
                .post(
                        me,
                        league,
                        List.of(
                                new Posted(1, "Äsa", "Bo", "2026-05-10T23:59", List.of(new Fixture.Totals(null, 71))),
                                new Posted(1, "Cy", "Di", null, List.of(new Fixture.Totals(60, 62)))));
        String fixture = records.leagues().find(me, league).orElseThrow().fixtures().stream()
                .filter(one -> one.has("Äsa"))
                .findFirst()
                .orElseThrow()
                .id();
        start(me, "night", "s3", Drill.FIXTURE, "2026-05-09T20:00:00+02:00", false, null, "Bo");
        apply(me, new Operation.PlayFixture(op(), fixture, 1, "night"));
        put(me, "night", new Round(1, Side.ME, op(), List.of(line("b1", null, 4, 0, 0)), List.of()));
        records.challenges()
                .take(me, new Challenge("", "2026-05-01", Challenge.Kind.POINTS, 3, 0, 18, 0.5, 0.375, 0.625, "total"));
    }

    /** A season with a result, one in dispute, one forfeited, and what may be arranged; one that was deleted. */
    private void seasons() {
        SeasonRules rules = new SeasonRules(
                2,
                5,
                new LeaguePoints(3, 1, 0),
                List.of(TieBreak.MATCH_WINS, TieBreak.FORFEITS),
                Meetings.SINGLE,
                2,
                true);
        Weeks weeks = new Weeks(LocalDateTime.parse("2026-05-04T18:30"), ZoneId.of("America/Chicago"));
        HostedSeasons hosted = records.seasons();
        Season season = hosted.add(new NewSeason(
                "Pörch",
                rules,
                weeks,
                List.of(
                        new NewSeason.Division("North", List.of("Äsa", "Bo", "Cy", "Di")),
                        new NewSeason.Division("South", List.of("Ed", "Flo"))),
                true,
                "Be kind.\nThrow on time."));
        List<SeasonMatch> matches = season.matches(SeasonMatch.Stage.LEAGUE);
        String id = season.id();
        hosted.tell(id, matches.get(0).id(), List.of(new GameScore(40, 30), new GameScore(31, 31)), Voice.ORGANISER);
        hosted.tell(id, matches.get(1).id(), List.of(new GameScore(40, 30), new GameScore(31, 31)), Voice.FIRST);
        hosted.dispute(id, matches.get(1).id(), "it was 32");
        hosted.tell(id, matches.get(2).id(), List.of(new GameScore(null, 44)), Voice.ORGANISER);
        hosted.arrange(
                id,
                matches.get(2).id(),
                new Arrangement(LocalDateTime.parse("2026-05-20T21:00"), "Guest", "", -4, "on holiday"));
        hosted.forfeit(id, matches.get(3).id(), Award.SECOND);
        hosted.rename(id, season.entrants().get(1).id(), "Bo Lind");
        hosted.leave(id, season.entrants().get(3).id());
        hosted.undo(id, hosted.changes(id).get(0).id());
        hosted.delete(hosted.add(new NewSeason(
                        "Gone",
                        SeasonRules.USUAL,
                        weeks,
                        List.of(new NewSeason.Division("All", List.of("Gil", "Hal"))),
                        false,
                        ""))
                .id());
    }

    /** A trial under way, one laid aside, and one deleted. */
    private void trial(int me) {
        List<Contest.Way> faces =
                List.of(new Contest.Way("b1", Face.SLOW, null), new Contest.Way("b1", Face.FAST, Approach.AGGRESSIVE));
        String trial = records.trials().add(me, plan("Fäces", faces)).id();
        start(me, "trial", "s3", Drill.TRIAL, "2026-05-09T21:00:00+02:00", false, null, "");
        apply(me, new Operation.ThrowTrial(op(), trial, "trial"));
        put(me, "trial", new Round(1, Side.ME, op(), List.of(line("b1", null, 4, 0, 0)), List.of()));
        records.trials().set(me, records.trials().add(me, plan("Later", faces)).id(), TrialPlan.State.PAUSED);
        records.trials()
                .delete(me, records.trials().add(me, plan("Gone", faces)).id(), true);
    }

    /** A plan that was put away, one followed with a block of each kind of end and one refused, goals, and a coach. */
    private void plans(int me, int coach) {
        Placed warmUp = planned(new PlannedBlock(
                "warm-up", Activity.WARM_UP, 4, 12, 3, List.of(), null, null, null, null, "", "4 minutes", false));
        Placed rounds = planned(new PlannedBlock(
                "total",
                Activity.TOTAL,
                8,
                40,
                10,
                List.of("Blue, broken in", "Röd"),
                Approach.AGGRESSIVE,
                BoardKind.NARROW,
                null,
                66,
                "",
                "wins 1.2 (0.4–2.1) more games in a hundred",
                true));
        Placed race = planned(new PlannedBlock(
                "race", Activity.RACE, 8, 36, 9, List.of(), null, BoardKind.REGULATION, 6, null, "", "6", false));
        Placed block = planned(new PlannedBlock(
                "placement:2-left",
                Activity.PLACEMENT,
                6,
                20,
                0,
                List.of("Red"),
                null,
                null,
                null,
                12,
                "2-left",
                "50 in 100",
                false));
        records.plans().follow(me, session("2026-05-11", Set.of(BoardKind.REGULATION), null, List.of(warmUp)));
        String plan = records.plans()
                .follow(
                        me,
                        session(
                                "2026-05-12",
                                Set.of(BoardKind.REGULATION, BoardKind.NARROW),
                                new SessionPlan.Points(6.25, 5.5, 7.125),
                                List.of(warmUp, rounds, race)))
                .id();
        records.plans().done(me, plan, 0);
        records.plans().begin(me, plan, 1, "total");
        records.plans().swap(me, plan, 2, List.of(block), LocalDate.parse("2026-05-12"));
        LocalDate day = LocalDate.parse("2026-05-12");
        records.plans().setGoal(me, new Goal(Goal.Kind.SEASON, 7.5, LocalDate.parse("2026-12-31")), day);
        String dropped = records.plans()
                .setGoal(me, new Goal(Goal.Kind.IN, 62, LocalDate.parse("2026-09-01")), day)
                .id();
        records.plans().dropGoal(me, dropped, day.plusDays(1));
        records.plans().grant(me, coach);
    }

    private static SessionPlan session(
            String day, Set<BoardKind> boards, SessionPlan.@Nullable Points before, List<Placed> blocks) {
        return new SessionPlan("", day, 30, Energy.HIGH, 2, boards, true, true, before, "", blocks);
    }

    private static Placed planned(PlannedBlock block) {
        return new Placed(block, "", "");
    }

    private static TrialPlan plan(String name, List<Contest.Way> candidates) {
        return new TrialPlan("", name, candidates, BoardKind.NARROW, 100, 0.25, -7, "", TrialPlan.State.OPEN, false);
    }

    private static Line line(String bag, @Nullable Integer ghost, int in, int on, int off) {
        return new Line(
                bag,
                Face.FAST,
                Approach.AGGRESSIVE,
                BoardKind.REGULATION,
                Setting.LEAGUE,
                null,
                ghost,
                in + on + off,
                in,
                on,
                off,
                Line.Misses.NONE,
                "",
                "");
    }

    private void start(
            int player,
            String run,
            String session,
            Drill drill,
            String at,
            boolean warmUp,
            @Nullable Integer ghost,
            String opponent) {
        Setup setup = Setup.plain().with(draft -> {
            draft.rounds = 10;
            draft.ghost = ghost;
            draft.target = 15;
            draft.exact = true;
            draft.fallBack = 9;
            draft.bagByBag = true;
        });
        apply(player, new Operation.StartRun(op(), run, session, drill, at, warmUp, opponent, null, null, setup));
    }

    private void put(int player, String run, Round round) {
        apply(player, new Operation.PutRound(run, round));
    }

    private void attempt(int player, String run, int number, Try.@Nullable Played played) {
        apply(player, new Operation.PutTry(op(), run, number, played));
    }

    private static Try.Played tried(
            Shot shot,
            @Nullable Target target,
            Position position,
            Try.@Nullable Link link,
            boolean worked,
            @Nullable Spot spot) {
        return new Try.Played(
                Side.ME,
                shot,
                target,
                position,
                link == null ? "" : "k1",
                link,
                link != null,
                worked,
                spot == null ? new Try.Rest(Outcome.OFF, "left", null) : new Try.Rest(Outcome.ON, "", spot),
                new Try.How(
                        "b1",
                        Face.SLOW,
                        Approach.CONSERVATIVE,
                        BoardKind.REGULATION,
                        Setting.PRACTICE,
                        Conditions.NORMAL),
                "2026-05-02T23:41:00-05:00");
    }

    private void finish(int player, String run, String at) {
        apply(player, new Operation.FinishRun(op(), run, at));
    }

    private void apply(int player, Operation operation) {
        records.applyAll(player, List.of(operation), NOW);
    }
}
