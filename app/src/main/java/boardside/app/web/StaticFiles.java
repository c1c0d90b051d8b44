package boardside.app.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Scripts, styles and icons from the class path, listed in {@code static.txt}: to look for them would go through all that the
 * program's jar holds. Pages ask for them under an address that holds a hash of them all, so that a browser may keep them for
 * good and an upgrade is asked for anew, all at once; under an address without it, or with that of another version, they are
 * asked for again each time.
 */
final class StaticFiles {
    private static final String FOLDER = "boardside/static/";
    private static final int TAG_BYTES = 12;
    private static final int VERSION_BYTES = 8;

    private static final Map<String, String> TYPES = Map.of(
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml",
            "png", "image/png",
            "webmanifest", "application/manifest+json");

    private record Resource(byte[] bytes, String tag) {}

    private final Map<String, Resource> files = new TreeMap<>();
    private final String version;

    StaticFiles() {
        MessageDigest all = sha256();
        for (String name : text("static.txt").lines().toList()) {
            byte[] bytes = bytes(FOLDER + name);
            byte[] hash = sha256().digest(bytes);
            all.update(hash);
            files.put(name, new Resource(bytes, '"' + HexFormat.of().formatHex(hash, 0, TAG_BYTES) + '"'));
        }
        // What pages look like hangs on the program, too.
        all.update(Version.number().getBytes(StandardCharsets.UTF_8));
        version = "v-" + HexFormat.of().formatHex(all.digest(), 0, VERSION_BYTES);
    }

    /** What tells this set of files from every other. */
    String version() {
        return version;
    }

    /** Where a page asks for a file. */
    String address(String name) {
        return "/static/" + version + "/" + name;
    }

    /** Where pages may ask for anything, in the order of the names. */
    List<String> addresses() {
        return files.keySet().stream().map(this::address).toList();
    }

    void serve(Context ctx) {
        String path = ctx.pathParam("file");
        boolean current = path.startsWith(version + "/");
        String name = path.replaceFirst("^v-[0-9a-f]+/", "");
        Resource resource = files.get(name);
        String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
        if (resource == null || type == null) {
            throw new Refusal(404, "There is no file \"" + path + "\" here.");
        }
        ctx.header("Cache-Control", current ? "public, max-age=31536000, immutable" : "no-cache")
                .header("ETag", resource.tag());
        if (resource.tag().equals(ctx.header("If-None-Match"))) {
            ctx.status(304);
            return;
        }
        ctx.contentType(type).result(resource.bytes());
    }

    /** A text of the class path beside the static files. */
    static String text(String name) {
        return new String(bytes("boardside/" + name), StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String path) {
        try (InputStream in = StaticFiles.class.getResourceAsStream("/" + path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
