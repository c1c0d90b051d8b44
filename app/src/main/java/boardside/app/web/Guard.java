package boardside.app.web;

import boardside.app.account.Devices;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.SameSite;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

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

    Guard(Set<String> hosts, boolean secure, Devices devices) {
        this.hosts = hosts;
        this.secure = secure;
        this.devices = devices;
    }

    /** Puts the headers of every answer. */
    static void headers(Context ctx) {
        HEADERS.forEach(ctx::header);
    }

    /** Lets the request through or throws a {@link Refusal}. */
    void check(Context ctx, Access access) {
        checkHost(ctx);
        boolean let = switch (access) {
            case EVERYONE -> true;
            case DEVICE -> local(ctx) || paired(ctx);
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
        String host = hostName(ctx.header("Host"));
        if (!hosts.contains(host)) {
            throw new Refusal(
                    421,
                    "Boardside does not answer to the name \"" + host + "\". Use the address it printed at start.");
        }
    }

    static String hostName(@Nullable String header) {
        if (header == null) {
            return "";
        }
        String host = header.toLowerCase(Locale.ROOT);
        if (host.startsWith("[")) {
            return host.substring(0, host.indexOf(']') + 1);
        }
        int colon = host.indexOf(':');
        return colon < 0 ? host : host.substring(0, colon);
    }

    /** Whether the request comes from this machine itself and not through a proxy. */
    static boolean local(Context ctx) {
        if (ctx.header("X-Forwarded-For") != null || ctx.header("Forwarded") != null) {
            return false;
        }
        try {
            return InetAddress.getByName(ctx.req().getRemoteAddr()).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
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
