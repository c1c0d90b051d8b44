package boardside.app.web;

import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.record.Games;
import boardside.app.record.Ghosts;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Setting a run up: filled in from the last one, so that Start is the second tap. */
public final class StartPage {
    private static final int MOST_MONTHS = 12;

    private final Web web;
    private final LadderView ladders;
    private final ContestView contests;

    StartPage(Web web) {
        this.web = web;
        this.ladders = new LadderView(web);
        this.contests = new ContestView(web);
    }

    /**
     * What the form shows.
     *
     * @param drill the drill's word
     * @param setup what is chosen
     * @param bags what can be chosen
     * @param fields text fields and number choices as last entered
     * @param faults what was wrong with the last try, worded
     * @param ladder where the climb stands, or null outside it
     * @param contest the two sides, or null outside duels and games
     * @param pasts the player's own pasts to race against; empty outside races
     */
    public record View(
            Drill kind,
            Setup setup,
            List<BagSet> bags,
            Map<String, String> fields,
            List<String> faults,
            LadderView.@Nullable View ladder,
            ContestView.@Nullable View contest,
            List<GhostChoice> pasts) {
        /** A ghost out of the player's own past. */
        public record GhostChoice(String kind, String of, String name) {}

        public String drill() {
            return kind.word();
        }

        public boolean asksGhost() {
            return kind.needsGhost();
        }

        public boolean asksRounds() {
            return !isGame();
        }

        public boolean isGame() {
            return Games.played(kind);
        }

        public boolean asksOrder() {
            return kind == Drill.VOLUME;
        }

        public boolean asksStakes() {
            return StakesForm.asked(kind);
        }

        public boolean isGhostKind(String word) {
            GhostPlay play = setup.ghostPlay();
            return word.equals(play == null ? "" : play.kind().word());
        }

        /** Whether one of the player's own pasts is the ghost of the last race. */
        public boolean isPast(GhostChoice choice) {
            GhostPlay play = setup.ghostPlay();
            return play != null && play.of().equals(choice.of());
        }

        public boolean hasMonths() {
            return pasts.stream().anyMatch(past -> past.kind().equals("month"));
        }

        public StakesForm.View stakes() {
            return new StakesForm.View(kind, setup.stakes(), fields);
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

        private List<String> offered(String name, List<String> usual) {
            return fields.containsKey(name) ? FormReader.offered(field(name), usual) : usual;
        }
    }

    void show(Context ctx) {
        Player player = web.player(ctx);
        Drill drill = drill(ctx.pathParam("drill"));
        show(ctx, player, drill, web.nextSetup(player.id(), drill), web.nextOpponent(player.id(), drill), null);
    }

    private void show(
            Context ctx, Player player, Drill drill, Setup setup, String opponent, @Nullable StartForm filled) {
        LadderView.View ladder = drill == Drill.CLIMB ? ladders.view(player) : null;
        // The first climb starts where it is likely won.
        Setup shown = ladder != null && ladder.proposed() && filled == null
                ? setup.with(draft -> draft.ghost = ladder.next())
                : setup;
        View view = new View(
                drill,
                shown,
                offered(player, shown),
                filled == null ? StartForm.fields(shown) : filled.fields(),
                filled == null ? List.of() : filled.faults(),
                ladder,
                shown.contest() == null ? null : contests.view(player, drill, shown, opponent),
                drill == Drill.RACE ? pasts(player) : List.of());
        web.show(ctx, "start", web.texts().of("drill." + view.drill()), Map.of("view", view));
    }

    private List<View.GhostChoice> pasts(Player player) {
        List<View.GhostChoice> pasts = new ArrayList<>();
        Ghosts.bestDay(web.records(), player.id(), web.today())
                .ifPresent(day -> pasts.add(new View.GhostChoice(
                        "day",
                        day.toString(),
                        web.texts().of("ghost.day", web.texts().day(day)))));
        web.skills().skill(player.id(), web.today()).months().stream()
                .limit(MOST_MONTHS)
                .forEach(month -> pasts.add(new View.GhostChoice(
                        "month",
                        month.toString(),
                        web.texts().of("ghost.month", web.texts().month(month)))));
        return pasts;
    }

    private List<BagSet> offered(Player player, Setup setup) {
        return web.records().bags(player.id()).stream()
                .filter(bag -> !bag.retired() || setup.bags().contains(bag.id()))
                .toList();
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
        Setup before = web.nextSetup(player.id(), drill);
        if ("yes".equals(ctx.formParam("again"))) {
            go(ctx, web.startRun(player, drill, before, false, web.nextOpponent(player.id(), drill)));
            return;
        }
        StartForm form = new StartForm(web.texts(), ctx, drill, before);
        String opponent = form.opponent();
        Setup setup = form.setup();
        if (form.faults().isEmpty() && form.fair()) {
            setup = contests.fair(player, opponent, setup, form);
        }
        if (!form.faults().isEmpty()) {
            ctx.status(422);
            show(ctx, player, drill, setup, opponent, form);
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
        boolean warmUp = "yes".equals(ctx.formParam("warm-up"));
        try {
            go(ctx, web.startRun(player, drill, setup.with(draft -> draft.bags = bags), warmUp, opponent));
        } catch (Failure.BadInput e) {
            form.faults().add(Web.sentence(e));
            ctx.status(422);
            show(ctx, player, drill, before, opponent, form);
        }
    }

    private static void go(Context ctx, String run) {
        ctx.redirect("/runs/" + run);
    }
}
