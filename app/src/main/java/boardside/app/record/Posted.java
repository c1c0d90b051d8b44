package boardside.app.record;

import boardside.app.practice.Fixture;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A fixture or its results as somebody wrote them, to be held against what is known of the league.
 *
 * @param week number of the week, or 0 where none was said
 * @param deadline yyyy-mm-ddThh:mm on the league's clocks, or null where none was said
 * @param games totals by game; empty where none were said
 */
public record Posted(
        int week, String first, String second, @Nullable String deadline, List<Fixture.Totals> games) {
    /** List copied. */
    public Posted {
        games = List.copyOf(games);
    }
}
