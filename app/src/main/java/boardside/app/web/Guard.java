package boardside.app.web;

import boardside.app.account.Devices;
import boardside.app.account.SignIns;
import boardside.app.account.Tokens;
import boardside.app.practice.Role;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.security.MessageDigest;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Who is let through, before any handler runs: known host names only (so that no other site can point its own name
 * here), the access rule of the route, and for everything that changes something a token that only our own pages know.
 *
 * <p>The token is the hash of a random cookie that scripts and other sites cannot read: of the one that signs in, else of one
 * that every visitor has. Nothing of it is kept here, so a page that was open while the server was restarted can still send
 * what it kept, and any instance over the same store knows it.
 */
final class Guard {
    static final String VISIT = "boardside-visit";
    static final String DEVICE = "boardside-device";
    static final String LOGIN = "boardside-login";
    static final String TOKEN_FIELD = "token";
    static final String TOKEN_HEADER = "X-Boardside-Token";
    static final int YEAR = 365 * 24 * 3600;

    /** What proxies add; a request that came through one is not from here. */
    private static final List<String> FORWARDED =
            List.of("Forwarded", "X-Forwarded-For", "X-Forwarded-Host", "X-Real-IP", "Via");

    private static final String POLICY = String.join(
            "; ",
            "default-src 'none'",
            "script-src 'self'",
            "style-src 'self'",
            "img-src 'self' data:",
            "connect-src 'self'",
            "manifest-src 'self'",
            "worker-src 'self'",
            "form-action 'self'",
            "base-uri 'none'",
            "frame-ancestors 'none'");

    /** Headers of every answer, whatever becomes of the request. */
    static final Map<String, String> HEADERS = Map.of(
            "Content-Security-Policy", POLICY,
            "X-Content-Type-Options", "nosniff",
            "Referrer-Policy", "same-origin",
            "Cross-Origin-Opener-Policy", "same-origin",
            "Cross-Origin-Resource-Policy", "same-origin",
            "Permissions-Policy", "camera=(), microphone=(), geolocation=()",
            "Cache-Control", "no-store");

    private final Set<String> hosts;
    private final boolean secure;
    private final boolean openMetrics;
    private final @Nullable Hosting hosting;
    private final Devices devices;
    private final SignIns signIns;
    private final Predicate<Context> here;

    /**
     * @param network what this machine is called; without other addresses, a request may use these names
     * @param options how it is served
     * @param devices who is let in, in a household
     * @param signIns who is signed in, in hosted mode
     * @param here whether a request comes from this machine; {@link #overLoopback} but in tests
     */
    Guard(Network network, ServerOptions options, Devices devices, SignIns signIns, Predicate<Context> here) {
        this.hosting = options.hosting();
        this.hosts = hosting == null || hosting.addresses().isEmpty() ? network.hosts() : hosting.hosts();
        this.openMetrics = options.openMetrics();
        this.secure = options.tls() != null || hosting != null && hosting.https();
        this.devices = devices;
        this.signIns = signIns;
        this.here = here;
    }

    /** What holds for every request: the headers of its answer, and that it is made again over HTTPS where that is on. */
    void before(Context ctx) {
        HEADERS.forEach(ctx::header);
        boolean watched = WatchRoutes.PROBES.contains(ctx.path()) || WatchRoutes.METRICS.equals(ctx.path());
        if (secure && !watched && !overHttps(ctx)) {
            checkHost(ctx);
            ctx.redirect(address(ctx, "https") + ctx.req().getRequestURI() + query(ctx), HttpStatus.PERMANENT_REDIRECT);
            ctx.skipRemainingHandlers();
        }
    }

    private boolean overHttps(Context ctx) {
        return ctx.req().isSecure() || proxied() && "https".equalsIgnoreCase(last(ctx.header("X-Forwarded-Proto")));
    }

    private boolean proxied() {
        return hosting != null && hosting.proxied();
    }

    /** What the proxy before this program added itself, behind whatever it was sent. */
    private static String last(@Nullable String header) {
        String all = header == null ? "" : header;
        return all.substring(all.lastIndexOf(',') + 1).strip();
    }

