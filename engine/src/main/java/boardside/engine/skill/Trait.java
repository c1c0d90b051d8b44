package boardside.engine.skill;

import boardside.engine.rules.Word;
import org.jspecify.annotations.Nullable;

/** A way in which throws can differ, and by which they can be compared. */
public enum Trait implements Word {
    BAG("bag set"),
    FACE("face"),
    APPROACH("approach"),
    BOARD("board"),
    SETTING("setting"),
    CONDITIONS("conditions");

    private final String title;

    Trait(String title) {
        this.title = title;
    }

    /** How a sentence calls it. */
    String title() {
        return title;
    }

    /** The word recorded for it, or empty where none was. */
    String of(RunCount count) {
        return switch (this) {
            case BAG -> count.bag();
            case FACE -> word(count.face());
            case APPROACH -> word(count.approach());
            case BOARD -> count.board().word();
            case SETTING -> count.setting().word();
            case CONDITIONS -> word(count.conditions());
        };
    }

    private static String word(@Nullable Word word) {
        return word == null ? "" : word.word();
    }
}
