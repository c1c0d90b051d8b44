package boardside.engine.plan;

import boardside.engine.rules.Drill;
import boardside.engine.rules.Word;
import java.util.Optional;

/** What a block of a session is. */
public enum Activity implements Word {
    /** Easy throws that are not counted. */
    WARM_UP(Drill.CASUAL),
    VOLUME(Drill.VOLUME),
    TOTAL(Drill.TOTAL),
    RACE(Drill.RACE),
    CLIMB(Drill.CLIMB),
    DUEL(Drill.DUEL),
    PLACEMENT(Drill.PLACEMENT),
    SITUATION(Drill.SITUATION),
    TRIAL(Drill.TRIAL),
    /** How fast today's boards are; no drill. */
    SLIDE(null),
    /** Sit down, drink. */
    BREAK(null);

    private final @org.jspecify.annotations.Nullable Drill drill;

    Activity(@org.jspecify.annotations.Nullable Drill drill) {
        this.drill = drill;
    }

    /** The drill it is a go at, if it is one. */
    public Optional<Drill> drill() {
        return Optional.ofNullable(drill);
    }
}
