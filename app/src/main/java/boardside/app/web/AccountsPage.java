package boardside.app.web;

import boardside.app.account.Accounts;
import boardside.app.practice.Account;
import boardside.app.practice.Failure;
import boardside.app.practice.Role;
import boardside.app.practice.Ticket;
import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** What hosts do: invite, set roles, close and open accounts, hand out links for new passwords. Shows nobody's practice. */
public final class AccountsPage {
    private final Web web;

    AccountsPage(Web web) {
        this.web = web;
    }

    /**
     * What the page shows.
     *
     * @param link just made, or null
     * @param roles to choose from
     */
    public record View(@Nullable Link link, List<String> roles, List<Invited> invitations, List<Entry> accounts) {}

    /** A link to hand on, shown this once. */
    public record Link(String about, String address) {}

    /** An invitation that was not taken yet, with its times worded. */
    public record Invited(String id, String note, String role, String until) {}

    /** An account. */
    public record Entry(String id, String name, String role, String made, boolean closed, boolean own) {}

    void show(Context ctx) {
        show(ctx, null);
    }

    private void show(Context ctx, @Nullable Link link) {
        Account me = Objects.requireNonNull(web.account(ctx));
        List<Invited> invitations =
                web.accounts().invitations().stream().map(this::invited).toList();
        List<Entry> accounts = web.accounts().all().stream()
                .map(account -> new Entry(
                        account.id(),
                        account.name(),
                        account.role().word(),
                        web.dayAndTime(account.madeAt().toString()),
                        account.closed(),
                        account.id().equals(me.id())))
                .toList();
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("view", new View(link, Word.words(Role.class), invitations, accounts));
        web.show(ctx, "accounts", web.texts().of("accounts.title"), values);
    }

    private Invited invited(Ticket ticket) {
        String note = ticket.note().isEmpty() ? web.texts().of("accounts.invited.somebody") : ticket.note();
        return new Invited(
                ticket.id(),
                note,
                ticket.role().word(),
                web.dayAndTime(ticket.until().toString()));
    }

    void invite(Context ctx) {
        Accounts.Made made = attempt(
                () -> web.accounts().invite(chosen(ctx), Objects.requireNonNullElse(ctx.formParam("note"), "")));
        show(ctx, link(ctx, made, web.texts().of("accounts.link.invitation")));
    }

    private Link link(Context ctx, Accounts.Made made, String about) {
        return new Link(
                about, web.guard().address(ctx) + "/" + made.ticket().kind().word() + "/" + made.token());
    }

    private static Role chosen(Context ctx) {
        return Word.of(Role.class, Objects.requireNonNullElse(ctx.formParam("role"), ""));
    }

    void withdraw(Context ctx) {
        web.accounts().withdraw(ctx.pathParam("ticket"));
        ctx.redirect("/accounts?said=accounts.withdrawn");
    }

    void role(Context ctx) {
        attempt(() -> web.accounts().role(ctx.pathParam("account"), chosen(ctx)));
        ctx.redirect("/accounts?said=saved");
    }

    void close(Context ctx) {
        attempt(() -> web.accounts().close(ctx.pathParam("account")));
        ctx.redirect("/accounts?said=accounts.closed");
    }

    void open(Context ctx) {
        attempt(() -> web.accounts().open(ctx.pathParam("account")));
        ctx.redirect("/accounts?said=accounts.opened");
    }

    void reset(Context ctx) {
        Accounts.Made made = attempt(() -> web.accounts().reset(ctx.pathParam("account")));
        show(ctx, link(ctx, made, web.texts().of("accounts.link.reset")));
    }

    void signOut(Context ctx) {
        Account account = web.accounts().all().stream()
                .filter(one -> one.id().equals(ctx.pathParam("account")))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, web.texts().of("accounts.nobody")));
        web.signIns().signOutEverywhere(account);
        ctx.redirect("/accounts?said=accounts.out");
    }

    private static <T> T attempt(Supplier<T> work) {
        try {
            return work.get();
        } catch (Failure.BadInput e) {
            throw new Refusal(422, Web.sentence(e));
        }
    }
}
