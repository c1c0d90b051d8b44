package boardside.app.season;

import org.jspecify.annotations.Nullable;

/**
 * A change of a season as it lies in the store.
 *
 * @param season id of the season
 * @param earlier JSON of the parts before
 * @param later JSON of the parts after
 * @param undoneAt when it was undone, ISO-8601, or null
 */
public record StoredSeasonChange(
        String season,
        String id,
        String at,
        SeasonChange.Kind what,
        String earlier,
        String later,
        @Nullable String undoneAt) {}
