package boardside.app.record;

import boardside.app.practice.Change;
import org.jspecify.annotations.Nullable;

/**
 * An entry of the history as it lies in the store.
 *
 * @param subject id of the run, session or bag set concerned
 * @param earlier JSON of the thing before, or empty where it did not exist
 * @param later JSON of the thing after, or empty
 * @param undoneAt when it was undone, ISO-8601, or null
 */
public record StoredChange(
        String id,
        String at,
        Change.Kind what,
        String subject,
        String earlier,
        String later,
        @Nullable String undoneAt) {}
