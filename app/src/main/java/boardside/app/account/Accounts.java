package boardside.app.account;

import boardside.app.practice.Account;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.practice.Ticket;
import boardside.app.store.AccountRows;
import boardside.app.store.Database;
import boardside.app.store.Transaction;
import java.text.Normalizer;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Accounts of hosted mode: invited, given roles, closed, deleted. All that counts lies in the store, so that several instances
 * over one act as one. Thread safe.
 */
public final class Accounts {
    /** How long an invitation can be taken. */
    public static final Duration INVITATION_LIFE = Duration.ofDays(14);

    /** How long a link for a new password works. */
    public static final Duration RESET_LIFE = Duration.ofDays(2);

    /** Most characters of a note on an invitation. */
    public static final int LONGEST_NOTE = 60;

    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{M}\\p{N}][\\p{L}\\p{M}\\p{N}._@+-]{1,59}");
    private static final int LONGEST_PLAYER_NAME = 60;

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;
    private final Passwords passwords;
    private final List<Departure> departures;

    /** A ticket that was just made, with the token that is told this once. */
    public record Made(Ticket ticket, String token) {}

    /** What became of taking an invitation, or of setting a password by a link. */
    public sealed interface Taken {
        /** The account can sign in. */
        record Done(Account account) implements Taken {}

        /** The link has been used, taken back, or is too old. */
        record Gone() implements Taken {}

        /** The name has characters or a length that names do not have. */
        record BadName() implements Taken {}

        /** Somebody has that name. */
        record NameTaken() implements Taken {}

        /** The password is one that is refused. */
        record BadPassword(Passwords.Fault fault) implements Taken {}

        /** The player's name is blank or too long. */
        record BadPlayerName() implements Taken {}
    }

    /** @param departures told when a player leaves */
    public Accounts(Database database, InstantSource clock, Ids ids, Passwords passwords, List<Departure> departures) {
        this.database = database;
        this.clock = clock;
        this.ids = ids;
        this.passwords = passwords;
        this.departures = List.copyOf(departures);
    }

    /** A name as it is looked up: compatibility forms folded, in lower case. */
    static String signIn(String name) {
        return Normalizer.normalize(name.strip(), Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
    }

    /** All accounts, by name. */
    public List<Account> all() {
        return database.read(rows ->
                rows.accounts().all().stream().map(AccountRows.Stored::account).toList());
    }

    /** An account by name, in whatever case. */
    public Optional<Account> named(String name) {
        return database.read(rows -> rows.accounts().named(signIn(name)).map(AccountRows.Stored::account));
    }

    /** Whether any account can be a host's. */
    public boolean hasHost() {
        return database.read(rows -> hosts(rows) > 0);
    }

    private static long hosts(Transaction rows) {
        return rows.accounts().all().stream()
                .map(AccountRows.Stored::account)
                .filter(account -> account.role() == Role.HOST && !account.closed())
                .count();
    }

    // Links

    /**
     * Makes an invitation.
     *
     * @param note for whom it is; may be empty
     * @throws Failure.BadInput if the note is too long
     */
    public Made invite(Role role, String note) {
        String line = note.replaceAll("\\p{Cntrl}", " ").strip();
        if (line.length() > LONGEST_NOTE) {
            throw new Failure.BadInput("a note on an invitation has at most " + LONGEST_NOTE + " characters");
        }
        return ticket(Ticket.Kind.INVITATION, role, line, null, INVITATION_LIFE);
    }

    /**
     * Makes a link by which an account sets a new password; earlier ones of it stop working.
     *
     * @throws Failure.NotFound if there is no such account
     * @throws Failure.BadInput if it is closed
     */
    public Made reset(String id) {
        Account account = database.read(rows -> found(rows, id)).account();
        if (account.closed()) {
            throw new Failure.BadInput("the account " + account.name() + " is closed; open it first");
        }
        return ticket(Ticket.Kind.RESET, account.role(), "", id, RESET_LIFE);
    }

    private Made ticket(Ticket.Kind kind, Role role, String note, @Nullable String account, Duration life) {
        String token = Tokens.random();
        Instant now = clock.instant();
        Ticket ticket = new Ticket(ids.next(), kind, role, note, account, now, now.plus(life));
        database.write(rows -> {
            rows.tickets().tidy(now);
            if (account != null) {
                rows.tickets().removeAll(account);
            }
            rows.tickets().add(ticket, Tokens.hash(token));
            return ticket;
        });
        return new Made(ticket, token);
    }

    /** Invitations that can still be taken, the newest first. */
    public List<Ticket> invitations() {
        return database.read(rows -> rows.tickets().invitations(clock.instant()));
    }

    /** Takes an invitation back; nothing happens if it is not there any more. */
    public void withdraw(String id) {
        database.write(rows -> {
            boolean there = rows.tickets().invitations(clock.instant()).stream()
                    .anyMatch(ticket -> ticket.id().equals(id));
            return there && rows.tickets().remove(id);
        });
    }

    /** A link that still works, or empty. */
    public Optional<Ticket> ticket(Ticket.Kind kind, String token) {
        return database.read(rows -> rows.tickets().find(kind, Tokens.hash(token), clock.instant()));
    }

    /**
     * Takes an invitation: a new account with its first player.
     *
     * @param name to sign in with: 2 to 60 letters, digits and {@code . _ @ + -}
     * @param playerName what its first player is called; the account may add others
     */
    public Taken take(String token, String name, String playerName, String password) {
        String shown = Normalizer.normalize(name.strip(), Normalizer.Form.NFC);
        String player = playerName.replaceAll("\\p{Cntrl}", " ").strip();
        if (!NAME.matcher(shown).matches()) {
            return new Taken.BadName();
        }
        if (player.isEmpty() || player.length() > LONGEST_PLAYER_NAME) {
            return new Taken.BadPlayerName();
        }
        Optional<Passwords.Fault> fault = Passwords.fault(password, shown);
        if (fault.isPresent()) {
            return new Taken.BadPassword(fault.get());
        }
        // Nobody makes us hash without a link that works.
        if (ticket(Ticket.Kind.INVITATION, token).isEmpty()) {
            return new Taken.Gone();
        }
        String hash = passwords.hash(password);
        Instant now = clock.instant();
        return database.write(rows -> {
            rows.accounts().hold();
            Ticket ticket = rows.tickets()
                    .find(Ticket.Kind.INVITATION, Tokens.hash(token), now)
                    .orElse(null);
            if (ticket == null) {
                return new Taken.Gone();
            }
            if (rows.accounts().named(signIn(shown)).isPresent()) {
                return new Taken.NameTaken();
            }
            rows.tickets().remove(ticket.id());
            Account account = new Account(ids.next(), shown, ticket.role(), now, null);
            AccountRows.Stored stored = new AccountRows.Stored(account, signIn(shown), hash);
            rows.accounts().add(stored);
            rows.players().add(stored, player, Player.Hand.RIGHT, Player.Hand.LEFT, now.toString());
            return new Taken.Done(account);
        });
    }

    /** Sets a new password by a link; the account is signed out everywhere. */
    public Taken setPassword(String token, String password) {
        Ticket asked = ticket(Ticket.Kind.RESET, token).orElse(null);
        String id = asked == null ? null : asked.account();
        Account account = id == null
                ? null
                : database.read(rows -> rows.accounts().find(id))
                        .map(AccountRows.Stored::account)
                        .filter(found -> !found.closed())
                        .orElse(null);
        if (asked == null || account == null) {
            return new Taken.Gone();
        }
        Optional<Passwords.Fault> fault = Passwords.fault(password, account.name());
        if (fault.isPresent()) {
            return new Taken.BadPassword(fault.get());
        }
        String hash = passwords.hash(password);
        return database.write(rows -> {
            rows.accounts().hold(account.id());
            if (!rows.tickets().remove(asked.id())) {
                return new Taken.Gone();
            }
            rows.accounts().password(account.id(), hash);
            rows.logins().removeAll(account.id(), "");
            return new Taken.Done(account);
        });
    }

    // What hosts do

    /**
     * Sets an account's role.
     *
     * @throws Failure.NotFound if there is no such account
     * @throws Failure.BadInput if no host would be left
     */
    public Account role(String id, Role role) {
        return database.write(rows -> {
            rows.accounts().hold();
            found(rows, id);
            rows.accounts().role(id, role);
            return hostLeft(rows, id);
        });
    }

    /**
     * Closes an account: it is signed out everywhere and cannot sign in; its records stay until it is opened or deleted.
     *
     * @throws Failure.NotFound if there is no such account
     * @throws Failure.BadInput if no host would be left
     */
    public Account close(String id) {
        return database.write(rows -> {
            rows.accounts().hold();
            rows.accounts().hold(id);
            if (!found(rows, id).account().closed()) {
                rows.accounts().close(id, clock.instant());
            }
            rows.logins().removeAll(id, "");
            rows.tickets().removeAll(id);
            return hostLeft(rows, id);
        });
    }

    private static Account hostLeft(Transaction rows, String id) {
        if (hosts(rows) == 0) {
            throw new Failure.BadInput("no host would be left; make somebody else a host first");
        }
        return found(rows, id).account();
    }

    /**
     * Opens a closed account again.
     *
     * @throws Failure.NotFound if there is no such account
     */
    public Account open(String id) {
        return database.write(rows -> {
            found(rows, id);
            rows.accounts().close(id, null);
            return found(rows, id).account();
        });
    }

    /**
     * Makes a player of a household without accounts one of an account.
     *
     * @throws Failure.NotFound if there is no such account
     * @throws Failure.BadInput if the account has a player of that name, or the player is another account's
     */
    public Player give(String id, Player player) {
        return database.write(rows -> {
            AccountRows.Stored owner = found(rows, id);
            if (rows.players().account(player.id()).isPresent()) {
                throw new Failure.BadInput("the player " + player.name() + " is an account's already");
            }
            if (rows.players().of(id).stream().anyMatch(own -> own.name().equals(player.name()))) {
                throw new Failure.BadInput("the account " + owner.account().name() + " has a player called "
                        + player.name() + " already; rename one of them");
            }
            rows.players().give(player, owner);
            return player;
        });
    }

    // What accounts do

    /**
     * Deletes an account with its players and all that they recorded.
     *
     * @throws Failure.NotFound if there is no such account
     */
    public void delete(String id) {
        database.write(rows -> {
            rows.accounts().hold();
            rows.accounts().hold(id);
            found(rows, id);
            for (Player player : rows.players().of(id)) {
                // Whoever records for them now waits, and then finds nobody.
                rows.players().changed(player.id());
                departures.forEach(departure -> departure.leaves(rows, player));
                rows.removePlayer(player.id());
            }
            rows.logins().removeAll(id, "");
            rows.tickets().removeAll(id);
            rows.accounts().remove(id);
            return id;
        });
    }

    private static AccountRows.Stored found(Transaction rows, String id) {
        return rows.accounts().find(id).orElseThrow(() -> new Failure.NotFound("there is no such account"));
    }
}
