package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.season.Arrangement;
import boardside.app.season.SeasonChange;
import boardside.app.season.SeasonSettings;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.TieBreak;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Weeks;
import boardside.engine.odds.LeaguePoints;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass
@EnumSource
class HostedSeasonsTest {
    private static final Weeks WEEKS = new Weeks(LocalDateTime.parse("2026-06-01T00:00"), ZoneId.of("Europe/Berlin"));

    private final Stores kind;

    @TempDir
    Path folder;

    private Records records;
    private HostedSeasons seasons;
    private String id;

    HostedSeasonsTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        records = Stores.open(kind.location(folder), 1);
        records.addPlayer("Ash Moor", Player.Hand.RIGHT, Player.Hand.LEFT);
        seasons = records.seasons();
        id = seasons.add(draft("Porch", "ash moor", "Bea", "Cy", "Di")).id();
    }

    @AfterEach
    void close() {
        assertThat(records.check()).isEmpty();
        records.close();
    }

    private static NewSeason draft(String name, String... players) {
        return new NewSeason(
                name, SeasonRules.USUAL, WEEKS, List.of(new NewSeason.Division("All", List.of(players))), false, "");
    }

    private Season season() {
        return seasons.find(id).orElseThrow();
    }

    private SeasonMatch match(String first, String second) {
        Season season = season();
        return season.matches().stream()
                .filter(match -> season.name(match.first()).equals(first)
                                && season.name(match.second()).equals(second)
                        || season.name(match.first()).equals(second)
                                && season.name(match.second()).equals(first))
                .findFirst()
                .orElseThrow();
    }

    private static List<GameScore> games(@Nullable Integer... totals) {
        List<GameScore> games = new ArrayList<>();
        for (int i = 0; i < totals.length; i += 2) {
            games.add(new GameScore(totals[i], totals[i + 1]));
        }
        return games;
    }

    private void settleAll() {
        int more = 0;
        for (SeasonMatch match : season().matches(Stage.LEAGUE)) {
            more++;
            seasons.tell(id, match.id(), games(80 + more, 70, 60, 61, 75, 75), Voice.ORGANISER);
        }
    }

    @Test
    void aSeasonIsKeptWhole() {
        Season made = seasons.add(new NewSeason(
                "Doubles",
                new SeasonRules(
                        2, 8, new LeaguePoints(3, 1, 0), List.of(TieBreak.MATCH_WINS), Meetings.DOUBLE, 1, true),
                WEEKS,
                List.of(
                        new NewSeason.Division("North", List.of("Ash", "Bea", "Cy")),
                        new NewSeason.Division("South", List.of("Di", "Ed"))),
                true,
                " Be kind. "));
        Season kept = seasons.find(made.id()).orElseThrow();
        assertThat(SeasonSettings.of(kept)).isEqualTo(SeasonSettings.of(made));
        assertThat(kept.note()).isEqualTo("Be kind.");
        assertThat(kept.entrants()).isEqualTo(made.entrants());
        assertThat(kept.matches()).containsExactlyInAnyOrderElementsOf(made.matches());
        assertThat(kept.matches()).hasSize(8);
        assertThat(seasons.all()).extracting(SeasonSettings::name).containsExactly("Doubles", "Porch");
    }

    @Test
    void aPlayerOfThisStoreIsKnownByName() {
        Integer ash = records.player("Ash Moor").orElseThrow().id();
        assertThat(season().named("ash moor").map(Entrant::player)).contains(ash);
        assertThat(season().named("Bea").map(Entrant::player)).isEmpty();
    }

    @Test
    void whatCannotBeIsRefusedWholeWithEveryFault() {
        assertThatThrownBy(() -> seasons.add(draft("Porch", "=cmd()", "")))
                .isInstanceOfSatisfying(
                        Failure.BadInput.class,
                        failure -> assertThat(failure.faults())
                                .hasSize(3)
                                .anyMatch(fault -> fault.contains("\"Porch\" is taken"))
                                .anyMatch(fault -> fault.contains("begins with a letter or a digit"))
                                .anyMatch(fault -> fault.contains("the name of a player is missing")));
        assertThatThrownBy(() -> seasons.add(draft("Alone", "Ash"))).hasMessageContaining("1 players");
        assertThatThrownBy(() -> seasons.add(draft("Twice", "Ash", "ASH"))).hasMessageContaining("twice");
        assertThat(seasons.all()).hasSize(1);
        assertThatThrownBy(() -> seasons.tell("nothing", "nothing", List.of(), Voice.ORGANISER))
                .isInstanceOf(Failure.NotFound.class);
    }

    @Test
    void sayingTheSameAgainChangesNothing() {
        String match = match("Bea", "Cy").id();
        seasons.tell(id, match, games(80, 70, null, 61), Voice.ORGANISER);
        long version = seasons.version(id).count();
        seasons.tell(id, match, games(80, 70, null, 61), Voice.ORGANISER);
        assertThat(seasons.version(id).count()).isEqualTo(version);
        assertThat(seasons.changes(id)).hasSize(1);
        assertThat(season().match(match).orElseThrow().games()).isEqualTo(games(80, 70, null, 61));
    }

    @Test
    void everyChangeCanBeUndoneAndTheUndoToo() {
        String match = match("Bea", "Cy").id();
        Season before = season();
        seasons.tell(id, match, games(80, 70, 60, 61, 75, 75), Voice.ORGANISER);
        seasons.tell(id, match, games(81, 70, 60, 61, 75, 75), Voice.ORGANISER);
        Season after = season();
        seasons.undo(id, seasons.changes(id).get(0).id());
        assertThat(season().match(match).orElseThrow().game(1)).isEqualTo(new GameScore(80, 70));
        SeasonChange undone = seasons.changes(id).get(0);
        assertThat(undone.kind()).isEqualTo(SeasonChange.Kind.UNDO);
        seasons.undo(id, undone.id());
        assertThat(season().matches()).isEqualTo(after.matches());
        // All of it, one by one, back to the beginning.
        seasons.changes(id).stream()
                .filter(change -> !change.undone())
                .forEach(change -> seasons.undo(id, change.id()));
        assertThat(season().match(match)).isEqualTo(before.match(match));
        assertThat(season().match(match).orElseThrow().state()).isEqualTo(State.OPEN);
    }

    @Test
    void arrangementsAreKeptAndPlayersComeAndGo() {
        SeasonMatch match = match("Bea", "Cy");
        Arrangement asked = new Arrangement(LocalDateTime.parse("2026-07-01T21:00"), "Guest", "", 0, "away");
        seasons.arrange(id, match.id(), asked);
        assertThat(Arrangement.of(season().match(match.id()).orElseThrow())).isEqualTo(asked);
        assertThatThrownBy(
                        () -> seasons.arrange(id, match.id(), asked.headStart(3).note("kept out")))
                .hasMessageContaining("without head starts");
        assertThat(season().match(match.id()).orElseThrow().note()).isEqualTo("away");
        String bea = season().named("Bea").orElseThrow().id();
        seasons.rename(id, bea, "Bea Lind");
        seasons.leave(id, bea);
        assertThat(season().entrant(bea).orElseThrow().standing()).isEqualTo(Entrant.Standing.STRUCK);
        assertThat(season().table(0).rows()).hasSize(3);
        seasons.undo(id, seasons.changes(id).get(0).id());
        assertThat(season().table(0).rows()).hasSize(4);
        assertThatThrownBy(() -> seasons.join(id, 0, "Ed")).hasMessageContaining("an even number");
        String odd = seasons.add(draft("Odd", "Gil", "Hal", "Ike")).id();
        seasons.join(odd, 0, "Late");
        assertThat(seasons.find(odd).orElseThrow().matches()).hasSize(6);
        seasons.undo(odd, seasons.changes(odd).get(0).id());
        assertThat(seasons.find(odd).orElseThrow().matches()).hasSize(3);
        assertThat(seasons.find(odd).orElseThrow().entrants()).hasSize(3);
    }

    @Test
    void thePlayOffIsKeptAndTakenBackWhole() {
        settleAll();
        Season before = season();
        seasons.playOff(id, null);
        assertThat(season().matches(Stage.PLAY_OFF)).hasSize(2);
        SeasonMatch semi = season().matches(Stage.PLAY_OFF).get(0);
        seasons.forfeit(id, semi.id(), Award.FIRST);
        SeasonMatch other = season().matches(Stage.PLAY_OFF).get(1);
        seasons.tell(id, other.id(), games(80, 70, 80, 70, 80, 70), Voice.ORGANISER);
        assertThat(season().matches(Stage.PLAY_OFF)).hasSize(3);
        SeasonChange league = seasons.changes(id).get(4);
        assertThat(league.kind()).isEqualTo(SeasonChange.Kind.RESULT);
        assertThatThrownBy(() -> seasons.undo(id, league.id())).hasMessageContaining("undo the play-off first");
        SeasonChange start = seasons.changes(id).stream()
                .filter(change -> change.kind() == SeasonChange.Kind.PLAY_OFF)
                .findFirst()
                .orElseThrow();
        seasons.undo(id, start.id());
        assertThat(season().matches()).isEqualTo(before.matches());
        assertThat(season().entrants()).isEqualTo(before.entrants());
        assertThat(season().playOffStarts()).isNull();
    }

    @Test
    void settingsThatWouldChangeWhatWasThrownStay() {
        Season season = season();
        SeasonRules longer = new SeasonRules(3, 12, LeaguePoints.STANDARD, TieBreak.USUAL, Meetings.SINGLE, 2, false);
        seasons.settings(id, "Porch", longer, new Weeks(WEEKS.starts().plusDays(1), WEEKS.zone()), true, "");
        assertThat(season().rules()).isEqualTo(longer);
        assertThat(season().open()).isTrue();
        seasons.tell(id, season.matches().get(0).id(), games(80, 70), Voice.ORGANISER);
        assertThatThrownBy(() -> seasons.settings(id, "Porch", SeasonRules.USUAL, season().weeks(), true, ""))
                .hasMessageContaining("games and rounds stay");
        assertThatThrownBy(() -> seasons.settings(id, "Porch", longer, WEEKS, true, ""))
                .hasMessageContaining("its dates stay");
        seasons.delete(id);
        assertThat(seasons.find(id)).isEmpty();
        assertThat(seasons.restore(id)).isPresent();
        assertThat(seasons.find(id)).isPresent();
        assertThat(seasons.restore(id)).isEmpty();
    }

    @Test
    void fairHeadStartsAreRecordedForAWeek() {
        String odd = seasons.add(new NewSeason(
                        "Fair",
                        new SeasonRules(3, 10, LeaguePoints.STANDARD, TieBreak.USUAL, Meetings.DOUBLE, 0, true),
                        WEEKS,
                        List.of(new NewSeason.Division("All", List.of("Gil", "Hal"))),
                        false,
                        ""))
                .id();
        SeasonMatch first = seasons.find(odd).orElseThrow().matches().get(0);
        seasons.tell(odd, first.id(), games(100, 60, 98, 62, 103, 58), Voice.ORGANISER);
        Season fair = seasons.fairHeadStarts(odd, Stage.LEAGUE, 2);
        // In the second week the other one is named first.
        assertThat(fair.matches(Stage.LEAGUE).get(1).headStart()).isBetween(20, 41);
        assertThat(fair.matches(Stage.LEAGUE).get(0).headStart()).isZero();
    }
}
