package boardside.app.record;

import boardside.app.practice.Challenge;
import boardside.app.practice.Failure;
import boardside.app.practice.Feat;
import boardside.app.practice.Ids;
import boardside.app.practice.Run;
import boardside.app.store.Database;
import boardside.app.store.Transaction;
import boardside.engine.rules.Finish;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Challenges that were taken up, and what became of them. Thread safe. */
public final class Challenges {
    private final Database database;
    private final Ids ids;

    Challenges(Database database, Ids ids) {
        this.database = database;
        this.ids = ids;
    }

    /** What became of a challenge. */
    public enum Outcome {
        /** Its run is still open and may do it yet. */
        OPEN,
        /** Done. */
        DONE,
        /** The run is over, or can no longer do it. */
        MISSED
    }

    /**
     * A challenge with what became of it.
     *
     * @param reached how many of what it counts, so far; null in a race
     */
    public record Told(
            Challenge challenge, Outcome outcome, @Nullable Integer reached) {}

    /**
     * Keeps that a challenge is taken up with a run that exists.
     *
     * @param challenge its id is given here
     */
    public Challenge take(int player, Challenge challenge) {
        return database.write(rows -> {
            if (!rows.players().changed(player)) {
                throw new Failure.NotFound("there is no player " + player);
            }
            Challenge taken = new Challenge(
                    ids.next(),
                    challenge.day(),
                    challenge.kind(),
                    challenge.rounds(),
                    challenge.ghost(),
                    challenge.need(),
                    challenge.chance(),
                    challenge.low(),
                    challenge.high(),
                    challenge.run());
            rows.challenges().add(player, taken);
            return taken;
        });
    }

    /** The challenge a run was started for, with what became of it. */
    public Optional<Told> of(int player, String run) {
        return database.read(rows -> rows.challenges().of(player, run).map(one -> told(rows, player, one)));
    }

    /** The latest challenges, the newest first; those whose run was deleted are left out. */
    public List<Told> latest(int player, int most) {
        return database.read(rows -> rows.challenges().latest(player, most).stream()
                .map(one -> told(rows, player, one))
                .toList());
    }

    private static Told told(Transaction rows, int player, Challenge challenge) {
        Run run = rows.runs().find(player, challenge.run()).orElseThrow();
        Run.Sum sum = run.sum();
        boolean over = !run.open();
        if (challenge.kind() == Challenge.Kind.RACE) {
            Boolean won = rows.feats().of(player, run.id()).map(Feat::won).orElse(null);
            Outcome outcome = won == null ? over ? Outcome.MISSED : Outcome.OPEN : won ? Outcome.DONE : Outcome.MISSED;
            return new Told(challenge, outcome, null);
        }
        int[] ends = rows.tallies().ends(player, run.id());
        Integer points = sum.points();
        int reached = switch (challenge.kind()) {
            case POINTS -> points == null ? 0 : points;
            case BAGS_IN -> sum.in();
            case FEW_OFF -> ends[0];
            case FOUR_BAGGERS -> ends[1];
            case RACE -> 0;
        };
        boolean whole = sum.rounds() >= challenge.rounds() && sum.thrown() >= Finish.BAGS * challenge.rounds();
        Outcome outcome;
        if (challenge.kind() == Challenge.Kind.FEW_OFF) {
            outcome = reached > challenge.need()
                    ? Outcome.MISSED
                    : whole ? Outcome.DONE : over ? Outcome.MISSED : Outcome.OPEN;
        } else {
            outcome = reached >= challenge.need() ? Outcome.DONE : whole || over ? Outcome.MISSED : Outcome.OPEN;
        }
        return new Told(challenge, outcome, reached);
    }
}
