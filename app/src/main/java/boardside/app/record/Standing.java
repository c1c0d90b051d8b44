package boardside.app.record;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a run is measured against: earlier finished, counted runs of the same drill with as many rounds.
 *
 * @param number of such runs with a total
 * @param best the highest total, of equal ones the latest; null without a run. In volume, the highest share of bags in
 * @param usual the median total of the latest 20, or null without a run
 * @param latest the latest few, the newest first
 */
public record Standing(
        int number, @Nullable Result best, @Nullable Double usual, List<Result> latest) {
    /** Lists copied. */
    public Standing {
        latest = List.copyOf(latest);
    }

    /**
     * One run's result.
     *
     * @param run id of the run
     * @param day yyyy-mm-dd
     * @param total points before cancellation; in volume, bags in
     * @param thrown bags thrown
     */
    public record Result(String run, String day, int total, int thrown) {}
}
