package boardside.app.practice;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Somebody who may sign in, with players of their own.
 *
 * @param id of the account
 * @param name to sign in with; unique, whatever its case
 * @param role what it may do
 * @param madeAt when its invitation was taken
 * @param closedAt since when it may not sign in, or null
 */
public record Account(
        String id,
        String name,
        Role role,
        Instant madeAt,
        @Nullable Instant closedAt) {
    public boolean closed() {
        return closedAt != null;
    }
}
