package boardside.app.practice;

import boardside.engine.rules.Word;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A link that works once.
 *
 * @param id of the ticket
 * @param kind what it is for
 * @param role that an invitation gives
 * @param note for whom an invitation was made, as whoever made it noted; may be empty
 * @param account whose password a reset sets; null for an invitation
 * @param madeAt when it was made
 * @param until when it ends, that instant not included
 */
public record Ticket(
        String id,
        Kind kind,
        Role role,
        String note,
        @Nullable String account,
        Instant madeAt,
        Instant until) {
    /** What a ticket is for. */
    public enum Kind implements Word {
        /** A new account. */
        INVITATION,
        /** A new password. */
        RESET
    }
}
