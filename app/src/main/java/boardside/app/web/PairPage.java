package boardside.app.web;

import boardside.app.account.Devices;
import io.javalin.http.Context;
import java.util.Map;
import java.util.Objects;

/** Where a device that is not let in lands: the code, and one tap. */
public final class PairPage {
    private final Web web;

    PairPage(Web web) {
        this.web = web;
    }

    /**
     * What the page shows.
     *
     * @param code as given by the link or typed last
     * @param name what the device is to be called
     * @param refused whether that code did not work
     * @param in whether this device needs no code
     */
    public record View(String code, String name, boolean refused, boolean in) {}

    void show(Context ctx) {
        String code = Objects.requireNonNullElse(ctx.queryParam("code"), "");
        show(ctx, new View(code, guess(ctx), false, web.guard().letIn(ctx)));
    }

    private void show(Context ctx, View view) {
        web.show(ctx, "pair", web.texts().of("pair.title"), Map.of("view", view));
    }

    /** What kind of device it says it is; its owner may call it something else. */
    static String guess(Context ctx) {
        String agent = Objects.requireNonNullElse(ctx.userAgent(), "");
        return java.util.stream.Stream.of("iPhone", "iPad", "Android", "Windows", "Mac", "Linux")
                .filter(agent::contains)
                .findFirst()
                .orElse("");
    }

    void pair(Context ctx) {
        String code = Objects.requireNonNullElse(ctx.formParam("code"), "");
        String name = Objects.requireNonNullElse(ctx.formParam("name"), "");
        Devices.Pairing pairing = web.house().devices().pair(code, name);
        if (pairing instanceof Devices.Pairing.Done done) {
            ctx.cookie(web.guard().cookie(Guard.DEVICE, done.token()));
            ctx.redirect("/?said=paired");
            return;
        }
        ctx.status(422);
        show(ctx, new View(code, name, true, false));
    }
}
