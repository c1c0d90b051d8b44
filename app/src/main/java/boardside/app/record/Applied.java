package boardside.app.record;

/** What became of one operation. */
public sealed interface Applied {
    /** Id of the operation. */
    String op();

    /** It is on disk. */
    record Stored(String op) implements Applied {}

    /** Nothing to do: it, or a later one on the same thing, had been applied before. */
    record Repeated(String op) implements Applied {}

    /** It breaks a rule; nothing of it was stored. The message says which, and what to do. */
    record Refused(String op, String message) implements Applied {}
}
