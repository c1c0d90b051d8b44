package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Change;
import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.Fixture.Totals;
import boardside.app.practice.League;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass
@EnumSource
class LeaguesTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");

    private final Stores kind;

    @TempDir
    Path folder;

    private Records records;
    private int me;
    private String league;

    LeaguesTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        records = Stores.open(kind.location(folder), 1);
        me = records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        league = records.leagues().save(me, named("Tuesday Post")).id();
    }

    @AfterEach
    void close() {
        records.close();
    }

    private static League named(String name) {
        return new League("", name, "Ash", "America/Chicago", 3, 2, LeaguePoints.STANDARD, "", false);
    }

    private LeagueState state() {
        return records.leagues().find(me, league).orElseThrow();
    }

    private Leagues.Taken post(Posted... posted) {
        return records.leagues().post(me, league, List.of(posted));
    }

    private static Posted line(int week, String first, String second, Totals... games) {
        return new Posted(week, first, second, null, List.of(games));
    }

    private void throwGame(String run, String fixture, int game, int... inOfFour) {
        Setup setup = Setup.plain().with(draft -> {
            draft.rounds = 2;
            draft.setting = Setting.LEAGUE;
        });
        apply(new Operation.StartRun(
                records.ids().next(),
                run,
                "s",
                Drill.FIXTURE,
                "2026-06-01T18:00:00Z",
                false,
                "Bea",
                null,
                game,
                setup));
        apply(new Operation.PlayFixture(records.ids().next(), fixture, game, run));
        for (int i = 0; i < inOfFour.length; i++) {
            apply(new Operation.PutRound(run, round(i + 1, inOfFour[i])));
        }
        if (inOfFour.length == 2) {
            apply(new Operation.FinishRun(records.ids().next(), run, "2026-06-01T18:10:00Z"));
        }
    }

    private Round round(int number, int in) {
        Line line = new Line(
                "",
                null,
                null,
                BoardKind.REGULATION,
                Setting.LEAGUE,
                null,
                null,
                4,
                in,
                0,
                4 - in,
                Line.Misses.NONE,
                "",
                "");
        return new Round(number, Side.ME, records.ids().next(), List.of(line), List.of());
    }

    private void apply(Operation operation) {
        records.applyAll(me, List.of(operation), NOW);
    }

    @Test
    void postingTheSameAgainChangesNothing() {
        assertThat(post(line(1, "Ash", "Bea"), line(1, "Cy", "Di"))).isEqualTo(new Leagues.Taken(2, 0, 0));
        long version = records.player(me).version();
        assertThat(post(line(1, "ash ", "BEA"), line(1, "Di", "Cy"))).isEqualTo(new Leagues.Taken(0, 0, 2));
        assertThat(records.player(me).version()).isEqualTo(version);
        assertThat(state().fixtures()).extracting(Fixture::first).containsExactly("Ash", "Cy");
    }

    @Test
    void resultsFindTheirFixtureAndKeepWhatWasKnown() {
        post(line(1, "Ash", "Bea", new Totals(20, null)));
        post(new Posted(0, "Bea", "Ash", "2026-06-07T21:00", List.of(new Totals(19, null), new Totals(12, 13))));
        Fixture fixture = state().fixtures().get(0);
        assertThat(fixture.games()).containsExactly(new Totals(20, 19), new Totals(13, 12));
        assertThat(state().deadline(fixture)).contains(Instant.parse("2026-06-08T02:00:00Z"));
        post(line(2, "Ash", "Bea"));
        assertThatThrownBy(() -> post(line(0, "Ash", "Bea", new Totals(1, 1)))).hasMessageContaining("say which week");
    }

    @Test
    void aFaultStoresNothing() {
        assertThatThrownBy(() -> post(line(1, "Ash", "Bea"), line(1, "Cy", "Di", new Totals(25, 24))))
                .isInstanceOf(Failure.BadInput.class)
                .hasMessageContaining("2 rounds give 0 to 24 points, not 25");
        assertThatThrownBy(() -> post(line(1, "Cy", "Di", new Totals(23, 24))))
                .hasMessageContaining("23 points cannot be thrown");
        assertThatThrownBy(() -> post(
                        line(1, "Cy", "Di", new Totals(1, 1), new Totals(1, 1), new Totals(1, 1), new Totals(1, 1))))
                .hasMessageContaining("has 3 games");
        assertThat(state().fixtures()).isEmpty();
        assertThatThrownBy(() -> records.leagues().save(me, named("Tuesday Post")))
                .hasMessageContaining("taken");
    }

    @Test
    void whatIThrowCountsAsPostedOnceItIsFinished() {
        post(line(1, "Bea", "Ash", new Totals(18, null)));
        Fixture fixture = state().fixtures().get(0);
        throwGame("r1", fixture.id(), 1, 4, 2);
        throwGame("r2", fixture.id(), 2, 4);
        assertThat(state().totals(fixture, 1)).isEqualTo(new Totals(18, 18));
        assertThat(state().mine(fixture, 2)).isEqualTo(Totals.NONE);
        assertThat(state().toThrow()).containsExactly(fixture);
        assertThat(state().standings().rows())
                .extracting(row -> row.player() + " " + row.record().points())
                .containsExactly("Ash 1", "Bea 1");
        assertThatThrownBy(() -> apply(new Operation.PutRound("r1", round(3, 1))))
                .hasMessageContaining("this game of a league has 2 rounds");
        assertThat(records.leagues().ofRun(me, "r2"))
                .hasValueSatisfying(of -> assertThat(of.game()).isEqualTo(2));

        records.deleteRun(me, "r1", NOW);
        assertThat(state().totals(fixture, 1)).isEqualTo(new Totals(18, null));
        assertThat(records.check()).isEmpty();
    }

    @Test
    void aRepeatedStartOfAGameChangesNothing() {
        post(line(1, "Bea", "Ash"));
        String fixture = state().fixtures().get(0).id();
        throwGame("r1", fixture, 1, 4, 2);
        Operation again = new Operation.PlayFixture(records.ids().next(), fixture, 1, "r1");
        assertThat(records.apply(me, List.of(again), NOW).get(0)).isInstanceOf(Applied.Repeated.class);
        Operation wrong = new Operation.PlayFixture(records.ids().next(), fixture, 4, "r1");
        assertThat(records.apply(me, List.of(wrong), NOW).get(0)).isInstanceOf(Applied.Refused.class);
    }

    @Test
    void everyChangeCanBeUndone() {
        post(line(1, "Ash", "Bea"), line(1, "Cy", "Di"));
        Fixture before = state().fixtures().get(0);
        records.leagues().edit(me, before.withGame(1, new Totals(20, 10)));
        List<Change> changes = records.changes(me, league);
        assertThat(changes)
                .extracting(Change::says)
                .containsExactly(
                        "Ash v Bea in week 1, totals before: \"\", after: \"20-10\"",
                        "Ash v Bea in week 1 added; Cy v Di in week 1 added");
        records.undo(me, changes.get(0).id(), NOW);
        assertThat(state().fixtures()).contains(before);
        records.undo(me, changes.get(1).id(), NOW);
        assertThat(state().fixtures()).isEmpty();
        records.undo(me, records.changes(me, league).get(0).id(), NOW);
        assertThat(state().fixtures()).hasSize(2).contains(before);

        records.leagues().save(me, state().league().deleted(true));
        assertThat(records.leagues().all(me)).isEmpty();
        records.undo(me, records.changes(me, league).get(0).id(), NOW);
        assertThat(records.leagues().all(me)).hasSize(1);
    }

    @Test
    void anotherNameOfMineGoesIntoTheFixturesToo() {
        post(line(1, "Ash", "Bea"), line(1, "Cy", "Di"));
        League old = state().league();
        records.leagues()
                .save(
                        me,
                        new League(
                                old.id(), old.name(), "Ash M.", old.zone(), 3, 2, old.points(), "Post by noon", false));
        assertThat(state().fixtures()).extracting(Fixture::first).containsExactly("Ash M.", "Cy");
        assertThat(state().toThrow()).hasSize(1);
    }
}
