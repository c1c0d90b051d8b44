package boardside.app.web;

import boardside.app.account.Accounts;
import boardside.app.practice.Account;
import boardside.app.practice.Ticket;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Links that work once: taking an invitation, and setting a new password. Looking at the page uses nothing up. */
public final class TicketPage {
    private final Web web;

    TicketPage(Web web) {
        this.web = web;
    }

    void invitation(Context ctx) {
        show(ctx, Ticket.Kind.INVITATION, Fields.filled(web.texts(), Map.of()));
    }

    void reset(Context ctx) {
        show(ctx, Ticket.Kind.RESET, Fields.filled(web.texts(), Map.of()));
    }

    private void show(Context ctx, Ticket.Kind kind, Fields fields) {
        Optional<Ticket> ticket = web.accounts().ticket(kind, ctx.pathParam("ticket"));
        if (ticket.isEmpty()) {
            gone(ctx);
            return;
        }
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("action", ctx.path());
        values.put("invited", kind == Ticket.Kind.INVITATION);
        values.put("signed", web.account(ctx));
        values.put("fields", fields);
        web.show(ctx, "ticket", web.texts().of("ticket.title." + kind.word()), values);
    }

    private void gone(Context ctx) {
        throw new Refusal(410, web.texts().of("ticket.gone"));
    }

    void take(Context ctx) {
        Fields fields = Fields.sent(ctx, web.texts());
        if (twice(ctx, fields)) {
            settle(
                    ctx,
                    Ticket.Kind.INVITATION,
                    fields,
                    web.accounts()
                            .take(
                                    ctx.pathParam("ticket"),
                                    fields.value("name"),
                                    fields.value("player"),
                                    AccountPage.password(ctx, "password")));
        } else {
            again(ctx, Ticket.Kind.INVITATION, fields);
        }
    }

    void setPassword(Context ctx) {
        Fields fields = Fields.sent(ctx, web.texts());
        if (twice(ctx, fields)) {
            settle(
                    ctx,
                    Ticket.Kind.RESET,
                    fields,
                    web.accounts().setPassword(ctx.pathParam("ticket"), AccountPage.password(ctx, "password")));
        } else {
            again(ctx, Ticket.Kind.RESET, fields);
        }
    }

    private boolean twice(Context ctx, Fields fields) {
        boolean same = AccountPage.password(ctx, "password").equals(AccountPage.password(ctx, "again"));
        if (!same) {
            fields.fault("again", web.texts().of("password.differs"));
        }
        return same;
    }

    private void settle(Context ctx, Ticket.Kind kind, Fields fields, Accounts.Taken taken) {
        if (taken instanceof Accounts.Taken.Done done) {
            welcome(ctx, done.account());
            return;
        }
        if (taken instanceof Accounts.Taken.Gone) {
            gone(ctx);
        } else if (taken instanceof Accounts.Taken.BadPassword bad) {
            fields.fault("password", AccountPage.fault(web.texts(), bad.fault()));
        } else if (taken instanceof Accounts.Taken.BadName) {
            fields.fault("name", web.texts().of("ticket.name.bad"));
        } else if (taken instanceof Accounts.Taken.NameTaken) {
            fields.fault("name", web.texts().of("ticket.name.taken"));
        } else {
            fields.fault("player", web.texts().of("ticket.player.bad"));
        }
        again(ctx, kind, fields);
    }

    private void again(Context ctx, Ticket.Kind kind, Fields fields) {
        ctx.status(422);
        show(ctx, kind, fields);
    }

    private void welcome(Context ctx, Account account) {
        Optional<String> token = web.signIns().signIn(account, PairPage.guess(ctx));
        token.ifPresent(in -> web.guard().signIn(ctx, in));
        ctx.redirect(token.isPresent() ? "/?said=account.welcome" : "/sign-in");
    }
}
