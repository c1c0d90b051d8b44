package boardside.app.transfer;

import boardside.app.fuzz.Fuzzed;
import boardside.app.practice.Failure;
import java.time.LocalDate;

/** What organisers paste: fixtures, results and deadlines as people write them, and who plays. */
public final class PastedFuzz {
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

    private PastedFuzz() {}

    /** One input. */
    public static void fuzzerTestOneInput(byte[] data) {
        String text = Fuzzed.text(data);
        try {
            PastedFixtures.read(text, TODAY);
        } catch (Failure.BadInput refused) {
            Fuzzed.refused(refused, Fuzzed.text(data));
        }
        try {
            PastedPlayers.read(text, "all");
        } catch (Failure.BadInput refused) {
            Fuzzed.refused(refused, Fuzzed.text(data));
        }
    }
}
