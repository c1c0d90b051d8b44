package boardside.app.web;

import boardside.app.account.Passwords;
import boardside.app.account.SignIns;
import boardside.app.practice.Login;
import boardside.app.practice.Player;
import boardside.app.transfer.Backups;
import boardside.app.transfer.LogFiles;
import io.javalin.http.Context;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One's own account: password, where one is signed in, a copy of one's data, and the end of it all. */
public final class AccountPage {
    private final Web web;

    AccountPage(Web web) {
        this.web = web;
    }

    /**
     * What the page shows.
     *
     * @param name signed in with
     * @param role worded
     * @param since the day it was made, worded
     * @param logins where it is signed in, the one asking among them
     * @param players its players
     * @param fields of the form for a new password
     */
    public record View(
            String name, String role, String since, List<Entry> logins, List<Player> players, Fields fields) {}

    /** A login with its times worded. */
    public record Entry(String id, String device, String made, String seen, boolean here) {}

    /** A password as it was typed: blanks count. */
    static String password(Context ctx, String field) {
        return Objects.requireNonNullElse(ctx.formParam(field), "");
    }

    /** What is wrong with a new password. */
    static String fault(Texts texts, Passwords.Fault fault) {
        return texts.of("password." + fault.word(), Passwords.SHORTEST, Passwords.LONGEST);
    }

    private SignIns.Signed signed(Context ctx) {
        return web.guard()
                .signed(ctx)
                .orElseThrow(() -> new Refusal(401, web.texts().of("account.signed-out")));
    }

    void show(Context ctx) {
        show(ctx, Fields.filled(web.texts(), Map.of()));
    }

    private void show(Context ctx, Fields fields) {
        SignIns.Signed signed = signed(ctx);
        List<Entry> logins = web.signIns().of(signed.account()).stream()
                .map(login -> entry(login, login.id().equals(signed.login().id())))
                .toList();
        View view = new View(
                signed.account().name(),
                web.texts().of("role." + signed.account().role().word()),
                told(signed.account().madeAt()),
                logins,
                web.players(ctx),
                fields);
        web.show(ctx, "account", web.texts().of("account.title"), Map.of("view", view));
    }

    private Entry entry(Login login, boolean here) {
        String device = login.device().isEmpty() ? web.texts().of("account.device") : login.device();
        return new Entry(login.id(), device, told(login.madeAt()), told(login.seenAt()), here);
    }

    private String told(Instant instant) {
        return web.dayAndTime(instant.toString());
    }

    void changePassword(Context ctx) {
        SignIns.Signed signed = signed(ctx);
        Fields fields = Fields.filled(web.texts(), Map.of());
        String wanted = password(ctx, "password");
        Passwords.fault(wanted, signed.account().name())
                .ifPresent(wrong -> fields.fault("password", fault(web.texts(), wrong)));
        if (!wanted.equals(password(ctx, "again"))) {
            fields.fault("again", web.texts().of("password.differs"));
        }
        if (!fields.faulty()) {
            confirm(ctx, signed, "now").ifPresent(wrong -> fields.fault("now", wrong));
        }
        if (fields.faulty()) {
            ctx.status(422);
            show(ctx, fields);
            return;
        }
        web.signIns().changePassword(signed, wanted);
        ctx.redirect("/account?said=account.password");
    }

    /** What is wrong with the password given once more; empty where it is the account's. */
    private Optional<String> confirm(Context ctx, SignIns.Signed signed, String field) {
        return switch (web.signIns()
                .confirm(signed.account(), password(ctx, field), web.guard().client(ctx))) {
            case YES -> Optional.empty();
            case WRONG -> Optional.of(web.texts().of("password.wrong"));
            case SLOWED -> Optional.of(web.texts().of("account.slowed"));
        };
    }

    void signOut(Context ctx) {
        web.guard().signOut(ctx);
        ctx.redirect("/sign-in?said=account.out");
    }

    void signOutEverywhere(Context ctx) {
        web.signIns().signOutEverywhere(signed(ctx).account());
        signOut(ctx);
    }

    void end(Context ctx) {
        web.signIns().signOut(signed(ctx).account(), ctx.pathParam("login"));
        ctx.redirect("/account?said=account.login.out");
    }

    // A copy of one's data

    void log(Context ctx) {
        Player player = own(ctx);
        send(
                ctx,
                "text/csv; charset=utf-8",
                "boardside-log.csv",
                out -> LogFiles.write(web.records(), player.id(), out));
    }

    void all(Context ctx) {
        Player player = own(ctx);
        send(
                ctx,
                "application/jsonl; charset=utf-8",
                "boardside.jsonl",
                out -> Backups.export(web.records(), player.id(), out));
    }

    private Player own(Context ctx) {
        String id = ctx.pathParam("player");
        return web.players(ctx).stream()
                .filter(player -> String.valueOf(player.id()).equals(id))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, web.texts().of("players.nobody")));
    }

    private interface Writing {
        void to(Appendable out);
    }

    private static void send(Context ctx, String type, String name, Writing writing) {
        ctx.contentType(type).header("Content-Disposition", "attachment; filename=\"" + name + "\"");
        try (Writer out = new BufferedWriter(new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8))) {
            writing.to(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    // The end

    void askToDelete(Context ctx) {
        showDelete(ctx, Fields.filled(web.texts(), Map.of()));
    }

    private void showDelete(Context ctx, Fields fields) {
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("players", web.players(ctx));
        values.put("fields", fields);
        web.show(ctx, "account_delete", web.texts().of("account.delete.title"), values);
    }

    void delete(Context ctx) {
        SignIns.Signed signed = signed(ctx);
        Fields fields = Fields.filled(web.texts(), Map.of());
        if (!"yes".equals(ctx.formParam("sure"))) {
            fields.fault("sure", web.texts().of("account.delete.unsure"));
        } else {
            confirm(ctx, signed, "password").ifPresent(wrong -> fields.fault("password", wrong));
        }
        if (fields.faulty()) {
            ctx.status(422);
            showDelete(ctx, fields);
            return;
        }
        web.accounts().delete(signed.account().id());
        web.guard().signOut(ctx);
        ctx.redirect("/sign-in?said=account.deleted");
    }
}
