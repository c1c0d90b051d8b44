package boardside.engine.plan;

/**
 * What practice makes better. Blocks of one theme never follow each other in a session: that would be one longer block.
 *
 * @param kind what it is
 * @param detail the word of the shot where the kind is {@link Kind#SHOT}, else empty
 */
public record Theme(Kind kind, String detail) {
    /** Kinds of theme. */
    public enum Kind {
        /** Kept bags that go in. */
        FINISH,
        /** Bags kept on the board or in. */
        CONTROL,
        /** The same when a game hangs on it. */
        PRESSURE,
        /** Bags put where they are called. */
        PLACEMENT,
        /** One shot at bags set up. */
        SHOT,
        /** Which bag, face or approach to throw. */
        TRIAL,
        /** How today's boards play. */
        BOARDS
    }

    static Theme of(Kind kind) {
        return new Theme(kind, "");
    }

    /** The theme of a shot. */
    static Theme shot(String word) {
        return new Theme(Kind.SHOT, word);
    }
}
