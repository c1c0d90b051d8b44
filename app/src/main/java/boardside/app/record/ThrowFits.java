package boardside.app.record;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The throw models of the players asked about last, kept as long as their records stay as they are; where records have
 * changed, those of bags that were not thrown meanwhile. Thread safe.
 */
final class ThrowFits {
    private static final int MOST_PLAYERS = 16;

    private record Kept(long version, LocalDate day, Throws all) {}

    private final Map<Integer, Kept> players = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, Kept> eldest) {
            return size() > MOST_PLAYERS;
        }
    };

    /** What a player's records say on a day. Nothing is worked out here. */
    synchronized Throws of(Records records, int player, LocalDate today) {
        // Asked before the records are read: what changes meanwhile makes them read again next time.
        long version = records.player(player).version();
        Kept last = players.get(player);
        if (last != null && last.version() == version && last.day().equals(today)) {
            return last.all();
        }
        Throws all = Throws.read(
                records, player, today, last == null ? List.of() : last.all().groups());
        players.put(player, new Kept(version, today, all));
        return all;
    }
}
