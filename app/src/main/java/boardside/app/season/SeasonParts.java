package boardside.app.season;

import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Parts of a season that differ from those of another state of it.
 *
 * @param settings null where they do not differ
 */
public record SeasonParts(@Nullable SeasonSettings settings, List<Entrant> entrants, List<SeasonMatch> matches) {
    /** Lists copied. */
    public SeasonParts {
        entrants = List.copyOf(entrants);
        matches = List.copyOf(matches);
    }

    /**
     * What one state has that the other has not, or has otherwise. Which player of the store an entrant is, is left out: these
     * parts may be put back into another store, where players have other numbers.
     */
    public static SeasonParts of(Season one, Season other) {
        SeasonSettings settings = SeasonSettings.of(one);
        return new SeasonParts(
                settings.equals(SeasonSettings.of(other)) ? null : settings,
                differing(one.entrants(), other.entrants(), Entrant::id).stream()
                        .map(entrant -> entrant.playedBy(null))
                        .toList(),
                differing(one.matches(), other.matches(), SeasonMatch::id));
    }

    private static <T> List<T> differing(List<T> ones, List<T> others, Function<T, String> id) {
        Map<String, T> byId = byId(others, id);
        return ones.stream().filter(one -> !one.equals(byId.get(id.apply(one)))).toList();
    }

    private static <T> Map<String, T> byId(List<T> all, Function<T, String> id) {
        Map<String, T> byId = new LinkedHashMap<>();
        all.forEach(one -> byId.put(id.apply(one), one));
        return byId;
    }

    /** The same parts with an entrant under another name throughout. */
    public SeasonParts renamed(String entrant, String name) {
        return new SeasonParts(
                settings,
                entrants.stream()
                        .map(one -> one.id().equals(entrant) ? one.named(name) : one)
                        .toList(),
                matches);
    }

    /** Whether nothing differs. */
    public boolean none() {
        return settings == null && entrants.isEmpty() && matches.isEmpty();
    }

    /**
     * A season with these parts as they are here.
     *
     * @param season the season, in which these parts may be otherwise
     * @param instead the same parts as they were put in when these went: what is only there is taken out
     */
    public Season into(Season season, SeasonParts instead) {
        SeasonSettings kept = settings == null ? SeasonSettings.of(season) : settings;
        return kept.with(
                put(season.entrants(), entrants, instead.entrants(), Entrant::id).stream()
                        .map(entrant -> season.entrant(entrant.id())
                                .map(now -> entrant.playedBy(now.player()))
                                .orElse(entrant))
                        .toList(),
                put(season.matches(), matches, instead.matches(), SeasonMatch::id));
    }

    private static <T> List<T> put(List<T> all, List<T> here, List<T> instead, Function<T, String> id) {
        Map<String, T> byId = byId(all, id);
        instead.forEach(one -> byId.remove(id.apply(one)));
        Map<String, T> back = byId(here, id);
        List<T> put = new ArrayList<>();
        // Each at the place it has, so that what is as before is in the order of before.
        for (T one : all) {
            T was = back.remove(id.apply(one));
            T kept = was == null ? byId.get(id.apply(one)) : was;
            if (kept != null) {
                put.add(kept);
            }
        }
        put.addAll(back.values());
        return put;
    }
}
