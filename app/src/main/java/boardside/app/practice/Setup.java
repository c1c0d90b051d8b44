package boardside.app.practice;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import java.util.List;
import java.util.function.Consumer;
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
 * @param order how the bag sets of a round follow each other, or null for one after the other
 * @param ghostPlay how a ghost whose points change from round to round plays, or null for one that is always the same
 * @param contest the two sides of a duel or a game, or null elsewhere
 * @param stakes what makes it harder, or null for nothing
 * @param exercise what is tried in placement and situations, or null elsewhere
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
        boolean onlyIn,
        @Nullable BagOrder order,
        @Nullable GhostPlay ghostPlay,
        @Nullable Contest contest,
        @Nullable Stakes stakes,
        @Nullable Exercise exercise) {
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
        return new Draft().setup();
    }

    /** The same but for what is changed in the draft. */
    public Setup with(Consumer<Draft> changes) {
        Draft draft = new Draft(this);
        changes.accept(draft);
        return draft.setup();
    }

    /** Whether the bag sets of a round are called in random order. */
    public boolean mixed() {
        return order == BagOrder.MIXED;
    }

    /** A set-up in the making; its fields are those of {@link Setup} and begin as {@link Setup#plain()}. */
    public static final class Draft {
        public List<String> bags = List.of();
        public int bagsPerSet = 4;
        public @Nullable Face face;
        public @Nullable Approach approach;
        public BoardKind board = BoardKind.REGULATION;
        public Setting setting = Setting.PRACTICE;
        public @Nullable Conditions conditions;
        public @Nullable Integer rounds;
        public @Nullable Integer ghost;
        public @Nullable Integer target;
        public boolean exact;
        public @Nullable Integer fallBack;
        public @Nullable Integer skunk;
        public boolean bagByBag;
        public boolean onlyIn;
        public @Nullable BagOrder order;
        public @Nullable GhostPlay ghostPlay;
        public @Nullable Contest contest;
        public @Nullable Stakes stakes;
        public @Nullable Exercise exercise;

        private Draft() {}

        private Draft(Setup s) {
            bags = s.bags;
            bagsPerSet = s.bagsPerSet;
            face = s.face;
            approach = s.approach;
            board = s.board;
            setting = s.setting;
            conditions = s.conditions;
            rounds = s.rounds;
            ghost = s.ghost;
            target = s.target;
            exact = s.exact;
            fallBack = s.fallBack;
            skunk = s.skunk;
            bagByBag = s.bagByBag;
            onlyIn = s.onlyIn;
            order = s.order;
            ghostPlay = s.ghostPlay;
            contest = s.contest;
            stakes = s.stakes;
            exercise = s.exercise;
        }

        private Setup setup() {
            return new Setup(
                    bags,
                    bagsPerSet,
                    face,
                    approach,
                    board,
                    setting,
                    conditions,
                    rounds,
                    ghost,
                    target,
                    exact,
                    fallBack,
                    skunk,
                    bagByBag,
                    onlyIn,
                    order,
                    ghostPlay,
                    contest,
                    stakes,
                    exercise);
        }
    }
}
