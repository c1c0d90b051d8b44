package boardside.app.practice;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a run is set up, as the player left it; every part may change between rounds.
 *
 * @param bags ids of the bag sets in play, in the order thrown; one outside volume and casual; empty when unnamed
 * @param bagsPerSet bags of each set thrown in a round, 1..100
 * @param face the face down, or null
 * @param approach the approach, or null
 * @param board the kind of board
 * @param setting what is at stake
 * @param conditions how the boards play, or null
 * @param rounds rounds planned, or null for an open end
 * @param ghost the ghost's points a round, 0..12, or null
 * @param target points to reach in a game, or null
 * @param exact whether the target must be hit exactly
 * @param fallBack score to fall back to when an exact target is passed, or null for the usual
 * @param skunk lead to nil that ends the game, or null for none
 * @param bagByBag whether bags are recorded one at a time rather than a round at a time
 * @param onlyIn whether only the bags in are counted
 */
public record Setup(
        List<String> bags,
        int bagsPerSet,
        @Nullable Face face,
        @Nullable Approach approach,
        BoardKind board,
        Setting setting,
        @Nullable Conditions conditions,
        @Nullable Integer rounds,
        @Nullable Integer ghost,
        @Nullable Integer target,
        boolean exact,
        @Nullable Integer fallBack,
        @Nullable Integer skunk,
        boolean bagByBag,
        boolean onlyIn) {
    /** Checked, lists copied. */
    public Setup {
        bags = List.copyOf(bags);
        if (!(bagsPerSet >= 1 && bagsPerSet <= 100)) {
            throw new IllegalArgumentException("1 to 100 bags a set and round, not " + bagsPerSet);
        }
        if (rounds != null && !(rounds >= 1 && rounds <= 1000)) {
            throw new IllegalArgumentException("1 to 1000 rounds, not " + rounds);
        }
        if (ghost != null && !(ghost >= 0 && ghost <= 12)) {
            throw new IllegalArgumentException("a ghost scores 0 to 12 a round, not " + ghost);
        }
        if (target != null && !(target >= 1 && target <= 999)) {
            throw new IllegalArgumentException("1 to 999 points to reach, not " + target);
        }
    }

    /** Four unnamed bags at a regulation board in practice, nothing else said. */
    public static Setup plain() {
        return new Setup(
                List.of(),
                4,
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                null,
                null,
                false,
                null,
                null,
                false,
                false);
    }
}
