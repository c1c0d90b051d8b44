package boardside.app.web;

import boardside.app.practice.Player;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Answers that take a while, worked out beside the requests and kept per player (or nobody) and question; the oldest are dropped. A
 * request waits a moment for an answer that is up to date; where that takes longer it gets the last one there was, told
 * to be behind, or none where there is none yet. Thread safe.
 */
final class Remembered<V> {
    private static final int MOST = 256;

    /** Numbers of players begin at 1. */
    private static final int NOBODY = 0;

    private static final long PATIENCE_MILLIS = 30;
    private static final long FIRST_PATIENCE_MILLIS = 60;
    private static final long FIRST_WAIT_MILLIS = 600_000;

    private final Executor workers;

    Remembered(Executor workers) {
        this.workers = workers;
    }

    /**
     * An answer.
     *
     * @param behind whether the records have changed since it was worked out
     */
    record Found<V>(V value, boolean behind) {}

    private record Key(int player, String question) {}

    private record State(long version, LocalDate day) {}

    private record Answer<V>(State state, V value) {}

    private static final class Slot<V> {
        private @Nullable Answer<V> last;
        private @Nullable CompletableFuture<Answer<V>> underway;
    }

    private final Map<Key, Slot<V>> slots = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Slot<V>> eldest) {
            return size() > MOST;
        }
    };

    /**
     * The answer to a question about a player's records as they are, on a day; empty while the first is being worked out.
     *
     * @param work works it out; runs on another thread
     */
    Optional<Found<V>> soon(Player player, LocalDate day, String question, Supplier<V> work) {
        return find(player.id(), new State(player.version(), day), question, work, FIRST_PATIENCE_MILLIS);
    }

    /**
     * The answer to a question about what is nobody's records, such as a season.
     *
     * @param version grows with each change of what the question is about
     * @param work works it out; runs on another thread
     */
    Optional<Found<V>> soon(long version, String question, Supplier<V> work) {
        return find(NOBODY, new State(version, LocalDate.EPOCH), question, work, FIRST_PATIENCE_MILLIS);
    }

    /** The last answer to a question there was, up to date or not; empty before the first. Starts nothing. */
    Optional<V> last(Player player, String question) {
        synchronized (slots) {
            Slot<V> slot = slots.get(new Key(player.id(), question));
            return Optional.ofNullable(slot == null ? null : slot.last).map(Answer::value);
        }
    }

    /** The same for answers that are quick: the very first is waited for. */
    Found<V> get(Player player, LocalDate day, String question, Supplier<V> work) {
        return find(player.id(), new State(player.version(), day), question, work, FIRST_WAIT_MILLIS)
                .orElseThrow();
    }

    private Optional<Found<V>> find(int player, State now, String question, Supplier<V> work, long firstPatience) {
        while (true) {
            Answer<V> last;
            CompletableFuture<Answer<V>> underway;
            synchronized (slots) {
                Slot<V> slot = slots.computeIfAbsent(new Key(player, question), key -> new Slot<>());
                last = slot.last;
                if (last != null && last.state().equals(now)) {
                    return Optional.of(new Found<>(last.value(), false));
                }
                if (slot.underway == null) {
                    slot.underway = start(slot, now, work);
                }
                underway = slot.underway;
            }
            Answer<V> answer = waitFor(underway, last == null ? firstPatience : PATIENCE_MILLIS);
            if (answer == null) {
                return Optional.ofNullable(last).map(old -> new Found<>(old.value(), true));
            }
            // One that was under way for older records is not the answer; the next turn starts another.
            if (answer.state().equals(now)) {
                return Optional.of(new Found<>(answer.value(), false));
            }
        }
    }

    private CompletableFuture<Answer<V>> start(Slot<V> slot, State state, Supplier<V> work) {
        return CompletableFuture.supplyAsync(
                () -> {
                    try {
                        Answer<V> answer = new Answer<>(state, work.get());
                        synchronized (slots) {
                            slot.last = answer;
                            return answer;
                        }
                    } finally {
                        synchronized (slots) {
                            slot.underway = null;
                        }
                    }
                },
                workers);
    }

    private static <T> @Nullable T waitFor(CompletableFuture<T> underway, long millis) {
        try {
            return underway.get(millis, TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            return null;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return null;
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e);
        }
    }
}
