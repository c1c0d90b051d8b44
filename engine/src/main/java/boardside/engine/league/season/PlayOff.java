package boardside.engine.league.season;

import boardside.engine.league.Bracket;
import boardside.engine.league.Bracket.Match;
import boardside.engine.league.Bracket.Place;
import boardside.engine.league.Bracket.Sides;
import boardside.engine.league.GameTotals;
import boardside.engine.league.MatchResult;
import boardside.engine.league.Standings;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;

/** The play-off of a season: who is in it, who meets whom, who goes on. */
public final class PlayOff {
    private PlayOff() {}

    /**
     * Who would be in the play-off by the tables as they stand, the first seed first: the best so many of each division who
     * are still in the season. Places come first; of equal places, whoever took more league points a game; then the lot.
     */
    public static List<Entrant> seeds(Season season) {
        List<Candidate> candidates = new ArrayList<>();
        for (int division = 0; division < season.divisions().size(); division++) {
            int place = 0;
            for (Standings.Row row : season.table(division).rows()) {
                Entrant entrant = season.named(row.player()).orElseThrow();
                if (entrant.in() && place < season.rules().qualifiers()) {
                    place++;
                    candidates.add(new Candidate(entrant, place, row.record()));
                }
            }
        }
        Map<String, Integer> lots = season.ranking().lots();
        candidates.sort(Comparator.comparingInt(Candidate::place)
                .thenComparing((one, other) -> Long.compare(
                        (long) other.record().points() * one.record().games(),
                        (long) one.record().points() * other.record().games()))
                .thenComparing(
                        one -> Objects.requireNonNull(lots.get(one.entrant().name()))));
        return candidates.stream().map(Candidate::entrant).toList();
    }

    private record Candidate(Entrant entrant, int place, Standings.Played record) {}

    /** The bracket as far as it has been played; empty before there is a play-off. */
    public static Optional<Bracket> bracket(Season season) {
        Map<Integer, Entrant> bySeed = bySeed(season);
        if (bySeed.size() < 2) {
            return Optional.empty();
        }
        Bracket bracket = Bracket.of(bySeed.size());
        // Round by round: who won a later match is only asked once those who meet in it are settled.
        for (SeasonMatch match : season.matches(Stage.PLAY_OFF)) {
            Match at = new Match(match.week(), match.place());
            boolean there = at.round() <= bracket.rounds() && at.number() <= bracket.size() >> at.round();
            if (there && match.fixed() && fits(bracket.sides(at), match, bySeed)) {
                bracket = bracket.with(at, seed(season, winner(season, match)));
            }
        }
        return Optional.of(bracket);
    }

    private static Map<Integer, Entrant> bySeed(Season season) {
        Map<Integer, Entrant> bySeed = new HashMap<>();
        season.entrants().stream().filter(one -> one.seed() > 0).forEach(one -> bySeed.put(one.seed(), one));
        return bySeed;
    }

    /** Who stands at a place of the bracket; empty while that is open. */
    public static Optional<Entrant> at(Season season, Place place) {
        return place instanceof Place.Seed seed
                ? Optional.ofNullable(bySeed(season).get(seed.seed()))
                : Optional.empty();
    }

    private static boolean fits(Sides sides, SeasonMatch match, Map<Integer, Entrant> bySeed) {
        return sides.upper() instanceof Place.Seed upper
                && sides.lower() instanceof Place.Seed lower
                && match.has(Objects.requireNonNull(bySeed.get(upper.seed())).id())
                && match.has(Objects.requireNonNull(bySeed.get(lower.seed())).id());
    }

    private static int seed(Season season, String entrant) {
        return season.entrant(entrant).orElseThrow().seed();
    }

    /**
     * Who goes on from a match that is settled: who took more league points in it; of equal, who threw more points in it, a
     * head start included; of equal, the better seed.
     */
    public static String winner(Season season, SeasonMatch match) {
        MatchResult result = season.result(match)
                .orElseThrow(() -> new IllegalArgumentException("match " + match.id() + " is not settled"));
        int sign = result.sign(season.rules().points());
        if (sign == 0) {
            int first = 0;
            int second = 0;
            for (GameTotals game : result.games()) {
                first += game.first() + game.headStart();
                second += game.second();
            }
            sign = Integer.compare(first, second);
        }
        if (sign == 0) {
            sign = Integer.compare(seed(season, match.second()), seed(season, match.first()));
        }
        return sign > 0 ? match.first() : match.second();
    }

    /**
     * The season with the matches of the play-off as they follow from what is settled: those that can be thrown now are
     * added, the better seed named first; those whose players have changed, or are open again, begin anew. A match of somebody
     * who has left goes to the other by forfeit.
     *
     * @param ids ids for new matches
     */
    static Season advanced(Season season, Supplier<String> ids) {
        Season now = season;
        while (true) {
            Season next = once(now, ids);
            if (next.matches().equals(now.matches())) {
                return next;
            }
            now = next;
        }
    }

    private static Season once(Season season, Supplier<String> ids) {
        Optional<Bracket> found = bracket(season);
        if (found.isEmpty()) {
            // The play-off was taken back, and with it all that was thrown in it.
            return season.with(
                    season.entrants(),
                    season.matches().stream()
                            .filter(match -> match.stage() == Stage.LEAGUE)
                            .toList());
        }
        Bracket bracket = found.get();
        Map<Integer, Entrant> bySeed = bySeed(season);
        Map<Match, SeasonMatch> there = new HashMap<>();
        List<SeasonMatch> matches = new ArrayList<>();
        for (SeasonMatch match : season.matches()) {
            if (match.stage() == Stage.PLAY_OFF) {
                there.put(new Match(match.week(), match.place()), match);
            } else {
                matches.add(match);
            }
        }
        for (int round = 1; round <= bracket.rounds(); round++) {
            for (Match at : bracket.matches(round)) {
                if (bracket.sides(at).upper() instanceof Place.Seed one
                        && bracket.sides(at).lower() instanceof Place.Seed other) {
                    Entrant better = Objects.requireNonNull(bySeed.get(Math.min(one.seed(), other.seed())));
                    Entrant worse = Objects.requireNonNull(bySeed.get(Math.max(one.seed(), other.seed())));
                    matches.add(match(at, there.get(at), better, worse, ids));
                }
            }
        }
        return season.with(season.entrants(), matches);
    }

    private static SeasonMatch match(
            Match at,
            @org.jspecify.annotations.Nullable SeasonMatch there,
            Entrant better,
            Entrant worse,
            Supplier<String> ids) {
        SeasonMatch match = there == null
                ? SeasonMatch.open(ids.get(), Stage.PLAY_OFF, 0, at.round(), at.number(), better.id(), worse.id())
                : there.has(better.id()) && there.has(worse.id()) ? there : there.between(better.id(), worse.id());
        if (!match.fixed() && !(better.in() && worse.in())) {
            return match.forfeited(SeasonChanges.award(match, better.in(), worse.in(), better.id()));
        }
        return match;
    }
}
