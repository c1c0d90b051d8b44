package boardside.app.web;

import boardside.app.account.SignIns;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Signing in, in hosted mode. */
public final class SignInPage {
    private static final int LONGEST_NEXT = 500;
    private static final int LONGEST_PASSWORD_SENT = 1000;

    private final Web web;

    SignInPage(Web web) {
        this.web = web;
    }

    /**
     * What the page shows.
     *
     * @param name as typed last
     * @param next where to go then
     * @param fault what was wrong, worded, or null
     */
    public record View(String name, String next, @Nullable String fault) {}

    /** The page's address for whoever asked for something else first. */
    static String address(Context ctx) {
        String query = ctx.queryString();
        String asked = ctx.path() + (query == null ? "" : "?" + query);
        return asked.equals("/") || asked.length() > LONGEST_NEXT
                ? "/sign-in"
                : "/sign-in?next=" + URLEncoder.encode(asked, StandardCharsets.UTF_8);
    }

    /** A page of ours to go to; the first page where the text is none. */
    static String next(@Nullable String text) {
        return text != null && text.length() <= LONGEST_NEXT && text.matches("/(?![/\\\\])[\\x21-\\x7e&&[^\\\\]]*")
                ? text
                : "/";
    }

    void show(Context ctx) {
        String next = next(ctx.queryParam("next"));
        if (web.account(ctx) != null) {
            ctx.redirect(next);
            return;
        }
        show(ctx, new View("", next, null));
    }

    private void show(Context ctx, View view) {
        web.show(ctx, "sign_in", web.texts().of("signin.title"), Map.of("view", view));
    }

    void signIn(Context ctx) {
        String name = sent(ctx, "name").strip();
        String next = next(ctx.formParam("next"));
        String password = sent(ctx, "password");
        SignIns.Result result = web.signIns()
                .signIn(
                        name,
                        // What is longer than any password is wrong, and not worth the work of its length.
                        password.substring(0, Math.min(LONGEST_PASSWORD_SENT, password.length())),
                        web.guard().client(ctx),
                        PairPage.guess(ctx));
        if (result instanceof SignIns.Result.Done done) {
            web.guard().signIn(ctx, done.token());
            ctx.redirect(next);
            return;
        }
        boolean slowed = result instanceof SignIns.Result.Slowed;
        ctx.status(slowed ? 429 : 422);
        show(ctx, new View(name, next, web.texts().of(slowed ? "account.slowed" : "signin.refused")));
    }

    private static String sent(Context ctx, String name) {
        return Objects.requireNonNullElse(ctx.formParam(name), "");
    }
}
