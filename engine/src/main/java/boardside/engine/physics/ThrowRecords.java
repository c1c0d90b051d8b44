package boardside.engine.physics;

import java.util.List;

/**
 * What is recorded of one player's slides at an empty board with one face of one bag set. No bag is in both lists.
 *
 * @param counts by board; order is of no account
 * @param days single bags of which at least one place was tapped
 */
public record ThrowRecords(List<ThrowCount> counts, List<TappedDay> days) {
    /** Nothing recorded. */
    public static final ThrowRecords NONE = new ThrowRecords(List.of(), List.of());

    /** Takes copies. */
    public ThrowRecords {
        counts = List.copyOf(counts);
        days = List.copyOf(days);
    }

    /** Bags recorded. */
    public int bags() {
        return counts.stream().mapToInt(ThrowCount::thrown).sum() + tapped();
    }

    /** Bags tapped. */
    public int tapped() {
        return days.stream().mapToInt(day -> day.taps().size()).sum();
    }
}
