package boardside.app.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** What players hand each other: a file, or the text of a picture to scan. */
final class Sharing {
    private static final int LONGEST = 4000;

    private Sharing() {}

    /**
     * What was handed over: the form's {@code file}, else its {@code text}; empty where there is none, or where it is too
     * long to be what is shared here.
     */
    static String text(Context ctx) {
        UploadedFile file = ctx.uploadedFile("file");
        try {
            String text = file != null && file.size() > 0
                    ? new String(file.content().readNBytes(LONGEST + 1), StandardCharsets.UTF_8)
                    : Objects.requireNonNullElse(ctx.formParam("text"), "");
            return text.length() > LONGEST ? "" : text.strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Answers with a file to keep. */
    static void file(Context ctx, String name, String json) {
        ctx.contentType("application/json; charset=utf-8")
                .header("Content-Disposition", "attachment; filename=\"" + name + "\"")
                .result(json);
    }
}
