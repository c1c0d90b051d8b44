package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.account.Accounts;
import boardside.app.account.Passwords;
import boardside.app.practice.Account;
import boardside.app.practice.Ids;
import boardside.app.practice.Role;
import boardside.app.record.Records;
import io.javalin.http.HandlerType;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A store with accounts, served in hosted mode, and people who ask. */
final class Club {
    static final String PASSWORD = "correct horse battery";

    private Club() {}

    /** A store whose passwords cost little to check; PasswordsTest has what they cost in earnest. */
    static Records open(String location) {
        if (!location.startsWith("jdbc:")) {
            FreshStore.at(Path.of(location));
        }
        InstantSource clock = InstantSource.system();
        return Records.open(location, clock, new Ids(clock, new SecureRandom()), new Passwords(64, 1));
    }

    /** Serves on this machine, under its own names. */
    static Server serve(Records records) {
        return Server.start(records, options(new Hosting(List.of(), false)), Clock.systemDefaultZone());
    }

    static ServerOptions options(Hosting hosting) {
        return new ServerOptions(0, false, null, false, hosting);
    }

    /** A new account that took its invitation. */
    static Account account(Records records, String name, Role role) {
        Accounts accounts = records.accounts();
        Accounts.Taken taken =
                accounts.take(accounts.invite(role, "").token(), name, "The one called " + name, PASSWORD);
        assertThat(taken).isInstanceOf(Accounts.Taken.Done.class);
        return ((Accounts.Taken.Done) taken).account();
    }

    /**
     * Somebody in a browser of their own.
     *
     * @param cookies as a request sends them
     * @param token of the forms that this browser is given
     */
    record Asker(int port, String cookies, String token) {
        Wire ask(HandlerType method, String path, String form, String... headers) {
            List<String> all = new ArrayList<>(List.of(headers));
            all.add("Cookie: " + cookies);
            return Wire.send(Wire.HERE, port, method.name(), path, form, all.toArray(String[]::new));
        }

        Wire get(String path) {
            return ask(HandlerType.GET, path, "");
        }

        Wire post(String path, String form) {
            return ask(HandlerType.POST, path, form + "&token=" + token);
        }
    }

    /** Signed in anew; with null, a stranger. */
    static Asker asker(Records records, int port, @Nullable Account account) {
        if (account == null) {
            Wire page = Wire.get(Wire.HERE, port, "/sign-in");
            return new Asker(port, page.cookie(Guard.VISIT), page.token());
        }
        String token = records.signIns().signIn(account, "Test").orElseThrow();
        String cookies = Guard.LOGIN + "=" + token;
        Wire page = Wire.get(Wire.HERE, port, "/more", "Cookie: " + cookies);
        assertThat(page.status()).isEqualTo(200);
        return new Asker(port, cookies, page.token());
    }
}