    /** Where a request comes from, as far as that is known: the address that the trusted proxy saw, else the other end's. */
    String client(Context ctx) {
        // A header given several times is one list (RFC 9110, section 5.3).
        String seen =
                proxied() ? last(String.join(",", Collections.list(ctx.req().getHeaders("X-Forwarded-For")))) : "";
        return seen.isEmpty() ? ctx.req().getRemoteAddr() : seen;
    }

    /** The address this program was asked under, without a slash at its end; its name was checked. */
    String address(Context ctx) {
        return address(ctx, secure ? "https" : "http");
    }

    private String address(Context ctx, String scheme) {
        String host = Network.hostOf(ctx.header("Host"));
        return addresses().stream()
                .filter(address -> Network.hostOf(address.getAuthority()).equals(host))
                .findFirst()
                .map(URI::toString)
                .orElse(scheme + "://" + ctx.header("Host"));
    }

    private List<URI> addresses() {
        return hosting == null ? List.of() : hosting.addresses();
    }

    private static String query(Context ctx) {
        return ctx.queryString() == null ? "" : "?" + ctx.queryString();
    }

    /** Lets the request through or throws a {@link Refusal}. */
    void check(Context ctx, Access access) {
        switch (access) {
            case PROBE -> {}
            case MONITOR -> {
                // A program here names what it connects to; other sites cannot point their own names at that.
                if (!Network.LOOPBACK.contains(Network.hostOf(ctx.header("Host")))) {
                    checkHost(ctx);
                }
            }
            default -> checkHost(ctx);
        }
        boolean let = switch (access) {
            case EVERYONE, PROBE -> true;
            case MONITOR -> openMetrics || unforwarded(ctx) && here.test(ctx) || may(ctx, Role.HOST);
            case DEVICE -> letIn(ctx);
            case ORGANISER -> organises(ctx);
            case HOST -> may(ctx, Role.HOST);
            case LOCAL -> local(ctx);
        };
        if (!let) {
            throw refusal(ctx, access);
        }
        if (ctx.method() != HandlerType.GET && ctx.method() != HandlerType.HEAD) {
            checkToken(ctx);
        }
    }

    /** Whether whoever asks may run leagues. */
    boolean organises(Context ctx) {
        return hosting == null ? letIn(ctx) : may(ctx, Role.ORGANISER);
    }

    private Refusal refusal(Context ctx, Access access) {
        if (access == Access.MONITOR) {
            return new Refusal(
                    403,
                    "These figures are for the machine that runs Boardside. Start it with --open-metrics to show them to"
                            + " everybody who can reach it.");
        }
        if (hosting != null) {
            return signed(ctx).isEmpty()
                    ? new Refusal(401, "You are not signed in here, or not any more. Sign in, then try again.")
                    : new Refusal(
                            403,
                            access == Access.ORGANISER
                                    ? "This is for organisers of leagues. A host can make you one."
                                    : "This is for hosts.");
        }
        return access == Access.LOCAL
                ? new Refusal(403, "This page can only be opened on the machine that runs Boardside.")
                : new Refusal(
                        401,
                        "This device has not been let in. Open /pair here and type the code that the machine running"
                                + " Boardside shows under Devices.");
    }

    private boolean may(Context ctx, Role role) {
        return signed(ctx)
                .filter(signed -> signed.account().role().covers(role))
                .isPresent();
    }

    private void checkHost(Context ctx) {
        String host = Network.hostOf(ctx.header("Host"));
        if (!hosts.contains(host)) {
            throw new Refusal(
                    421,
                    "Boardside does not answer to the name \"" + host
                            + "\". Use an address it printed at start; if this"
                            + " machine has a new address since, start Boardside again.");
        }
    }

    /** Whether the request comes from this machine itself and not through a proxy; never so in hosted mode, where it is nothing. */
    boolean local(Context ctx) {
        return hosting == null && unforwarded(ctx) && here.test(ctx);
    }

    private static boolean unforwarded(Context ctx) {
        return FORWARDED.stream().allMatch(header -> ctx.header(header) == null);
    }

