package boardside.app.store;

import boardside.app.practice.Account;
import boardside.app.practice.Login;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Where accounts are signed in. */
public final class LoginRows {
    private final Handle handle;

    LoginRows(Handle handle) {
        this.handle = handle;
    }

    /** A login with the account that is signed in. */
    public record Found(Login login, Account account) {}

    /**
     * The login with that hash of its token.
     *
     * @param seenAfter when it was last used, at the earliest
     * @param madeAfter when it was made, at the earliest
     */
    public Optional<Found> find(String tokenHash, Instant seenAfter, Instant madeAfter) {
        return handle.createQuery(
                        "select l.id as l_id, l.device as l_device, l.made_ms as l_made, l.seen_ms as l_seen, a.*"
                                + " from login l join account a on a.id = l.account where l.token_hash = :hash"
                                + " and a.closed_ms is null and l.seen_ms > :seen and l.made_ms > :made")
                .bind("hash", tokenHash)
                .bind("seen", seenAfter.toEpochMilli())
                .bind("made", madeAfter.toEpochMilli())
                .map((row, context) -> {
                    Account account = AccountRows.stored(row).account();
                    return new Found(login(row, "l_id", account.id(), "l_device", "l_made", "l_seen"), account);
                })
                .findOne();
    }

    private static Login login(ResultSet row, String id, String account, String device, String made, String seen)
            throws SQLException {
        return new Login(
                row.getString(id),
                account,
                row.getString(device),
                Instant.ofEpochMilli(row.getLong(made)),
                Instant.ofEpochMilli(row.getLong(seen)));
    }

    /** Where an account is signed in, the newest first; with the bounds of {@link #find}. */
    public List<Login> of(String account, Instant seenAfter, Instant madeAfter) {
        return handle.createQuery("select * from login where account = :account and seen_ms > :seen"
                        + " and made_ms > :made order by made_ms desc, id desc")
                .bind("account", account)
                .bind("seen", seenAfter.toEpochMilli())
                .bind("made", madeAfter.toEpochMilli())
                .map((row, context) -> login(row, "id", account, "device", "made_ms", "seen_ms"))
                .list();
    }

    /** Signs in. */
    public void add(Login login, String tokenHash) {
        handle.createUpdate("insert into login (id, account, token_hash, device, made_ms, seen_ms)"
                        + " values (:id, :account, :hash, :device, :made, :seen)")
                .bind("id", login.id())
                .bind("account", login.account())
                .bind("hash", tokenHash)
                .bind("device", login.device())
                .bind("made", login.madeAt().toEpochMilli())
                .bind("seen", login.seenAt().toEpochMilli())
                .execute();
    }

    /** Notes that it asked for something. */
    public void seen(String id, Instant at) {
        handle.createUpdate("update login set seen_ms = :at where id = :id")
                .bind("id", id)
                .bind("at", at.toEpochMilli())
                .execute();
    }

    /** Signs an account out in one place; nothing happens if it is no login of that account. */
    public void remove(String account, String id) {
        handle.createUpdate("delete from login where account = :account and id = :id")
                .bind("account", account)
                .bind("id", id)
                .execute();
    }

    /** Signs an account out everywhere but in one place; {@code except} may be empty for everywhere. */
    public void removeAll(String account, String except) {
        handle.createUpdate("delete from login where account = :account and id <> :except")
                .bind("account", account)
                .bind("except", except)
                .execute();
    }

    /** Removes what has ended, by the bounds of {@link #find}. */
    public void tidy(Instant seenAfter, Instant madeAfter) {
        handle.createUpdate("delete from login where seen_ms <= :seen or made_ms <= :made")
                .bind("seen", seenAfter.toEpochMilli())
                .bind("made", madeAfter.toEpochMilli())
                .execute();
    }
}
