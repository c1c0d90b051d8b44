package boardside.app.record;

import boardside.app.practice.GhostPlay;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.engine.odds.Climb;
import boardside.engine.rules.Game;
import java.util.List;
import java.util.OptionalInt;

/**
 * Where a player's climbs have led; found in the records each time, so that an import, a correction or a deletion moves
 * the rung. Warm-ups are left out.
 *
 * @param races the latest first, at most 200
 */
public record Ladder(List<Race> races) {
    /** List copied. */
    public Ladder {
        races = List.copyOf(races);
    }

    /**
     * One race of the climb.
     *
     * @param run id of the run
     * @param day yyyy-mm-dd
     * @param ghost the rung, 0..12
     * @param result won, lost, or open where it was left unfinished
     */
    public record Race(String run, String day, int ghost, Game.Result result) {}

    private static final int MOST = 200;
    private static final int FEW = 3;

    /** A player's ladder. */
    public static Ladder of(Records records, int player) {
        return of(records, player, MOST);
    }

    /** The rung of a player's next race, where that is all that is asked; empty before the first was finished. */
    public static OptionalInt next(Records records, int player) {
        Ladder few = of(records, player, FEW);
        return few.races().size() < FEW || few.next().isPresent()
                ? few.next()
                : of(records, player).next();
    }

    private static Ladder of(Records records, int player, int most) {
        return new Ladder(records.climbs(player, most).stream()
                .map(climb -> new Race(
                        climb.run().id(),
                        climb.session().day(),
                        rung(climb.run(), climb.rounds()),
                        Games.after(climb.run(), climb.rounds()).result()))
                .toList());
    }

    /**
     * The rung a race was thrown at: the level of a ghost that varied, else its points; where an imported ghost changed
     * from round to round, their rounded mean.
     */
    static int rung(Run run, List<Round> rounds) {
        GhostPlay play = run.setup().ghostPlay();
        Integer setUp = run.setup().ghost();
        if (play != null && setUp != null) {
            return setUp;
        }
        double mean = rounds.stream()
                .flatMap(round -> round.lines().stream())
                .map(Line::ghost)
                .filter(ghost -> ghost != null)
                .mapToInt(Integer::intValue)
                .average()
                .orElse(setUp == null ? 0 : setUp);
        return (int) Math.round(mean);
    }

    /** The latest race that somebody won. */
    public java.util.Optional<Race> latest() {
        return races.stream().filter(race -> race.result() != Game.Result.OPEN).findFirst();
    }

    /** The rung of the next race; empty before the first was finished. */
    public OptionalInt next() {
        return latest().map(race -> OptionalInt.of(Climb.next(race.ghost(), race.result() == Game.Result.WON)))
                .orElse(OptionalInt.empty());
    }
}
