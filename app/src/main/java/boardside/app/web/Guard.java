package boardside.app.web;

import boardside.app.account.Devices;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Who is let through, before any handler runs: known host names only (so that no other site can point its own name
 * here), the access rule of the route, and for everything that changes something a token that only our own pages know.
 *
 * <p>The token is the hash of a random cookie that scripts and other sites cannot read. Nothing of it is kept here, so a
 * page that was open while the server was restarted can still send what it kept.
 */
final class Guard {
    static final String VISIT = "boardside-visit";
    static final String DEVICE = "boardside-device";
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

    private final SecureRandom random = new SecureRandom();
    private final Set<String> hosts;
    private final boolean secure;
    private final Devices devices;
    private final Predicate<Context> here;

    /**
     * @param hosts names a request may use, as {@link Network#hosts()} gives them
     * @param secure whether cookies travel over HTTPS only
     * @param devices who is let in
     * @param here whether a request comes from this machine; {@link #overLoopback} but in tests
     */
    Guard(Set<String> hosts, boolean secure, Devices devices, Predicate<Context> here) {
        this.hosts = hosts;
        this.secure = secure;
        this.devices = devices;
        this.here = here;
    }

    /** What holds for every request: the headers of its answer, and that it is made again over HTTPS where that is on. */
    void before(Context ctx) {
        HEADERS.forEach(ctx::header);
        if (secure && !ctx.req().isSecure()) {
            checkHost(ctx);
            ctx.redirect(
                    "https://" + ctx.header("Host") + ctx.req().getRequestURI() + query(ctx),
                    HttpStatus.PERMANENT_REDIRECT);
            ctx.skipRemainingHandlers();
        }
    }

    private static String query(Context ctx) {
        return ctx.queryString() == null ? "" : "?" + ctx.queryString();
    }

    /** Lets the request through or throws a {@link Refusal}. */
    void check(Context ctx, Access access) {
        checkHost(ctx);
        boolean let = switch (access) {
            case EVERYONE -> true;
            case DEVICE -> letIn(ctx);
            case LOCAL -> local(ctx);
        };
        if (!let) {
            throw access == Access.LOCAL
                    ? new Refusal(403, "This page can only be opened on the machine that runs Boardside.")
                    : new Refusal(
                            401,
                            "This device has not been let in. Open /pair here and type the code that the machine running"
                                    + " Boardside shows under Devices.");
        }
        if (ctx.method() != HandlerType.GET && ctx.method() != HandlerType.HEAD) {
            checkToken(ctx);
        }
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

    /** Whether the request comes from this machine itself and not through a proxy. */
    boolean local(Context ctx) {
        return FORWARDED.stream().allMatch(header -> ctx.header(header) == null) && here.test(ctx);
    }

    static boolean overLoopback(Context ctx) {
        try {
            return InetAddress.getByName(ctx.req().getRemoteAddr()).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    /** Whether the request comes from this machine or a device that was let in. */
    boolean letIn(Context ctx) {
        return local(ctx) || paired(ctx);
    }

    private boolean paired(Context ctx) {
        String token = ctx.cookie(DEVICE);
        return token != null && devices.find(token).isPresent();
    }

    private static void checkToken(Context ctx) {
        String visit = ctx.cookie(VISIT);
        String given = ctx.header(TOKEN_HEADER);
        if (given == null) {
            given = ctx.formParam(TOKEN_FIELD);
        }
        if (visit == null || given == null || !MessageDigest.isEqual(hash(visit), bytes(given))) {
            throw new Refusal(
                    403, "This form did not come from a page of Boardside, or cookies are off. Load the page again.");
        }
        String origin = ctx.header("Origin");
        if (origin != null && !origin.replaceFirst("^https?://", "").equalsIgnoreCase(ctx.header("Host"))) {
            throw new Refusal(403, "Requests from other sites change nothing here.");
        }
    }

    /** The token for this visitor's forms; sets the cookie it belongs to on a first visit. */
    String token(Context ctx) {
        String visit = ctx.cookie(VISIT);
        if (visit == null || visit.length() < 32) {
            visit = randomText();
            ctx.cookie(cookie(VISIT, visit));
        }
        return HexFormat.of().formatHex(hash(visit));
    }

    String randomText() {
        byte[] bytes = new byte[32];
        random.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    /** A cookie for a year that scripts cannot read and that no form of another site carries. */
    Cookie cookie(String name, String value) {
        return new Cookie(name, value, "/", YEAR, secure, true, null, SameSite.LAX);
    }

    private static byte[] hash(String visit) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(("form " + visit).getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static byte[] bytes(String hex) {
        try {
            return HexFormat.of().parseHex(hex);
        } catch (IllegalArgumentException e) {
            return new byte[0];
        }
    }
}
