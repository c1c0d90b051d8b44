package boardside.app.transfer;

import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.Standings;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.PlayOff;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.Window;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A season's matches and tables for other programs: as CSV (RFC 4180), and as values for JSON. */
public final class SeasonResults {
    private static final List<String> COLUMNS = List.of(
            "stage",
            "division",
            "week",
            "first",
            "second",
            "state",
            "game",
            "first_total",
            "second_total",
            "head_start",
            "forfeit",
            "first_substitute",
            "second_substitute",
            "closes");

    private SeasonResults() {}

    /** All matches of the round robin, then those of the play-off. */
    static List<SeasonMatch> all(Season season) {
        return Stream.of(Stage.LEAGUE, Stage.PLAY_OFF)
                .flatMap(stage -> season.matches(stage).stream())
                .toList();
    }

    /** A row for each game of each match, with a header; what is not known is blank. */
    public static String csv(Season season) {
        StringBuilder csv = new StringBuilder();
        Csv.write(csv, COLUMNS);
        for (SeasonMatch match : all(season)) {
            for (int game = 1; game <= season.rules().games(); game++) {
                GameScore score = match.game(game);
                Csv.write(
                        csv,
                        List.of(
                                match.stage().word(),
                                match.stage() == Stage.LEAGUE
                                        ? season.divisions().get(match.division())
                                        : "",
                                String.valueOf(match.week()),
                                season.name(match.first()),
                                season.name(match.second()),
                                state(season, match),
                                String.valueOf(game),
                                text(score.first()),
                                text(score.second()),
                                String.valueOf(match.headStart()),
                                forfeit(match),
                                match.firstSubstitute(),
                                match.secondSubstitute(),
                                season.window(match).closes().toString()));
            }
        }
        return csv.toString();
    }

    private static String text(@Nullable Integer total) {
        return total == null ? "" : total.toString();
    }

    private static String forfeit(SeasonMatch match) {
        Award award = match.forfeit();
        return award == null ? "" : award.word();
    }

    /** How far a match is; one that counts for nobody says so. */
    private static String state(Season season, SeasonMatch match) {
        return season.counts(match) ? match.state().word() : "struck";
    }

    /** The season: rules, tables, matches. */
    public static Map<String, Object> whole(Season season) {
        Map<String, Object> whole = new LinkedHashMap<>();
        whole.put("season", season.name());
        whole.put("id", season.id());
        whole.put("zone", season.weeks().zone().getId());
        whole.put("starts", season.weeks().starts().toString());
        whole.put("weeks", season.length());
        whole.put("rules", season.rules());
        whole.put("public", season.open());
        List<Map<String, Object>> divisions = new ArrayList<>();
        for (int division = 0; division < season.divisions().size(); division++) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("division", season.divisions().get(division));
            one.put(
                    "table",
                    season.table(division).rows().stream()
                            .map(SeasonResults::row)
                            .toList());
            divisions.add(one);
        }
        whole.put("divisions", divisions);
        whole.put(
                "matches",
                all(season).stream().map(match -> match(season, match)).toList());
        PlayOff.bracket(season)
                .flatMap(bracket -> bracket.champion())
                .ifPresent(seed -> season.entrants().stream()
                        .filter(one -> one.seed() == seed)
                        .forEach(one -> whole.put("champion", one.name())));
        return whole;
    }

    /** A line of a table. */
    public static Map<String, Object> row(Standings.Row row) {
        Standings.Played played = row.record();
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("place", row.place());
        one.put("player", row.player());
        one.put("points", played.points());
        one.put("games", played.games());
        one.put("won", played.won());
        one.put("tied", played.tied());
        one.put("lost", played.lost());
        one.put("thrown", played.thrown());
        one.put("against", played.against());
        one.put("matchWins", played.matchWins());
        one.put("forfeits", played.forfeits());
        return one;
    }

    /** A match. */
    public static Map<String, Object> match(Season season, SeasonMatch match) {
        Window window = season.window(match);
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("id", match.id());
        one.put("stage", match.stage().word());
        if (match.stage() == Stage.LEAGUE) {
            one.put("division", season.divisions().get(match.division()));
        }
        one.put("week", match.week());
        one.put("first", season.name(match.first()));
        one.put("second", season.name(match.second()));
        one.put("opens", window.opens().toString());
        one.put("closes", window.closes().toString());
        one.put("extended", match.extended() != null);
        one.put("state", state(season, match));
        one.put("said", match.said().word());
        one.put(
                "games",
                IntStream.rangeClosed(1, season.rules().games())
                        .mapToObj(match::game)
                        .map(game -> Arrays.asList(game.first(), game.second()))
                        .toList());
        one.put("headStart", match.headStart());
        if (match.forfeit() != null) {
            one.put("forfeit", forfeit(match));
        }
        one.put("firstSubstitute", match.firstSubstitute());
        one.put("secondSubstitute", match.secondSubstitute());
        one.put("note", match.note());
        return one;
    }
}
