package boardside.app.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Scripts and styles from the class path, asked for again by their hash. */
final class StaticFiles {
    private static final Map<String, String> TYPES = Map.of(
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml",
            "png", "image/png",
            "webmanifest", "application/manifest+json");

    private record Resource(byte[] bytes, String tag) {}

    private final Map<String, Optional<Resource>> read = new ConcurrentHashMap<>();

    void serve(Context ctx) {
        String path = ctx.pathParam("file");
        String type = TYPES.get(path.substring(path.lastIndexOf('.') + 1));
        Optional<Resource> resource = type == null || path.contains("..")
                ? Optional.empty()
                : read.size() < 1000 ? read.computeIfAbsent(path, StaticFiles::load) : load(path);
        if (resource.isEmpty() || type == null) {
            throw new Refusal(404, "There is no file \"" + path + "\" here.");
        }
        ctx.header("Cache-Control", "no-cache").header("ETag", resource.get().tag());
        if (resource.get().tag().equals(ctx.header("If-None-Match"))) {
            ctx.status(304);
            return;
        }
        ctx.contentType(type).result(resource.get().bytes());
    }

    private static Optional<Resource> load(String path) {
        try (InputStream in = StaticFiles.class.getResourceAsStream("/boardside/static/" + path)) {
            if (in == null) {
                return Optional.empty();
            }
            byte[] bytes = in.readAllBytes();
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(bytes);
            return Optional.of(new Resource(bytes, '"' + HexFormat.of().formatHex(hash, 0, 12) + '"'));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
