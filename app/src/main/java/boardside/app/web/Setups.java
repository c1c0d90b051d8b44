package boardside.app.web;

import boardside.app.practice.Setup;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import java.util.List;

/** How a drill is set up before anybody has thrown it. */
final class Setups {
    private Setups() {}

    /** Ten rounds of four; a race to 21 against a middling ghost; five rounds of bags in; no end to casual throwing. */
    static Setup first(Drill drill) {
        Integer rounds = switch (drill) {
            case TOTAL -> 10;
            case VOLUME -> 5;
            default -> null;
        };
        Integer ghost = drill.needsGhost() ? 5 : null;
        return new Setup(
                List.of(),
                4,
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                rounds,
                ghost,
                drill.needsGhost() ? 21 : null,
                false,
                null,
                null,
                false,
                drill.mostBags() > 4);
    }

    static Setup withBags(Setup s, List<String> bags) {
        return new Setup(
                bags,
                s.bagsPerSet(),
                s.face(),
                s.approach(),
                s.board(),
                s.setting(),
                s.conditions(),
                s.rounds(),
                s.ghost(),
                s.target(),
                s.exact(),
                s.fallBack(),
                s.skunk(),
                s.bagByBag(),
                s.onlyIn());
    }
}
