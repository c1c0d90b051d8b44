package boardside.app.web;

import boardside.app.practice.Setup;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Runs in a few words. */
final class Describe {
    private final Texts texts;

    Describe(Texts texts) {
        this.texts = texts;
    }

    /** What a drill would be with this set-up, for its tile. */
    String tile(Drill drill, Setup setup) {
        String key = "drill." + drill.word() + ".tile";
        if (drill.needsGhost()) {
            return texts.of(key, Objects.requireNonNullElse(setup.ghost(), 0), target(setup));
        }
        if (drill == Drill.TOTAL) {
            return setup.rounds() == null ? texts.of(key + ".open") : texts.of(key, setup.rounds());
        }
        return texts.of(key);
    }

    /** A run by its drill, bags, face, approach, board and stake. */
    String run(Drill drill, Setup setup, Map<String, String> bagNames) {
        List<String> parts = new ArrayList<>();
        parts.add(texts.of("drill." + drill.word()));
        if (drill == Drill.TOTAL || drill.needsGhost()) {
            parts.add(tile(drill, setup));
        }
        setup.bags().stream().map(bagNames::get).filter(Objects::nonNull).forEach(parts::add);
        if (setup.face() != null) {
            parts.add(texts.of("face." + setup.face().word()));
        }
        if (setup.approach() != null) {
            parts.add(texts.of("approach." + setup.approach().word()));
        }
        if (setup.board() != BoardKind.REGULATION) {
            parts.add(texts.of("board." + setup.board().word()));
        }
        if (setup.setting() != Setting.PRACTICE) {
            parts.add(texts.of("setting." + setup.setting().word()));
        }
        return String.join(", ", parts);
    }

    private static int target(Setup setup) {
        return Objects.requireNonNullElse(setup.target(), 21);
    }
}
