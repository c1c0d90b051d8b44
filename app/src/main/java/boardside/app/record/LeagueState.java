package boardside.app.record;

import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.League;
import boardside.engine.league.GameTotals;
import boardside.engine.league.MatchResult;
import boardside.engine.league.Ranking;
import boardside.engine.league.Standings;
import boardside.engine.league.TieBreak;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A league as it stands.
 *
 * @param fixtures as posted, by week
 * @param thrown games the player threw here
 */
public record LeagueState(League league, List<Fixture> fixtures, List<FixtureRun> thrown) {
    /** Lists copied. */
    public LeagueState {
        fixtures = List.copyOf(fixtures);
        thrown = List.copyOf(thrown);
    }

    /** A fixture by its id. */
    public Optional<Fixture> fixture(String id) {
        return fixtures.stream().filter(fixture -> fixture.id().equals(id)).findFirst();
    }

    /** The run a game was thrown in here. */
    public Optional<FixtureRun> thrown(String fixture, int game) {
        return thrown.stream()
                .filter(run -> run.fixture().equals(fixture) && run.game() == game)
                .findFirst();
    }

    /**
     * A game's totals: as posted, and where the player's own was not posted, as thrown here to the end.
     *
     * @param number of the game, from 1
     */
    public Fixture.Totals totals(Fixture fixture, int number) {
        Fixture.Totals posted = fixture.game(number);
        Integer mine = thrown(fixture.id(), number)
                .filter(FixtureRun::finished)
                .map(FixtureRun::points)
                .orElse(null);
        if (mine == null || !fixture.has(league.me())) {
            return posted;
        }
        boolean first = fixture.first().equals(league.me());
        return new Fixture.Totals(
                posted.first() == null && first ? mine : posted.first(),
                posted.second() == null && !first ? mine : posted.second());
    }

    /** A game's totals with the player's own named first. */
    public Fixture.Totals mine(Fixture fixture, int number) {
        Fixture.Totals totals = totals(fixture, number);
        return fixture.first().equals(league.me()) ? totals : totals.turned();
    }

    /** Whether every game of a fixture has both totals. */
    public boolean complete(Fixture fixture) {
        for (int number = 1; number <= league.games(); number++) {
            if (!totals(fixture, number).complete()) {
                return false;
            }
        }
        return true;
    }

    /** Whether the player has games of a fixture still to throw. */
    public boolean toThrow(Fixture fixture) {
        for (int number = 1; fixture.has(league.me()) && number <= league.games(); number++) {
            if (mine(fixture, number).first() == null) {
                return true;
            }
        }
        return false;
    }

    /** The player's own fixtures that still have games to throw, the earliest deadline first, then by week. */
    public List<Fixture> toThrow() {
        return fixtures.stream()
                .filter(this::toThrow)
                .sorted(Comparator.comparing(
                                (Fixture fixture) -> fixture.deadline().isEmpty())
                        .thenComparing(Fixture::deadline)
                        .thenComparingInt(Fixture::week)
                        .thenComparing(Fixture::id))
                .toList();
    }

    /** A fixture's deadline as an instant; empty where it has none. */
    public Optional<Instant> deadline(Fixture fixture) {
        return fixture.deadline().isEmpty()
                ? Optional.empty()
                : Optional.of(LocalDateTime.parse(fixture.deadline())
                        .atZone(ZoneId.of(league.zone()))
                        .toInstant());
    }

    /** Everybody named in the league. */
    public Set<String> names() {
        Set<String> names = new TreeSet<>();
        names.add(league.me());
        for (Fixture fixture : fixtures) {
            names.add(fixture.first());
            names.add(fixture.second());
        }
        return names;
    }

    /** What was played so far. */
    public List<MatchResult> results() {
        List<MatchResult> results = new ArrayList<>();
        for (Fixture fixture : fixtures) {
            List<GameTotals> games = new ArrayList<>();
            for (int number = 1; number <= league.games(); number++) {
                Fixture.Totals totals = totals(fixture, number);
                Integer first = totals.first();
                Integer second = totals.second();
                if (first != null && second != null) {
                    games.add(new GameTotals(first, second));
                }
            }
            results.add(new MatchResult(fixture.first(), fixture.second(), games));
        }
        return results;
    }

    /** The table. */
    public Standings standings() {
        return Standings.of(names(), results(), Ranking.of(league.points(), TieBreak.USUAL));
    }
}
