package boardside.app.practice;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Face;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Target;
import org.jspecify.annotations.Nullable;

/** How many tries of one sort there were, and how many worked; unnamed bags are empty. */
public record TryCounts(
        Shot shot,
        @Nullable Target target,
        Position position,
        String bag,
        @Nullable Face face,
        @Nullable Approach approach,
        BoardKind board,
        boolean byHand,
        int tries,
        int worked) {}
