package boardside.app.web;

import boardside.app.fuzz.Fuzzed;
import boardside.app.practice.Failure;
import java.time.Instant;

/** What phones send: stored, repeated or refused by operation, or refused as a whole. */
public final class OutboxFuzz {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");

    private OutboxFuzz() {}

    /** Opens the store before the time of the first input counts. */
    public static void fuzzerInitialize() {
        Fuzzed.records("outbox");
    }

    /** One input. */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            RunPage.Upload upload = RunPage.upload(Fuzzed.text(data));
            Fuzzed.records("outbox").apply(1, upload.operations(), NOW, RunPage.ahead(upload.sentAt(), NOW));
        } catch (Refusal refused) {
            if (refused.status() >= 500 || String.valueOf(refused.getMessage()).isBlank()) {
                throw new AssertionError("refused without a reason", refused);
            }
        } catch (Failure | IllegalArgumentException refused) {
            Fuzzed.refused(refused, Fuzzed.text(data));
        }
    }
}
