package boardside.app.account;

import boardside.app.practice.Account;
import boardside.app.practice.Ids;
import boardside.app.practice.Login;
import boardside.app.store.AccountRows;
import boardside.app.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;

/**
 * Signing in and out. A browser that is signed in keeps a random token, of which the store has only the hash; it is looked up
 * with every request, so that signing out works at once, in every instance over the store. Thread safe.
 */
public final class SignIns {
    /** How long somebody stays signed in without asking for anything. */
    public static final Duration IDLE = Duration.ofDays(30);

    /** How long somebody stays signed in at most. */
    public static final Duration LONGEST = Duration.ofDays(180);

    private static final Duration SEEN_GRAIN = Duration.ofHours(1);
    private static final int LONGEST_DEVICE = 60;

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;
    private final Passwords passwords;
    private final Throttle throttle;

    /** What became of a try to sign in. */
    public sealed interface Result {
        /** Signed in; the token goes into a cookie. */
        record Done(Account account, String token) implements Result {}

        /** There is no such name, or this is not its password, or it is closed: nobody is told which. */
        record Refused() implements Result {}

        /** Too many tries; the answer is the same for names that exist and others. */
        record Slowed() implements Result {}
    }

    /** Who is asking. */
    public record Signed(Account account, Login login) {}

    public SignIns(Database database, InstantSource clock, Ids ids, Passwords passwords) {
        this.database = database;
        this.clock = clock;
        this.ids = ids;
        this.passwords = passwords;
        this.throttle = new Throttle(database, clock);
    }

    /**
     * Tries to sign in.
     *
     * @param address where the request comes from
     * @param device what kind of browser it says it is
     */
    public Result signIn(String name, String password, String address, String device) {
        String signIn = Accounts.signIn(name);
        if (!throttle.admits(signIn, address)) {
            return new Result.Slowed();
        }
        AccountRows.Stored stored =
                database.read(rows -> rows.accounts().named(signIn)).orElse(null);
        boolean right = passwords.matches(password, stored == null ? null : stored.password());
        if (stored == null || !right) {
            return new Result.Refused();
        }
        String hash = passwords.outdated(stored.password()) ? passwords.hash(password) : stored.password();
        Optional<String> token = login(stored, hash, device);
        if (token.isEmpty()) {
            return new Result.Refused();
        }
        throttle.clear(signIn, address);
        return new Result.Done(stored.account(), token.get());
    }

    /** Signs in whoever has just taken an invitation, or set a new password; empty where the account was closed since. */
    public Optional<String> signIn(Account account, String device) {
        return database.read(rows -> rows.accounts().find(account.id()))
                .flatMap(stored -> login(stored, stored.password(), device));
    }

    /** Empty where the account was closed, or its password changed, since it was read. */
    private Optional<String> login(AccountRows.Stored stored, String hash, String device) {
        String token = Tokens.random();
        Instant now = clock.instant();
        String line = device.replaceAll("\\p{Cntrl}", " ").strip();
        Login login = new Login(
                ids.next(),
                stored.account().id(),
                line.substring(0, Math.min(LONGEST_DEVICE, line.length())),
                now,
                now);
        boolean in = database.write(rows -> {
            rows.accounts().hold(stored.account().id());
            boolean same = rows.accounts()
                    .find(stored.account().id())
                    .filter(found -> found.password().equals(stored.password())
                            && !found.account().closed())
                    .isPresent();
            if (same) {
                rows.accounts().password(stored.account().id(), hash);
                rows.logins().add(login, Tokens.hash(token));
            }
            return same;
        });
        database.write(rows -> {
            rows.logins().tidy(now.minus(IDLE), now.minus(LONGEST));
            return login;
        });
        return in ? Optional.of(token) : Optional.empty();
    }

    /** Who holds a token; empty where it was signed out, has ended, or the account was closed. */
    public Optional<Signed> find(String token) {
        Instant now = clock.instant();
        return database.ask(rows -> rows.logins().find(Tokens.hash(token), now.minus(IDLE), now.minus(LONGEST)))
                .map(found -> {
                    Login login = found.login();
                    if (Duration.between(login.seenAt(), now).compareTo(SEEN_GRAIN) >= 0) {
                        database.write(rows -> {
                            rows.logins().seen(login.id(), now);
                            return login;
                        });
                    }
                    return new Signed(found.account(), login);
                });
    }

    /** Where an account is signed in, the newest first. */
    public List<Login> of(Account account) {
        Instant now = clock.instant();
        return database.read(rows -> rows.logins().of(account.id(), now.minus(IDLE), now.minus(LONGEST)));
    }

    /** Signs an account out in one place; nothing happens if it is not signed in there. */
    public void signOut(Account account, String login) {
        database.write(rows -> {
            rows.logins().remove(account.id(), login);
            return login;
        });
    }

    /** Signs an account out everywhere. */
    public void signOutEverywhere(Account account) {
        database.write(rows -> {
            rows.logins().removeAll(account.id(), "");
            return account;
        });
    }

    /** What became of a change that asks for the password again. */
    public enum Confirmed {
        YES,
        /** The password is not the account's. */
        WRONG,
        /** Too many tries. */
        SLOWED
    }

    /** Whether a password is the account's own; such tries count like those to sign in. */
    public Confirmed confirm(Account account, String password, String address) {
        String signIn = Accounts.signIn(account.name());
        if (!throttle.admits(signIn, address)) {
            return Confirmed.SLOWED;
        }
        boolean right = database.read(rows -> rows.accounts().find(account.id()))
                .filter(stored -> passwords.matches(password, stored.password()))
                .isPresent();
        if (right) {
            throttle.clear(signIn, address);
        }
        return right ? Confirmed.YES : Confirmed.WRONG;
    }

    /** Sets an account's password, which was {@link #confirm}ed; all other logins end. */
    public void changePassword(Signed signed, String password) {
        String hash = passwords.hash(password);
        database.write(rows -> {
            // This waits for a sign-in under way, which is then ended with the others.
            rows.accounts().password(signed.account().id(), hash);
            rows.tickets().removeAll(signed.account().id());
            rows.logins().removeAll(signed.account().id(), signed.login().id());
            return signed;
        });
    }
}