    static boolean overLoopback(Context ctx) {
        try {
            return InetAddress.getByName(ctx.req().getRemoteAddr()).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    /** Whether the request comes from this machine or a device that was let in; in hosted mode, from somebody signed in. */
    boolean letIn(Context ctx) {
        return hosting == null ? local(ctx) || paired(ctx) : signed(ctx).isPresent();
    }

    /** Who is signed in; always empty in a household. */
    Optional<SignIns.Signed> signed(Context ctx) {
        if (hosting == null) {
            return Optional.empty();
        }
        Optional<SignIns.Signed> known = ctx.attribute(LOGIN);
        if (known == null) {
            // Should the store fail, the page that says so is that of a stranger.
            ctx.attribute(LOGIN, Optional.empty());
            String token = ctx.cookie(named(LOGIN));
            known = token == null ? Optional.empty() : signIns.find(token);
            ctx.attribute(LOGIN, known);
        }
        return known;
    }

    /** Keeps a login's token in this browser; whatever login it had before is over. */
    void signIn(Context ctx, String token) {
        signed(ctx)
                .ifPresent(before ->
                        signIns.signOut(before.account(), before.login().id()));
        ctx.cookie(cookie(named(LOGIN), token, Math.toIntExact(SignIns.LONGEST.toSeconds())));
        ctx.cookie(cookie(Web.PLAYER, "", 0));
    }

    /** Ends the login of this browser. */
    void signOut(Context ctx) {
        signed(ctx)
                .ifPresent(before ->
                        signIns.signOut(before.account(), before.login().id()));
        ctx.cookie(cookie(named(LOGIN), "", 0));
        ctx.cookie(cookie(Web.PLAYER, "", 0));
    }

    /** Where it can be, a cookie of hosted mode is bound to this host and HTTPS by its name (RFC 6265bis, 4.1.3.2). */
    private String named(String cookie) {
        return hosting != null && secure ? "__Host-" + cookie : cookie;
    }

    private boolean paired(Context ctx) {
        String token = ctx.cookie(DEVICE);
        return token != null && devices.find(token).isPresent();
    }

    private void checkToken(Context ctx) {
        String visit = secret(ctx);
        String given = ctx.header(TOKEN_HEADER);
        if (given == null) {
            given = ctx.formParam(TOKEN_FIELD);
        }
        if (visit == null || given == null || !MessageDigest.isEqual(bytes(token(visit)), bytes(given))) {
            throw new Refusal(
                    403, "This form did not come from a page of Boardside, or cookies are off. Load the page again.");
        }
        String origin = ctx.header("Origin");
        if (origin != null && !ours(origin, ctx)) {
            throw new Refusal(403, "Requests from other sites change nothing here.");
        }
    }

    private boolean ours(String origin, Context ctx) {
        return addresses().isEmpty()
                ? origin.replaceFirst("^https?://", "").equalsIgnoreCase(ctx.header("Host"))
                : addresses().stream().anyMatch(address -> address.toString().equalsIgnoreCase(origin));
    }

    /** What the token of this visitor's forms is made from, or null where there is nothing yet. */
    private @Nullable String secret(Context ctx) {
        return signed(ctx).isPresent() ? ctx.cookie(named(LOGIN)) : ctx.cookie(named(VISIT));
    }

    /** The token for this visitor's forms; sets the cookie it belongs to on a first visit. */
    String token(Context ctx) {
        String secret = secret(ctx);
        if (secret == null || secret.length() < 32) {
            secret = Tokens.random();
            ctx.cookie(cookie(named(VISIT), secret));
        }
        return token(secret);
    }

    private static String token(String secret) {
        return Tokens.hash("form " + secret);
    }

    /** A cookie for a year that scripts cannot read and that no form of another site carries. */
    Cookie cookie(String name, String value) {
        return cookie(name, value, YEAR);
    }

    private Cookie cookie(String name, String value, int seconds) {
        return new Cookie(name, value, "/", seconds, secure, true, null, SameSite.LAX);
    }

    private static byte[] bytes(String hex) {
        try {
            return HexFormat.of().parseHex(hex);
        } catch (IllegalArgumentException e) {
            return new byte[0];
        }
    }
}
