package boardside.app.demo;

import boardside.app.record.NewSeason;
import boardside.app.record.Records;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Weeks;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** An invented season run here, in its third week: two weeks behind, one match forfeited, one told by one side alone. */
final class DemoSeason {
    private static final List<String> PLAYERS =
            List.of(Demo.PLAYER, "Mabel Quill", "Otto Fenn", "Jory Pike", "Ida Brook", "Lew Marsh", "Posy Vane");

    private DemoSeason() {}

    /** @param last a day in its third week */
    static void add(Records records, LocalDate last, long seed) {
        LocalDate monday = last.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        Season season = records.seasons()
                .add(new NewSeason(
                        "Back Fence Season",
                        SeasonRules.USUAL,
                        new Weeks(monday.minusWeeks(2).atStartOfDay(), ZoneId.of("Europe/Berlin")),
                        List.of(new NewSeason.Division("Everybody", PLAYERS)),
                        true,
                        "Seven days to throw, camera on the board."));
        SplittableRandom random = new SplittableRandom(seed);
        for (SeasonMatch match : season.matches(Stage.LEAGUE)) {
            if (match.week() == 2 && match.place() == 3) {
                records.seasons().forfeit(season.id(), match.id(), Award.FIRST);
            } else if (match.week() <= 2) {
                records.seasons().tell(season.id(), match.id(), games(season, match, true, random), Voice.ORGANISER);
            } else if (match.week() == 3 && match.place() == 1) {
                records.seasons().tell(season.id(), match.id(), games(season, match, false, random), Voice.ORGANISER);
            }
        }
    }

    /** Three games; the better players come first in the list. */
    private static List<GameScore> games(Season season, SeasonMatch match, boolean both, SplittableRandom random) {
        List<GameScore> games = new ArrayList<>();
        for (int game = 0; game < season.rules().games(); game++) {
            int first = total(season, match.first(), random);
            int second = total(season, match.second(), random);
            games.add(new GameScore(first, both ? second : null));
        }
        return games;
    }

    private static int total(Season season, String entrant, SplittableRandom random) {
        int place = PLAYERS.indexOf(season.name(entrant));
        return 76 - 4 * place + random.nextInt(-9, 10);
    }
}
