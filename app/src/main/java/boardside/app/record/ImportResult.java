package boardside.app.record;

import java.util.List;

/** What became of a log that was to be stored. */
public sealed interface ImportResult {
    /**
     * All of it is in the store.
     *
     * @param runs runs that are new
     * @param rounds rounds (of a side) that are new, or have new lines
     * @param known rounds that were there before, just so
     * @param bags names of bag sets that are new
     * @param kept rounds that differ, where a later correction in the store wins, in words
     * @param deleted ids of runs that were deleted in the store and stay so
     */
    record Stored(int runs, int rounds, int known, List<String> bags, List<String> kept, List<String> deleted)
            implements ImportResult {
        /** Lists copied. */
        public Stored {
            bags = List.copyOf(bags);
            kept = List.copyOf(kept);
            deleted = List.copyOf(deleted);
        }
    }

    /** It disagrees with the store; nothing was stored. */
    record Refused(List<Fault> faults) implements ImportResult {
        /** Lists copied. */
        public Refused {
            faults = List.copyOf(faults);
        }
    }

    /** Where and how a log disagrees with the store. */
    record Fault(LogRun.Source source, String column, String message) {}
}
