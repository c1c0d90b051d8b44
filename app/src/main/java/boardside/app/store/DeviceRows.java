package boardside.app.store;

import boardside.app.practice.Device;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Devices let in by a pairing code. */
public final class DeviceRows {
    private final Handle handle;

    DeviceRows(Handle handle) {
        this.handle = handle;
    }

    /** Devices that are let in, the newest first. */
    public List<Device> all() {
        return handle.createQuery("select * from device where revoked_at is null order by paired_at desc, id desc")
                .map((row, context) -> device(row))
                .list();
    }

    /** The device with that hash of its token, unless it was shut out. */
    public Optional<Device> find(String tokenHash) {
        return handle.createQuery("select * from device where token_hash = :hash and revoked_at is null")
                .bind("hash", tokenHash)
                .map((row, context) -> device(row))
                .findOne();
    }

    private static Device device(ResultSet row) throws SQLException {
        return new Device(
                row.getString("id"), row.getString("name"), row.getString("paired_at"), row.getString("seen_at"));
    }

    /** Lets a device in. */
    public void add(Device device, String tokenHash) {
        handle.createUpdate("insert into device (id, token_hash, name, paired_at, seen_at)"
                        + " values (:id, :hash, :name, :paired, :seen)")
                .bind("id", device.id())
                .bind("hash", tokenHash)
                .bind("name", device.name())
                .bind("paired", device.pairedAt())
                .bind("seen", device.seenAt())
                .execute();
    }

    /** Notes that it asked for something. */
    public void seen(String id, String at) {
        handle.createUpdate("update device set seen_at = :at where id = :id")
                .bind("at", at)
                .bind("id", id)
                .execute();
    }

    /** The code that lets devices in, and the end of its time. */
    public record Code(String text, Instant until) {}

    /**
     * The code that works: the one given before or, where that has ended or was guessed at too often, a new one.
     *
     * @param fresh what the new one would be
     * @param most guesses that a code has
     */
    public Code offer(Code fresh, Instant now, int most) {
        handle.createUpdate("insert into pairing (only_row, code, until_ms, guesses) values (1, :code, :until, 0)"
                        + " on conflict (only_row) do update set code = excluded.code, until_ms = excluded.until_ms,"
                        + " guesses = 0 where pairing.until_ms <= :now or pairing.guesses >= :most")
                .bind("code", fresh.text())
                .bind("until", fresh.until().toEpochMilli())
                .bind("now", now.toEpochMilli())
                .bind("most", most)
                .execute();
        return handle.createQuery("select code, until_ms from pairing where only_row = 1")
                .map((row, context) -> new Code(row.getString("code"), Instant.ofEpochMilli(row.getLong("until_ms"))))
                .one();
    }

    /** Counts a guess at the code that works, and tells it; empty where none does. Other guesses wait meanwhile. */
    public Optional<String> guess(Instant now, int most) {
        return handle.createQuery("update pairing set guesses = guesses + 1 where only_row = 1 and until_ms > :now"
                        + " and guesses < :most returning code")
                .bind("now", now.toEpochMilli())
                .bind("most", most)
                .mapTo(String.class)
                .findOne();
    }

    /** The code has been used. */
    public void withdraw() {
        handle.execute("delete from pairing");
    }

    /** Shuts a device out; nothing happens if it is out already. */
    public void revoke(String id, String at) {
        handle.createUpdate("update device set revoked_at = :at where id = :id and revoked_at is null")
                .bind("at", at)
                .bind("id", id)
                .execute();
    }
}
