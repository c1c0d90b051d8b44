package boardside.app.record;

import boardside.app.practice.Contest;
import boardside.app.practice.Feat;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.store.Transaction;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Game;
import boardside.engine.rules.Side;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Writes anew what is derived from the rounds of a run, in the transaction that changed them. */
final class Deriving {
    private static final int TWENTY_BAGS = 5;

    private Deriving() {}

    static void refresh(Transaction rows, int player, Run run, List<Round> rounds) {
        refresh(rows, player, run, rounds, false);
    }

    /** @param grown whether rounds were only added since it last was */
    static void refresh(Transaction rows, int player, Run run, List<Round> rounds, boolean grown) {
        rows.tallies().refresh(player, run.id(), rounds, grown);
        rows.feats().put(player, run.id(), feat(run, rounds));
    }

    /** Works out what a store from before this was kept does not know, all of it or nothing. */
    static void fillIn(Transaction rows) {
        Snapshot snapshot = new Snapshot(rows);
        snapshot.players()
                .forEach(player -> snapshot.eachRun(
                        player.id(),
                        stored -> rows.feats()
                                .put(
                                        player.id(),
                                        stored.run().id(),
                                        feat(
                                                stored.run(),
                                                stored.rounds().stream()
                                                        .map(StoredRun.StoredRound::round)
                                                        .toList()))));
    }

    /** What a run did. */
    static Feat feat(Run run, List<Round> rounds) {
        int streak = 0;
        Integer twenty = null;
        for (List<Round> side : rounds.stream()
                .filter(round -> round.side().mine() && round.bags() > 0)
                .sorted(Comparator.comparingInt(Round::number))
                .collect(Collectors.groupingBy(Round::side))
                .values()) {
            streak = Math.max(streak, streak(side));
            twenty = more(twenty, twenty(side));
        }
        return new Feat(streak, twenty, won(run, rounds), run.drill().needsGhost() ? ghost(rounds) : null);
    }

    /**
     * Whether the player won a game that its rounds show to its end. A duel with oneself has no winner to speak of, and
     * with a head start a game is shorter; final scores that were only told are no feat of the rounds.
     */
    private static @Nullable Boolean won(Run run, List<Round> rounds) {
        if (!Games.played(run.drill())) {
            return null;
        }
        Contest contest = Games.contest(run, rounds);
        if (!run.drill().needsGhost() && (contest.alone() || contest.headStart() > 0)) {
            return null;
        }
        Game game = Games.after(run, rounds).game();
        return game.over() ? (Boolean) (game.result() == Game.Result.WON) : null;
    }

    private static @Nullable Integer more(@Nullable Integer one, @Nullable Integer other) {
        return one == null ? other : other == null ? one : (Integer) Math.max(one, other);
    }

    /** Points of a full round of four, all counted; else null. */
    private static @Nullable Integer full(Round round) {
        return round.bags() == Finish.BAGS ? round.points() : null;
    }

    private static int streak(List<Round> rounds) {
        int longest = 0;
        int now = 0;
        for (Round round : rounds) {
            Integer points = full(round);
            now = points != null && points == 3 * Finish.BAGS ? now + 1 : 0;
            longest = Math.max(longest, now);
        }
        return longest;
    }

    private static @Nullable Integer twenty(List<Round> rounds) {
        Integer most = null;
        int full = 0;
        int sum = 0;
        for (int i = 0; i < rounds.size(); i++) {
            Integer points = full(rounds.get(i));
            if (points == null) {
                full = 0;
                sum = 0;
                continue;
            }
            full++;
            sum += points;
            if (full > TWENTY_BAGS) {
                Integer gone = full(rounds.get(i - TWENTY_BAGS));
                sum -= gone == null ? 0 : gone;
            }
            if (full >= TWENTY_BAGS) {
                most = more(most, sum);
            }
        }
        return most;
    }

    private static @Nullable Integer ghost(List<Round> rounds) {
        List<Integer> ghosts = rounds.stream()
                .filter(round -> round.side() == Side.ME)
                .flatMap(round -> round.lines().stream())
                .map(Line::ghost)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        return ghosts.size() == 1 ? ghosts.get(0) : null;
    }
}
