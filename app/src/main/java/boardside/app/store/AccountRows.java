package boardside.app.store;

import boardside.app.practice.Account;
import boardside.app.practice.Role;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Accounts and their passwords, as hashes. */
public final class AccountRows {
    private final Handle handle;

    AccountRows(Handle handle) {
        this.handle = handle;
    }

    /**
     * An account with what is not shown of it.
     *
     * @param signIn the name as it is looked up
     * @param password Argon2id, encoded with its parameters
     */
    public record Stored(Account account, String signIn, String password) {}

    /** All accounts, in the order of their names. */
    public List<Stored> all() {
        return handle.createQuery("select * from account order by sign_in")
                .map((row, context) -> stored(row))
                .list();
    }

    /** An account by id. */
    public Optional<Stored> find(String id) {
        return handle.createQuery("select * from account where id = :id")
                .bind("id", id)
                .map((row, context) -> stored(row))
                .findOne();
    }

    /** An account by its name as it is looked up. */
    public Optional<Stored> named(String signIn) {
        return handle.createQuery("select * from account where sign_in = :name")
                .bind("name", signIn)
                .map((row, context) -> stored(row))
                .findOne();
    }

    static Stored stored(ResultSet row) throws SQLException {
        Account account = new Account(
                row.getString("id"),
                row.getString("name"),
                Word.of(Role.class, row.getString("role")),
                Instant.ofEpochMilli(row.getLong("made_ms")),
                instant(row, "closed_ms"));
        return new Stored(account, row.getString("sign_in"), row.getString("password"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        long millis = row.getLong(column);
        return row.wasNull() ? null : Instant.ofEpochMilli(millis);
    }

    /** A new account; its name must be free. */
    public void add(Stored stored) {
        Account account = stored.account();
        Instant closed = account.closedAt();
        handle.createUpdate("insert into account (id, name, sign_in, role, password, made_ms, closed_ms)"
                        + " values (:id, :name, :signIn, :role, :password, :made, :closed)")
                .bind("id", account.id())
                .bind("name", account.name())
                .bind("signIn", stored.signIn())
                .bind("role", account.role().word())
                .bind("password", stored.password())
                .bind("made", account.madeAt().toEpochMilli())
                .bind("closed", closed == null ? null : (Long) closed.toEpochMilli())
                .execute();
    }

    /** Sets the password. */
    public void password(String id, String password) {
        handle.createUpdate("update account set password = :password where id = :id")
                .bind("id", id)
                .bind("password", password)
                .execute();
    }

    /** Sets the role. */
    public void role(String id, Role role) {
        handle.createUpdate("update account set role = :role where id = :id")
                .bind("id", id)
                .bind("role", role.word())
                .execute();
    }

    /** Closes an account, or with null opens it again. */
    public void close(String id, @Nullable Instant at) {
        handle.createUpdate("update account set closed_ms = :at where id = :id")
                .bind("id", id)
                .bind("at", at == null ? null : (Long) at.toEpochMilli())
                .execute();
    }

    /** Removes an account that has no players, logins or tickets any more. */
    public void remove(String id) {
        handle.createUpdate("delete from account where id = :id").bind("id", id).execute();
    }

    /** Makes whoever else is about to sign this account in, close it or set its password wait until this transaction is over. */
    public void hold(String id) {
        handle.createUpdate("update account set role = role where id = :id")
                .bind("id", id)
                .execute();
    }

    /**
     * Makes whoever else is about to change roles or close accounts wait until this transaction is over, so that no two
     * of them take away the last two hosts.
     */
    public void hold() {
        handle.execute("update player_number set last = last where only_row = 1");
    }
}
