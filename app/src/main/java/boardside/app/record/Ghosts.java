package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.app.practice.GhostPlay;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.TypicalPlayer;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** Ghosts whose points change from round to round: their rounds are fixed here, before a run starts. */
public final class Ghosts {
    /** Full rounds that make a day one to race against. */
    public static final int LEAST_ROUNDS = 10;

    private Ghosts() {}

    /**
     * How such a ghost plays in a run. The same run always meets the same ghost.
     *
     * @param of the level (0..12), the month (yyyy-mm) or the day (yyyy-mm-dd)
     * @param run id of the run
     * @throws Failure.BadInput if there is no such level, month or day, or it holds no full rounds
     */
    public static GhostPlay play(Records records, int player, GhostPlay.Kind kind, String of, String run) {
        SplittableRandom random = new SplittableRandom(seed(run));
        List<Integer> points = switch (kind) {
            case LEVEL -> drawn(of, random);
            case MONTH -> {
                YearMonth month = month(of);
                List<Integer> rounds = new ArrayList<>(records.roundPoints(
                        player, month.atDay(1).toString(), month.atEndOfMonth().toString()));
                // From a place in the month that differs from race to race, then round for round.
                if (!rounds.isEmpty()) {
                    Collections.rotate(rounds, -random.nextInt(rounds.size()));
                }
                yield rounds;
            }
            case DAY -> records.roundPoints(player, of, of);
        };
        if (points.isEmpty()) {
            throw new Failure.BadInput("there are no full rounds of yours from " + of + " to race against");
        }
        return new GhostPlay(kind, of, points.subList(0, Math.min(GhostPlay.MOST_ROUNDS, points.size())));
    }

    private static List<Integer> drawn(String level, SplittableRandom random) {
        RoundDistribution player;
        try {
            player = RoundDistribution.of(TypicalPlayer.ofLevel(Integer.parseInt(level)));
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput("a ghost's level is a whole number from 0 to 12, not " + level);
        }
        List<Integer> points = new ArrayList<>();
        for (int round = 0; round < GhostPlay.MOST_ROUNDS; round++) {
            points.add(player.draw(random));
        }
        return points;
    }

    private static YearMonth month(String text) {
        try {
            return YearMonth.parse(text);
        } catch (DateTimeException e) {
            throw new Failure.BadInput("\"" + text + "\" is no month; write it like 2026-05");
        }
    }

    private static long seed(String run) {
        long seed = 0;
        for (char letter : run.toCharArray()) {
            seed = 31 * seed + letter;
        }
        return seed;
    }

    /** The day with the most points a round, among those with at least ten full rounds; of equal ones the latest. */
    public static Optional<LocalDate> bestDay(Records records, int player, LocalDate asOf) {
        return records.bestDay(player, asOf.toString(), LEAST_ROUNDS).map(LocalDate::parse);
    }
}
