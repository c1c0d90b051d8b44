package boardside.app.record;

import boardside.app.practice.Board;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.Moment;
import boardside.app.practice.Operation;
import boardside.app.practice.Run;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.app.store.Transaction;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Applies what is tried at targets and in situations, within one transaction. Every check comes before the first write. */
final class TryRecording {
    private static final int LONGEST_NAME = 60;
    private static final Set<String> MISSES = Set.of("", "left", "right", "short", "long");

    private final Transaction rows;
    private final int player;
    private final Corrections corrections;
    private final String now;

    TryRecording(Transaction rows, int player, Corrections corrections, String now) {
        this.rows = rows;
        this.player = player;
        this.corrections = corrections;
        this.now = now;
    }

    /**
     * Sets a try of a run, keeping what it replaces.
     *
     * @return whether anything changed
     * @throws IllegalArgumentException if the try breaks a rule
     */
    boolean put(Run run, Try tried) {
        Optional<Try> stored = rows.tries().find(player, run.id(), tried.number());
        if (stored.isPresent() && tried.op().compareTo(stored.get().op()) <= 0) {
            return false;
        }
        if (run.drill() != Drill.PLACEMENT && run.drill() != Drill.SITUATION) {
            throw new IllegalArgumentException(
                    "a " + run.drill().word() + " has rounds, not tries; tries belong to a placement or situation run");
        }
        Try.Played played = tried.played();
        if (played != null) {
            try {
                check(run.drill(), played);
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException("try " + tried.number() + ": " + e.getMessage(), e);
            }
            checkEnd(run, tried);
        }
        if (stored.isPresent()
                && stored.get().played() != null
                && !stored.get().played().equals(played)) {
            corrections.keepTry(rows, player, run.id(), stored.get(), tried, now);
        }
        rows.tries().put(player, run.id(), tried);
        return true;
    }

    /** No try follows the one with which sudden death ends the run. */
    private void checkEnd(Run run, Try tried) {
        Stakes stakes = run.setup().stakes();
        if (stakes == null || stakes.misses() == null) {
            return;
        }
        List<Try> tries =
                new ArrayList<>(rows.tries().of(player, List.of(run.id())).getOrDefault(run.id(), List.of()));
        tries.removeIf(other -> other.number() == tried.number());
        tries.add(tried);
        tries.sort(Comparator.comparingInt(Try::number));
        int end = TryStanding.after(run.setup(), tries).end();
        OptionalInt beyond = tries.stream()
                .filter(other -> other.played() != null && other.number() > end)
                .mapToInt(Try::number)
                .findFirst();
        if (end > 0 && beyond.isPresent()) {
            throw new IllegalArgumentException("sudden death ends the run with try " + end + ", so try "
                    + beyond.getAsInt() + " cannot be thrown; start another run for it");
        }
    }

    private void check(Drill drill, Try.Played played) {
        Try.How how = played.how();
        double width = Board.usualWidth(how.board());
        if (!played.position().on(width)) {
            throw new IllegalArgumentException(
                    "a bag lies beside the " + how.board().word() + " board; take it away or choose the other board");
        }
        if (!how.bag().isEmpty() && rows.players().bag(player, how.bag()).isEmpty()) {
            throw new IllegalArgumentException("there is no bag set " + how.bag() + "; name it first");
        }
        if (!played.at().isEmpty()) {
            Moment.of(played.at());
        }
        Target target = played.target();
        if (drill == Drill.PLACEMENT && target == null) {
            throw new IllegalArgumentException("a placement needs a target; call depth and lane");
        }
        Try.Rest rest = played.rest();
        if (rest == null) {
            return;
        }
        Spot spot = rest.spot();
        if (!MISSES.contains(rest.miss()) || !rest.miss().isEmpty() && rest.outcome() != Outcome.OFF) {
            throw new IllegalArgumentException("a bag that is off went left, right, short or long, not \"" + rest.miss()
                    + "\"; others went nowhere");
        }
        if (spot != null && Math.abs(spot.x()) > width / 2) {
            throw new IllegalArgumentException(
                    "a bag at " + spot.x() + " is off the " + how.board().word() + " board");
        }
        if (drill == Drill.PLACEMENT && target != null) {
            boolean there = spot != null && target.holds(spot, width);
            boolean told = rest.outcome() != Outcome.ON || spot != null;
            if (told && there != played.worked()) {
                throw new IllegalArgumentException("the bag lies " + (there ? "" : "not ") + "in " + target.text()
                        + ", so the try " + (there ? "worked" : "did not work"));
            }
        }
    }

    /**
     * Keeps a situation, and what it replaces.
     *
     * @return whether anything changed
     */
    boolean keep(Operation.KeepSituation keep) {
        if (keep.situation().isBlank()) {
            throw new IllegalArgumentException("a situation needs an id");
        }
        String name = keep.name().strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException(
                    "a situation's name has 1 to " + LONGEST_NAME + " characters, in one line");
        }
        Optional<KeptSituation> stored = rows.situations().find(player, keep.situation());
        if (stored.isPresent() && keep.op().compareTo(stored.get().op()) <= 0) {
            return false;
        }
        KeptSituation later = new KeptSituation(keep.situation(), keep.op(), name, keep.position(), keep.retired());
        if (stored.isPresent()) {
            corrections.keepSituation(rows, player, stored.get(), later, now);
        }
        rows.situations().put(player, later);
        return true;
    }
}
