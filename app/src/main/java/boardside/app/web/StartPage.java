package boardside.app.web;

import boardside.app.practice.BagSet;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Setting a run up: filled in from the last one, so that Start is the second tap. */
public final class StartPage {
    private static final int MOST_ROUNDS = 1000;
    private static final int MOST_TARGET = 999;

    private final Web web;

    StartPage(Web web) {
        this.web = web;
    }

    /**
     * What the form shows.
     *
     * @param drill the drill's word
     * @param setup what is chosen
     * @param bags what can be chosen
     * @param fields text fields and number choices as last entered
     * @param faults what was wrong with the last try, worded
     */
    public record View(Drill kind, Setup setup, List<BagSet> bags, Map<String, String> fields, List<String> faults) {
        public String drill() {
            return kind.word();
        }

        public boolean asksGhost() {
            return kind.needsGhost();
        }

        public boolean asksRounds() {
            return !kind.needsGhost();
        }

        public boolean manyBags() {
            return kind.mostBags() > 4;
        }

        public boolean isGhost(int ghost) {
            return Objects.equals(setup.ghost(), ghost);
        }

        public String field(String name) {
            return fields.getOrDefault(name, "");
        }

        public List<String> roundChoices() {
            return offered(
                    "rounds", kind == Drill.TOTAL ? List.of("5", "10", "15", "20", "") : List.of("5", "10", "20", ""));
        }

        public List<String> perSetChoices() {
            return offered("per-set", List.of("4", "5", "8", "10", "20"));
        }

        public List<String> settings() {
            return Word.words(Setting.class);
        }

        // The usual choices, and the one in force where it is not among them.
        private List<String> offered(String name, List<String> usual) {
            String now = field(name);
            if (usual.contains(now) || !fields.containsKey(name)) {
                return usual;
            }
            List<String> more = new ArrayList<>(usual);
            more.add(0, now);
            return more;
        }
    }

    void show(Context ctx) {
        Player player = web.player(ctx);
        Drill drill = drill(ctx.pathParam("drill"));
        Setup setup = web.nextSetup(player.id(), drill);
        show(ctx, new View(drill, setup, offered(player, setup), fields(setup), List.of()));
    }

    private void show(Context ctx, View view) {
        web.show(ctx, "start", web.texts().of("drill." + view.drill()), Map.of("view", view));
    }

    private List<BagSet> offered(Player player, Setup setup) {
        return web.records().bags(player.id()).stream()
                .filter(bag -> !bag.retired() || setup.bags().contains(bag.id()))
                .toList();
    }

    private static Map<String, String> fields(Setup setup) {
        Map<String, String> fields = new TreeMap<>();
        fields.put("rounds", text(setup.rounds()));
        fields.put("per-set", String.valueOf(setup.bagsPerSet()));
        fields.put("target", String.valueOf(setup.target() == null ? 21 : setup.target()));
        fields.put("skunk", text(setup.skunk()));
        return fields;
    }

    private static String text(@Nullable Integer number) {
        return number == null ? "" : number.toString();
    }

    static Drill drill(String word) {
        return HomePage.DRILLS.stream()
                .filter(drill -> drill.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, "There is no drill \"" + word + "\" to start here."));
    }

    /** Starts a run and goes to it; with faults, shows the form again as it was filled in. */
    void start(Context ctx) {
        Player player = web.player(ctx);
        Drill drill = drill(Objects.requireNonNullElse(ctx.formParam("drill"), ""));
        if ("yes".equals(ctx.formParam("again"))) {
            ctx.redirect("/runs/" + web.startRun(player, drill, web.nextSetup(player.id(), drill), false));
            return;
        }
        Form form = new Form(ctx, web.nextSetup(player.id(), drill));
        Setup setup = form.setup(drill);
        if (!form.faults.isEmpty()) {
            ctx.status(422);
            show(ctx, new View(drill, setup, offered(player, setup), form.fields, form.faults));
            return;
        }
        List<String> bags = new ArrayList<>(setup.bags());
        String name = form.text("new-bag");
        if (!name.isEmpty()) {
            String bag = web.bagNamed(player.id(), name);
            if (drill.mostBags() == 4) {
                bags.clear();
            }
            bags.remove(bag);
            bags.add(bag);
        }
        ctx.redirect("/runs/"
                + web.startRun(
                        player, drill, setup.with(draft -> draft.bags = bags), "yes".equals(ctx.formParam("warm-up"))));
    }

    /** Reads the form; what is out of range becomes a fault, and the field keeps what was typed. */
    private final class Form {
        private final Context ctx;
        private final Setup before;
        private final List<String> faults = new ArrayList<>();
        private final Map<String, String> fields;

        Form(Context ctx, Setup before) {
            this.ctx = ctx;
            this.before = before;
            fields = fields(before);
        }

        String text(String name) {
            String value = Objects.requireNonNullElse(ctx.formParam(name), "").strip();
            fields.put(name, value);
            return value;
        }

        /** A number chosen, or typed into the field beside the choices, which wins. */
        @Nullable
        Integer number(String name, String label, int least, int most) {
            String other = text(name + "-other");
            String value = other.isEmpty() ? text(name) : other;
            if (value.isEmpty()) {
                return null;
            }
            try {
                int number = Integer.parseInt(value);
                if (number >= least && number <= most) {
                    return number;
                }
            } catch (NumberFormatException e) {
                // Said below, like a number out of range.
            }
            faults.add(web.texts().of("start.fault.number", web.texts().of(label), least, most, value));
            return null;
        }

        <E extends Enum<E> & Word> @Nullable E word(String name, Class<E> kind) {
            String value = text(name);
            return value.isEmpty() ? null : Word.of(kind, value);
        }

        Setup setup(Drill drill) {
            boolean many = drill.mostBags() > 4;
            List<String> bags =
                    ctx.formParams("bag").stream().filter(bag -> !bag.isEmpty()).toList();
            Integer perSet = many ? number("per-set", "start.per-set", 1, 100) : Integer.valueOf(4);
            int bagsPerSet = perSet == null ? before.bagsPerSet() : perSet;
            int sets = Math.max(1, bags.size() + (many && !text("new-bag").isEmpty() ? 1 : 0));
            if (sets * bagsPerSet > drill.mostBags()) {
                faults.add(web.texts().of("start.fault.bags", drill.mostBags(), sets, bagsPerSet, sets * bagsPerSet));
            }
            Integer ghost = drill.needsGhost() ? number("ghost", "start.ghost", 0, 12) : null;
            Integer skunk = number("skunk", "start.skunk", 0, MOST_TARGET);
            return before.with(setup -> {
                setup.bags = bags;
                setup.bagsPerSet = bagsPerSet;
                setup.face = word("face", Face.class);
                setup.approach = word("approach", Approach.class);
                setup.board =
                        Optional.ofNullable(word("board", BoardKind.class)).orElse(BoardKind.REGULATION);
                setup.setting =
                        Optional.ofNullable(word("setting", Setting.class)).orElse(Setting.PRACTICE);
                setup.conditions = word("conditions", Conditions.class);
                setup.rounds = drill.needsGhost() ? null : number("rounds", "start.rounds", 1, MOST_ROUNDS);
                setup.ghost = drill.needsGhost() && ghost == null ? before.ghost() : ghost;
                setup.target = drill.needsGhost() ? number("target", "start.target", 1, MOST_TARGET) : null;
                setup.exact = "yes".equals(ctx.formParam("exact"));
                setup.fallBack = null;
                setup.skunk = skunk == null || skunk == 0 ? null : skunk;
                setup.onlyIn = many && "in".equals(ctx.formParam("count"));
            });
        }
    }
}
