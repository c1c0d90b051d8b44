package boardside.app.season;

import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A season without those who play in it and their matches; see {@link Season}. */
public record SeasonSettings(
        String id,
        String name,
        SeasonRules rules,
        Weeks weeks,
        List<String> divisions,
        @Nullable LocalDateTime playOffStarts,
        boolean open,
        long seed,
        String note,
        boolean deleted) {
    /** List copied. */
    public SeasonSettings {
        divisions = List.copyOf(divisions);
    }

    /** Those of a season. */
    public static SeasonSettings of(Season season) {
        return new SeasonSettings(
                season.id(),
                season.name(),
                season.rules(),
                season.weeks(),
                season.divisions(),
                season.playOffStarts(),
                season.open(),
                season.seed(),
                season.note(),
                season.deleted());
    }

    /** The season with its players and matches. */
    public Season with(List<Entrant> entrants, List<SeasonMatch> matches) {
        return new Season(
                id, name, rules, weeks, divisions, entrants, matches, playOffStarts, open, seed, note, deleted);
    }
}
