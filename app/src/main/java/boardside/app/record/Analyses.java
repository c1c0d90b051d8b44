package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.DayCount;
import boardside.app.practice.Failure;
import boardside.app.practice.Marking;
import boardside.app.practice.Player;
import boardside.app.practice.ThrowTally;
import boardside.app.store.Database;
import boardside.app.store.Transaction;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What analyses read: counts, never single rounds, and of those only what has changed. Thread safe. */
public final class Analyses {
    private static final int MOST_BAGS = 3000;

    private final Database database;

    Analyses(Database database) {
        this.database = database;
    }

    /**
     * What has changed since a version of a player's records.
     *
     * @param version the version this brings up to
     * @param runs how many runs the player has by now, deleted ones too; runs never vanish unless a backup is put back
     * @param changed ids of runs that changed, deleted ones too
     * @param counts all counts of those runs that count
     * @param bagNames names of bag sets by id
     */
    public record Changes(
            long version, int runs, List<String> changed, List<DayCount> counts, Map<String, String> bagNames) {
        /** Copied. */
        public Changes {
            changed = List.copyOf(changed);
            counts = List.copyOf(counts);
            bagNames = Map.copyOf(bagNames);
        }
    }

    /** What has changed since a version; since -1, all there is. */
    public Changes since(int player, long version) {
        return database.read(rows -> new Changes(
                player(rows, player).version(),
                rows.runs().number(player),
                rows.runs().changedAfter(player, version),
                rows.tallies().changedAfter(player, version),
                rows.players().bags(player).stream().collect(Collectors.toMap(BagSet::id, BagSet::name))));
    }

    /** Where the player's own bags went since a day (yyyy-mm-dd, included), as far as it was recorded. */
    public Marking marking(int player, String from) {
        return database.read(rows -> new Marking(
                rows.marks().bags(player, from, MOST_BAGS), rows.marks().misses(player, from)));
    }

    /** Counts for the throw model, with where misses went, from a day to another, both included (yyyy-mm-dd). */
    public List<ThrowTally> throwCounts(int player, String from, String to) {
        return database.read(rows -> rows.tallies().throwCounts(player, from, to));
    }

    private static Player player(Transaction rows, int id) {
        return rows.players().all().stream()
                .filter(player -> player.id() == id)
                .findFirst()
                .orElseThrow(() -> new Failure.NotFound("there is no player " + id));
    }

    /** What the last fit of the skill model ended with, as JSON. */
    public Optional<String> learned(int player) {
        return database.read(rows -> rows.learned().find(player));
    }

    /** Keeps what a fit ended with, so that the next one need not begin with nothing. */
    public void keepLearned(int player, String json) {
        database.write(rows -> {
            rows.learned().put(player, json);
            return player;
        });
    }
}
