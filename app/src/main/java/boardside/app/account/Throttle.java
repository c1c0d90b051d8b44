package boardside.app.account;

import boardside.app.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Locale;

/**
 * Slows guessing: a name and an address have so many tries in a window, counted in the store, so that several instances
 * over one store count together. A try counts before it is known whether it was right, so that many at once are no way
 * around. Thread safe.
 */
final class Throttle {
    /** How long tries count. */
    static final Duration WINDOW = Duration.ofMinutes(15);

    /** Tries that one name has. */
    static final int MOST_BY_NAME = 10;

    /** Tries that one address has; a club may share one. */
    static final int MOST_BY_ADDRESS = 60;

    private final Database database;
    private final InstantSource clock;

    Throttle(Database database, InstantSource clock) {
        this.database = database;
        this.clock = clock;
    }

    /**
     * Counts a try.
     *
     * @param name as it is looked up; it need not exist
     * @return whether it may go on
     */
    boolean admits(String name, String address) {
        Instant now = clock.instant();
        Instant start = now.minus(WINDOW);
        return database.write(rows -> {
            // Always in this order, so that no two wait for each other.
            int byName = rows.attempts().count(subject("name", name), start, now);
            int byAddress = rows.attempts().count(subject("address", network(address)), start, now);
            return byName <= MOST_BY_NAME && byAddress <= MOST_BY_ADDRESS;
        });
    }

    /** The try was right: it does not count, and the name begins anew. */
    void clear(String name, String address) {
        Instant start = clock.instant().minus(WINDOW);
        database.write(rows -> {
            rows.attempts().forget(subject("name", name));
            rows.attempts().takeBack(subject("address", network(address)));
            return name;
        });
        database.write(rows -> {
            rows.attempts().tidy(start);
            return name;
        });
    }

    // Neither names nor addresses lie there to be read; somebody may have typed a password where a name belongs.
    private static String subject(String kind, String value) {
        return Tokens.hash(kind + " " + value);
    }

    /** An IPv4 address as it is; of IPv6 the 64 bits that one household or server commonly has to itself. */
    private static String network(String address) {
        String plain =
                address.toLowerCase(Locale.ROOT).replaceAll("[\\[\\]]", "").replaceFirst("%.*", "");
        if (!plain.contains(":")) {
            return plain;
        }
        String[] groups = expanded(plain);
        return String.join(":", java.util.Arrays.copyOf(groups, 4));
    }

    private static String[] expanded(String address) {
        String[] halves = address.split("::", 2);
        String[] groups = new String[8];
        java.util.Arrays.fill(groups, "0");
        String[] first = halves[0].isEmpty() ? new String[0] : halves[0].split(":");
        for (int i = 0; i < Math.min(8, first.length); i++) {
            groups[i] = first[i].replaceFirst("^0+(?=.)", "");
        }
        return groups;
    }
}
