package boardside.app.practice;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import boardside.engine.trial.TrialDesign;
import java.util.HashSet;
import java.util.List;

/**
 * A trial as it was set up: which ways to throw are compared, and how long at most.
 *
 * @param id any non-blank text, unique for the player; empty for a new one
 * @param name what it is called
 * @param candidates ways to throw, 2..8, each once; numbered from 0 in this order
 * @param board the kind of board it is thrown at
 * @param longest blocks after which it ends, one of {@link TrialDesign#LENGTHS}
 * @param margin points a round within which candidates count as equal
 * @param seed where the order of its blocks comes from
 * @param madeAt ISO-8601
 * @param state whether it is thrown
 * @param deleted whether it was deleted (and can be brought back)
 */
public record TrialPlan(
        String id,
        String name,
        List<Contest.Way> candidates,
        BoardKind board,
        int longest,
        double margin,
        long seed,
        String madeAt,
        State state,
        boolean deleted) {
    /** Whether a trial is thrown. */
    public enum State implements Word {
        /** It is, until it is decided. */
        OPEN,
        /** Laid aside, to go on later. */
        PAUSED,
        /** Given up before its end. */
        STOPPED
    }

    /**
     * Checked, list copied.
     *
     * @throws IllegalArgumentException if candidates repeat, or a number is outside its range
     */
    public TrialPlan {
        candidates = List.copyOf(candidates);
        if (new HashSet<>(candidates).size() < candidates.size()) {
            throw new IllegalArgumentException("two candidates are thrown the same way; change one or leave it out");
        }
        new TrialDesign(candidates.size(), longest, margin, seed);
    }

    /** What the engine is told of it. */
    public TrialDesign design() {
        return new TrialDesign(candidates.size(), longest, margin, seed);
    }

    /** The same under another id and name. */
    public TrialPlan with(String otherId, String otherName) {
        return new TrialPlan(otherId, otherName, candidates, board, longest, margin, seed, madeAt, state, deleted);
    }

    /** The same under another name. */
    public TrialPlan named(String other) {
        return with(id, other);
    }

    /** The same, open, paused or stopped. */
    public TrialPlan with(State other) {
        return new TrialPlan(id, name, candidates, board, longest, margin, seed, madeAt, other, deleted);
    }

    /** The same, deleted or brought back. */
    public TrialPlan deleted(boolean gone) {
        return new TrialPlan(id, name, candidates, board, longest, margin, seed, madeAt, state, gone);
    }
}
