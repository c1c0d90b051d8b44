package boardside.engine.league;

import boardside.engine.league.MatchResult.Award;
import boardside.engine.odds.LeaguePoints;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToIntFunction;

/**
 * A league's table. The order of results never matters. Immutable.
 *
 * <p>Players are ordered by league points. Those with equally many are told apart by the tie-breaks, one after the other:
 * each splits what the one before it left equal, and head to head counts the games among exactly those still equal when its
 * turn comes; it is not asked again among fewer. Whom nothing tells apart are put in order by lot where lots were drawn, else
 * they share a place and stand by name.
 *
 * @param rows the first place first
 */
public record Standings(List<Row> rows) {
    /** List copied. */
    public Standings {
        rows = List.copyOf(rows);
    }

    /**
     * One player's line.
     *
     * @param place 1 or more; the same for all who share it, and the next place after them is as far on as there are of them
     * @param player the name
     * @param record what they have played
     * @param reason why they stand below the line above
     */
    public record Row(int place, String player, Played record, Reason reason) {}

    /**
     * What somebody has played.
     *
     * @param games games with both totals known, and games that went by forfeit
     * @param thrown points thrown in them, without any head start
     * @param against points thrown against
     * @param matchWins matches in which they took more league points than the other side
     * @param forfeits games lost by forfeit
     */
    public record Played(
            int games, int won, int tied, int lost, int points, int thrown, int against, int matchWins, int forfeits) {
        private static final Played NOTHING = new Played(0, 0, 0, 0, 0, 0, 0, 0, 0);

        /** Points thrown less points thrown against. */
        public int difference() {
            return thrown - against;
        }

        private Played plus(MatchResult match, LeaguePoints worth) {
            Played after = this;
            for (GameTotals game : match.games()) {
                after = after.plus(game.sign(), game.points(worth), game.first(), game.second(), 0);
            }
            for (Award award : match.awards()) {
                boolean mine = award == Award.FIRST;
                after = after.plus(mine ? 1 : -1, mine ? worth.win() : 0, 0, 0, mine ? 0 : 1);
            }
            return match.sign(worth) > 0 ? after.matchWon() : after;
        }

        private Played plus(int sign, int worth, int mine, int theirs, int forfeited) {
            return new Played(
                    games + 1,
                    won + (sign > 0 ? 1 : 0),
                    tied + (sign == 0 ? 1 : 0),
                    lost + (sign < 0 ? 1 : 0),
                    points + worth,
                    thrown + mine,
                    against + theirs,
                    matchWins,
                    forfeits + forfeited);
        }

        private Played matchWon() {
            return new Played(games, won, tied, lost, points, thrown, against, matchWins + 1, forfeits);
        }
    }

    /** Why a line stands below the one above it. */
    public sealed interface Reason {
        /** Nobody is above. */
        record Top() implements Reason {}

        /** Fewer league points. */
        record Points(int above, int here) implements Reason {}

        /** As many league points, but less in a tie-break; of forfeits, more are less, so that both are 0 or negative. */
        record Broken(TieBreak by, int above, int here) implements Reason {}

        /** Nothing but the lot tells them apart. */
        record Lot() implements Reason {}

        /** Nothing tells them apart: they share the place. */
        record Level() implements Reason {}
    }

    /**
     * The table.
     *
     * @param players all who take part; those in results are added
     * @param results in any order
     */
    public static Standings of(Set<String> players, Collection<MatchResult> results, Ranking ranking) {
        LeaguePoints worth = ranking.worth();
        Map<String, Played> played = played(players, results, worth);
        List<Row> rows = new ArrayList<>();
        List<Group> groups = split(
                new Group(new TreeSet<>(played.keySet()), new Reason.Top()),
                player -> record(played, player).points(),
                Reason.Points::new);
        for (TieBreak by : ranking.tieBreaks()) {
            List<Group> next = new ArrayList<>();
            for (Group group : groups) {
                // Whoever is alone needs no telling apart, and most are.
                next.addAll(
                        group.players().size() == 1
                                ? List.of(group)
                                : split(
                                        group,
                                        measure(by, group.players(), results, worth, played),
                                        (above, here) -> new Reason.Broken(by, above, here)));
            }
            groups = next;
        }
        List<Group> drawn = new ArrayList<>();
        for (Group group : groups) {
            drawn.addAll(split(
                    group,
                    player -> -ranking.lots().getOrDefault(player, Integer.MAX_VALUE),
                    (above, here) -> new Reason.Lot()));
        }
        for (Group group : drawn) {
            int place = rows.size() + 1;
            Reason reason = group.reason();
            for (String player : group.players()) {
                rows.add(new Row(place, player, record(played, player), reason));
                reason = new Reason.Level();
            }
        }
        return new Standings(rows);
    }

    private static Map<String, Played> played(
            Set<String> players, Collection<MatchResult> results, LeaguePoints worth) {
        Map<String, Played> played = new TreeMap<>();
        players.forEach(player -> played.put(player, Played.NOTHING));
        for (MatchResult result : results) {
            played.putIfAbsent(result.first(), Played.NOTHING);
            played.putIfAbsent(result.second(), Played.NOTHING);
            played.put(result.first(), record(played, result.first()).plus(result, worth));
            played.put(result.second(), record(played, result.second()).plus(result.turned(), worth));
        }
        return played;
    }

    private static Played record(Map<String, Played> played, String player) {
        return played.getOrDefault(player, Played.NOTHING);
    }

    /** Players whom nothing has told apart so far, by name, and why they stand below the group above. */
    private record Group(TreeSet<String> players, Reason reason) {}

    private interface Why {
        Reason of(int above, int here);
    }

    /** A group split by a measure, the most first; the first part keeps the group's reason. */
    private static List<Group> split(Group group, ToIntFunction<String> measure, Why why) {
        TreeMap<Integer, TreeSet<String>> byMeasure = new TreeMap<>();
        for (String player : group.players()) {
            byMeasure
                    .computeIfAbsent(measure.applyAsInt(player), value -> new TreeSet<>())
                    .add(player);
        }
        List<Group> parts = new ArrayList<>();
        int above = 0;
        for (Map.Entry<Integer, TreeSet<String>> part :
                byMeasure.descendingMap().entrySet()) {
            parts.add(new Group(part.getValue(), parts.isEmpty() ? group.reason() : why.of(above, part.getKey())));
            above = part.getKey();
        }
        return parts;
    }

    private static ToIntFunction<String> measure(
            TieBreak by,
            Set<String> equal,
            Collection<MatchResult> results,
            LeaguePoints worth,
            Map<String, Played> played) {
        return switch (by) {
            case HEAD_TO_HEAD -> {
                List<MatchResult> among = results.stream()
                        .filter(result -> equal.contains(result.first()) && equal.contains(result.second()))
                        .toList();
                Map<String, Played> mutual = played(equal, among, worth);
                yield player -> record(mutual, player).points();
            }
            case MATCH_WINS -> player -> record(played, player).matchWins();
            case WINS -> player -> record(played, player).won();
            case DIFFERENCE -> player -> record(played, player).difference();
            case THROWN -> player -> record(played, player).thrown();
            case FORFEITS -> player -> -record(played, player).forfeits();
        };
    }
}
