package boardside.app.web;

import boardside.app.practice.Contest;
import boardside.app.practice.Setup;
import boardside.app.record.Games;
import boardside.engine.rules.Drill;
import boardside.engine.rules.FirstThrow;

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
        return Setup.plain().with(setup -> {
            setup.rounds = rounds;
            setup.ghost = ghost;
            setup.target = Games.played(drill) ? 21 : null;
            setup.onlyIn = drill.mostBags() > 4;
            setup.contest = switch (drill) {
                case DUEL -> new Contest(true, true, false, true, FirstThrow.KEEP, 0, new Contest.Way("", null, null));
                case GAME -> new Contest(false, true, false, true, FirstThrow.KEEP, 0, null);
                default -> null;
            };
            setup.exercise = TriesPage.DRILLS.contains(drill) ? TriesStart.first(drill) : null;
        });
    }
}
