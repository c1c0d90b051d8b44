package boardside.app.record;

import boardside.app.practice.SlideTest;
import boardside.app.store.Database;
import java.util.List;
import java.util.Optional;

/** Slide tests that were kept; they are recorded by {@link Records#apply}. Thread safe. */
public final class SlideTests {
    private final Database database;

    SlideTests(Database database) {
        this.database = database;
    }

    /** Those of some days (yyyy-mm-dd, both included), the first first. */
    public List<SlideTest> within(int player, String from, String to) {
        return database.read(rows -> rows.slideTests().within(player, from, to));
    }

    /** The latest, the newest first. */
    public List<SlideTest> latest(int player, int most) {
        return database.read(rows -> rows.slideTests().latest(player, most));
    }

    /** One by id; a deleted one is there without what was tapped. */
    public Optional<SlideTest> find(int player, String id) {
        return database.read(rows -> rows.slideTests().find(player, id));
    }

    /** What is wrong with a test that is to be recorded, a sentence each. */
    public List<String> faults(int player, SlideTest.Tapped tapped) {
        return database.read(rows -> SlideTestRecording.faults(rows, player, tapped));
    }
}
