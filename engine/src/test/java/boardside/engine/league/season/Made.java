package boardside.engine.league.season;

import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.TieBreak;
import boardside.engine.league.season.Entrant.Standing;
import boardside.engine.odds.LeaguePoints;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.jspecify.annotations.Nullable;

/** Seasons for tests. */
final class Made {
    static final LocalDateTime STARTS = LocalDateTime.parse("2026-10-05T00:00");
    static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

    private Made() {}

    /** Ids that count on. */
    static Supplier<String> ids(String prefix) {
        int[] last = {0};
        return () -> prefix + ++last[0];
    }

    static SeasonRules rules(Meetings meetings, int qualifiers) {
        return new SeasonRules(3, 10, LeaguePoints.STANDARD, TieBreak.USUAL, meetings, qualifiers, true);
    }

    /** A season of so many players in each division: A1, A2, ..., B1, ... */
    static Season season(SeasonRules rules, Weeks weeks, int... sizes) {
        List<String> divisions = new ArrayList<>();
        List<Entrant> entrants = new ArrayList<>();
        for (int division = 0; division < sizes.length; division++) {
            String letter = String.valueOf((char) ('A' + division));
            divisions.add(letter);
            for (int number = 1; number <= sizes[division]; number++) {
                entrants.add(
                        new Entrant("e" + letter + number, letter + number, division, number, Standing.IN, 0, null));
            }
        }
        Season bare =
                new Season("s", "Made", rules, weeks, divisions, entrants, List.of(), null, true, 20261125L, "", false);
        return SeasonChanges.planned(bare, ids("m"));
    }

    static Season season(int... sizes) {
        return season(rules(Meetings.SINGLE, 4), new Weeks(STARTS, ZONE), sizes);
    }

    static List<GameScore> games(@Nullable Integer... totals) {
        List<GameScore> games = new ArrayList<>();
        for (int i = 0; i < totals.length; i += 2) {
            games.add(new GameScore(totals[i], totals[i + 1]));
        }
        return games;
    }

    /** The match of two, by their names. */
    static SeasonMatch match(Season season, String first, String second) {
        return season.matches().stream()
                .filter(match -> match.has("e" + first) && match.has("e" + second))
                .findFirst()
                .orElseThrow();
    }

    /** The organiser types in a match, totals of the first of the two named first. */
    static Season told(Season season, String first, String second, @Nullable Integer... totals) {
        SeasonMatch match = match(season, first, second);
        List<GameScore> games = games(totals);
        List<GameScore> turned = match.first().equals("e" + first)
                ? games
                : games.stream()
                        .map(game -> new GameScore(game.second(), game.first()))
                        .toList();
        return SeasonChanges.told(season, match.id(), turned, Voice.ORGANISER, ids("new"));
    }

    /** Everything that is pending is told, at random. */
    static Season allTold(Season season, UniformRandomProvider random, Supplier<String> ids) {
        Season now = season;
        while (true) {
            Season at = now;
            List<SeasonMatch> pending =
                    at.matches().stream().filter(at::pending).toList();
            if (pending.isEmpty()) {
                return now;
            }
            SeasonMatch match = pending.get(random.nextInt(pending.size()));
            now = SeasonChanges.told(now, match.id(), anyGames(at.rules(), random), Voice.ORGANISER, ids);
        }
    }

    static List<GameScore> anyGames(SeasonRules rules, UniformRandomProvider random) {
        List<GameScore> games = new ArrayList<>();
        for (int game = 0; game < rules.games(); game++) {
            games.add(new GameScore(70 + random.nextInt(5), 70 + random.nextInt(5)));
        }
        return games;
    }
}
