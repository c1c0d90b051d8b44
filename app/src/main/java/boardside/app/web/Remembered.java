package boardside.app.web;

import boardside.app.practice.Player;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/** Answers worked out once for a player's records as they are, on a day; the oldest are dropped. Thread safe. */
final class Remembered<V> {
    private static final int MOST = 64;

    private record Key(int player, long version, LocalDate day, String question) {}

    private final Map<Key, V> answers = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, V> eldest) {
            return size() > MOST;
        }
    };

    V get(Player player, LocalDate day, String question, Supplier<V> work) {
        Key key = new Key(player.id(), player.version(), day, question);
        synchronized (answers) {
            V known = answers.get(key);
            if (known != null) {
                return known;
            }
        }
        V found = work.get();
        synchronized (answers) {
            answers.put(key, found);
        }
        return found;
    }
}
