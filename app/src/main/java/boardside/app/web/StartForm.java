package boardside.app.web;

import boardside.app.practice.BagOrder;
import boardside.app.practice.Contest;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Setup;
import boardside.app.record.Games;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Setting;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Reads the form that sets a run up; what is out of range becomes a fault, and the field keeps what was typed. */
final class StartForm extends FormReader {
    private static final int MOST_ROUNDS = 1000;
    private static final int MOST_TARGET = 999;
    private static final int LONGEST_NAME = 100;

    private final Drill drill;
    private final Setup before;

    StartForm(Texts texts, Context ctx, Drill drill, Setup before) {
        super(texts, ctx, fields(before));
        this.drill = drill;
        this.before = before;
    }

    /** What stands in the text and number fields for a set-up. */
    static Map<String, String> fields(Setup setup) {
        Map<String, String> fields = new TreeMap<>();
        fields.put("rounds", text(setup.rounds()));
        fields.put("per-set", String.valueOf(setup.bagsPerSet()));
        fields.put("target", String.valueOf(setup.target() == null ? 21 : setup.target()));
        fields.put("skunk", text(setup.skunk()));
        StakesForm.fill(fields, setup.stakes());
        return fields;
    }

    private static String text(@Nullable Integer number) {
        return Objects.toString(number, "");
    }

    /** The opponent's name, for drills that have one. */
    String opponent() {
        boolean asked = drill == Drill.GAME || drill == Drill.DUEL && !is("sides", "alone");
        return asked ? name("opponent", "start.opponent", LONGEST_NAME) : "";
    }

    /** Whether a fair head start is wished. */
    boolean fair() {
        return drill == Drill.DUEL && !is("sides", "alone") && is("head-start", "fair");
    }

    Setup setup() {
        boolean many = drill.mostBags() > 4;
        boolean game = Games.played(drill);
        List<String> bags = all("bag");
        Integer perSet = many ? number("per-set", "start.per-set", 1, 100) : Integer.valueOf(4);
        int bagsPerSet = perSet == null ? before.bagsPerSet() : perSet;
        int sets = Math.max(1, bags.size() + (many && !text("new-bag").isEmpty() ? 1 : 0));
        if (sets * bagsPerSet > drill.mostBags()) {
            fault("start.fault.bags", drill.mostBags(), sets, bagsPerSet, sets * bagsPerSet);
        }
        Integer ghost = drill.needsGhost() ? number("ghost", "start.ghost", 0, 12) : null;
        Integer skunk = number("skunk", "start.skunk", 0, MOST_TARGET);
        boolean mixed = drill == Drill.VOLUME && is("order", "mixed");
        return before.with(setup -> {
            setup.bags = bags;
            setup.bagsPerSet = bagsPerSet;
            setup.face = word("face", Face.class);
            setup.approach = word("approach", Approach.class);
            setup.board = Optional.ofNullable(word("board", BoardKind.class)).orElse(BoardKind.REGULATION);
            setup.setting = Optional.ofNullable(word("setting", Setting.class)).orElse(Setting.PRACTICE);
            setup.conditions = word("conditions", Conditions.class);
            setup.rounds = game ? null : number("rounds", "start.rounds", 1, MOST_ROUNDS);
            setup.ghost = drill.needsGhost() && ghost == null ? before.ghost() : ghost;
            setup.target = game ? number("target", "start.target", 1, MOST_TARGET) : null;
            setup.exact = is("exact", "yes");
            setup.fallBack = null;
            setup.skunk = skunk == null || skunk == 0 ? null : skunk;
            setup.onlyIn = many && is("count", "in");
            setup.order = mixed ? BagOrder.MIXED : null;
            setup.ghostPlay = drill.needsGhost() ? ghostPlay(setup.ghost) : null;
            setup.contest = contest();
            setup.stakes = StakesForm.read(this, drill, mixed, null);
        });
    }

    /** How the ghost plays, as far as the form says; its points are fixed when the run starts. */
    private @Nullable GhostPlay ghostPlay(@Nullable Integer level) {
        GhostPlay.Kind kind = text("ghost-kind").isEmpty() ? null : word("ghost-kind", GhostPlay.Kind.class);
        if (kind == null) {
            return null;
        }
        String of = kind == GhostPlay.Kind.LEVEL ? String.valueOf(level) : text("ghost-" + kind.word());
        return new GhostPlay(kind, of, List.of(0));
    }

    private @Nullable Contest contest() {
        if (drill != Drill.DUEL && drill != Drill.GAME) {
            return null;
        }
        boolean alone = drill == Drill.DUEL && is("sides", "alone");
        boolean doubles = drill == Drill.GAME && is("doubles", "yes");
        return new Contest(
                alone,
                drill == Drill.DUEL || !is("theirs", "no"),
                doubles,
                !is("first", "other"),
                is("first-throw", "swap") ? FirstThrow.SWAP : FirstThrow.KEEP,
                0,
                alone
                        ? new Contest.Way(
                                text("other-bag"),
                                word("other-face", Face.class),
                                word("other-approach", Approach.class))
                        : null);
    }
}
