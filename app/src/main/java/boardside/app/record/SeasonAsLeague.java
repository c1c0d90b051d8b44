package boardside.app.record;

import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.League;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import java.util.List;

/** A season that is run here, as one who plays in it sees a league: their chances are worked out the same way. */
public final class SeasonAsLeague {
    private SeasonAsLeague() {}

    /**
     * The entrant's division, and their matches of the play-off.
     *
     * @param thrown the entrant's own games, as thrown here
     */
    public static LeagueState of(Season season, Entrant me, List<FixtureRun> thrown) {
        League league = new League(
                season.id(),
                season.name(),
                me.name(),
                season.weeks().zone().getId(),
                season.rules().games(),
                season.rules().rounds(),
                season.rules().points(),
                "",
                false);
        List<Fixture> fixtures = season.matches().stream()
                .filter(match -> season.counts(match) && (match.division() == me.division() || match.has(me.id())))
                .map(match -> fixture(season, match))
                .toList();
        return new LeagueState(league, fixtures, thrown);
    }

    private static Fixture fixture(Season season, SeasonMatch match) {
        return new Fixture(
                match.id(),
                season.id(),
                match.week(),
                season.name(match.first()),
                season.name(match.second()),
                season.weeks().local(season.window(match).closes()).toString(),
                match.games().stream()
                        .map(game -> new Fixture.Totals(game.first(), game.second()))
                        .toList(),
                false);
    }
}
