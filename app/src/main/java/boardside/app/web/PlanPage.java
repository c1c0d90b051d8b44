package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.PlannedBlock;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.app.practice.SessionPlan.Points;
import boardside.app.record.Planning;
import boardside.app.record.RunDetail;
import boardside.engine.plan.Activity;
import boardside.engine.plan.Energy;
import boardside.engine.plan.Means;
import boardside.engine.plan.Plan;
import boardside.engine.plan.Planner;
import boardside.engine.plan.PlayerState;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Word;
import boardside.engine.skill.FormAnswer;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The plan: made from the minutes there are, followed block by block, and what came of it. */
public final class PlanPage {
    /** Minutes offered on the first page. */
    static final List<Integer> MINUTES = List.of(8, 15, 30, 60, 120);

    private static final int FORM_DAYS = 30;

    private final Web web;
    private final PlanWords words;
    private final PlanStart starts;
    private final Remembered<PlayerState> states;
    private final PlaybookPage playbooks;

    PlanPage(Web web, PlaybookPage playbooks) {
        this.web = web;
        this.playbooks = playbooks;
        this.words = new PlanWords(web.texts());
        this.starts = new PlanStart(web);
        this.states = web.remembered();
    }

    /**
     * What the page shows.
     *
     * @param asked what was asked for, or would be
     * @param faults what was wrong with it
     * @param plan what is followed, or null
     */
    public record View(
            Asked asked, List<String> faults, @Nullable Followed plan) {}

    /** What a plan is asked for with, as words. */
    public record Asked(String minutes, String energy, String bagSets, Set<String> boards, boolean company) {
        public List<String> energies() {
            return Word.words(Energy.class);
        }

        public List<String> kinds() {
            return Word.words(BoardKind.class);
        }
    }

    /**
     * A plan that is followed, or was.
     *
     * @param blocks in their order
     * @param done blocks done
     * @param minutes minutes of those
     * @param of minutes of all
     * @param open whether it is still followed
     * @param changed what it changed, in sentences; empty while it goes on
     */
    public record Followed(
            String id,
            String sum,
            List<BlockView> blocks,
            int done,
            int minutes,
            int of,
            boolean open,
            List<String> changed,
            List<String> notes) {
        public int works() {
            return blocks.size();
        }
    }

    /**
     * A block.
     *
     * @param state next, waiting, open or done
     * @param run path of its run, or empty
     * @param result what came of it, or empty
     */
    public record BlockView(
            int place,
            String name,
            String does,
            String why,
            int minutes,
            String state,
            boolean rest,
            boolean serves,
            String run,
            String result) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        if (Stream.of(Drill.PLACEMENT, Drill.SITUATION)
                .anyMatch(drill -> web.records().lastRun(player.id(), drill).isPresent())) {
            playbooks.prepare(player);
        }
        show(ctx, player, asked(player), List.of());
    }

    private void show(Context ctx, Player player, Asked asked, List<String> faults) {
        Followed followed = web.records()
                .plans()
                .latest(player.id())
                .filter(plan -> plan.day().equals(web.today().toString()))
                .map(plan -> followed(player, plan))
                .orElse(null);
        web.show(ctx, "plan", web.texts().of("plan.title"), Map.of("view", new View(asked, faults, followed)));
    }

    private Asked asked(Player player) {
        Set<String> boards = new HashSet<>();
        Planning.boards(web.records(), player).forEach(kind -> boards.add(kind.word()));
        return web.records()
                .plans()
                .latest(player.id())
                .map(plan -> {
                    Set<String> kinds = new HashSet<>();
                    plan.boards().forEach(kind -> kinds.add(kind.word()));
                    return new Asked(
                            String.valueOf(plan.minutes()),
                            plan.energy().word(),
                            String.valueOf(plan.bagSets()),
                            kinds,
                            plan.company());
                })
                .orElseGet(() -> new Asked("30", Energy.NORMAL.word(), String.valueOf(sets(player)), boards, false));
    }

    private int sets(Player player) {
        return Math.max(
                1,
                Math.min(
                        Means.MOST_BAG_SETS,
                        Planning.bags(web.records(), player).size()));
    }

    /** Makes a plan and follows it. */
    void make(Context ctx) {
        Player player = web.player(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        Asked before = asked(player);
        boolean quick = !ctx.formParamMap().containsKey("bag-sets");
        Set<String> kinds = quick ? before.boards() : new HashSet<>(ctx.formParams("boards"));
        Asked asked = new Asked(
                fields.value("minutes"),
                quick ? before.energy() : fields.value("energy"),
                quick ? before.bagSets() : fields.value("bag-sets"),
                kinds,
                quick ? before.company() : "yes".equals(fields.value("company")));
        Set<BoardKind> boards = EnumSet.noneOf(BoardKind.class);
        Word.words(BoardKind.class).stream()
                .filter(kinds::contains)
                .forEach(word -> boards.add(Word.of(BoardKind.class, word)));
        List<String> faults = Means.faults(whole(asked.minutes()), whole(asked.bagSets()), boards);
        if (!faults.isEmpty()) {
            ctx.status(422);
            show(ctx, player, asked, faults.stream().map(PlanPage::sentence).toList());
            return;
        }
        Energy energy = Word.words(Energy.class).contains(asked.energy())
                ? Word.of(Energy.class, asked.energy())
                : Energy.NORMAL;
        Means means = new Means(whole(asked.minutes()), energy, whole(asked.bagSets()), boards, asked.company());
        Plan plan = Planner.plan(means, state(player));
        web.records().plans().follow(player.id(), words.kept(plan, web.today(), form(player)));
        ctx.redirect("/plan");
    }

    private static int whole(String text) {
        return text.matches("\\d{1,4}") ? Integer.parseInt(text) : -1;
    }

    private static String sentence(String fault) {
        return fault.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + fault.substring(1) + ".";
    }

    private List<Placed> kept(Plan plan) {
        return plan.blocks().stream()
                .map(block -> new Placed(words.kept(block), "", ""))
                .toList();
    }

    /**
     * What a plan goes by; worked out once for each state of the records, off the request's thread. What shots are worth is added
     * where a playbook is there by now: it takes longer than anybody waits for a plan.
     */
    private PlayerState state(Player player) {
        PlayerState known = states.get(
                        player,
                        web.today(),
                        // A question of its own for each state of the records: a plan is never made of old ones.
                        "state " + player.version(),
                        () -> Planning.state(
                                web.records(), player, web.skills().skill(player.id(), web.today()), web.today()))
                .value();
        return Planning.asksForPlaybook(known)
                ? known.withWorths(playbooks
                        .book(player)
                        .map(book -> Planning.worths(book.playbook()))
                        .orElse(Map.of()))
                : known;
    }

    private FormAnswer form(Player player) {
        return web.skills().skill(player.id(), web.today()).form(FORM_DAYS);
    }

    // Following it

    private SessionPlan plan(Context ctx, Player player) {
        return web.records()
                .plans()
                .find(player.id(), ctx.pathParam("plan"))
                .orElseThrow(() -> new Refusal(404, web.texts().of("plan.fault.none")));
    }

    private int place(Context ctx, SessionPlan plan) {
        int place = whole(ctx.pathParam("place"));
        if (!(place >= 0 && place < plan.blocks().size())) {
            throw new Refusal(404, web.texts().of("plan.fault.none"));
        }
        return place;
    }

    /** Starts a block's drill, or goes on with it; a block without a drill is done with that. */
    void start(Context ctx) {
        Player player = web.player(ctx);
        SessionPlan plan = plan(ctx, player);
        int place = place(ctx, plan);
        Placed placed = plan.blocks().get(place);
        if (!placed.run().isEmpty()) {
            ctx.redirect("/runs/" + Numbers.path(placed.run()));
            return;
        }
        Optional<String> run = starts.start(player, placed.block());
        if (run.isPresent()) {
            web.records().plans().begin(player.id(), plan.id(), place, run.get());
            ctx.redirect("/runs/" + Numbers.path(run.get()));
            return;
        }
        web.records().plans().done(player.id(), plan.id(), place);
        ctx.redirect(placed.block().activity() == Activity.SLIDE ? "/slides" : "/plan");
    }

    /** Puts something else in a block's place, and remembers that it was refused. */
    void swap(Context ctx) {
        Player player = web.player(ctx);
        SessionPlan plan = plan(ctx, player);
        int place = place(ctx, plan);
        PlannedBlock refused = plan.blocks().get(place).block();
        Set<String> except = new HashSet<>();
        plan.blocks().forEach(placed -> except.add(placed.block().choice()));
        Plan other = Planner.plan(
                new Means(
                        Math.max(Means.LEAST_MINUTES, refused.minutes()),
                        plan.energy(),
                        plan.bagSets(),
                        plan.boards(),
                        plan.company()),
                state(player),
                except);
        boolean extra = refused.activity() == Activity.WARM_UP || refused.activity() == Activity.BREAK;
        try {
            web.records().plans().swap(player.id(), plan.id(), place, extra ? List.of() : kept(other), web.today());
        } catch (Failure.BadInput e) {
            throw new Refusal(409, Web.sentence(e));
        }
        ctx.redirect("/plan?said=plan.swapped");
    }

    /** Puts the plan away; what was thrown stays. */
    void close(Context ctx) {
        Player player = web.player(ctx);
        web.records().plans().close(player.id(), plan(ctx, player).id());
        ctx.redirect("/plan");
    }

    // What is shown of it

    /** A plan under way on the first page. */
    public record Card(String says, String next) {}

    /** The plan followed today, in a line; nothing where there is none, or all of it is done. */
    @Nullable
    Card card(Player player) {
        return web.records()
                .plans()
                .current(player.id(), web.today())
                .flatMap(plan -> {
                    List<Placed> left =
                            plan.blocks().stream().filter(one -> !one.taken()).toList();
                    int done = plan.blocks().size() - left.size();
                    return left.isEmpty()
                            ? Optional.<Card>empty()
                            : Optional.of(new Card(
                                    web.texts()
                                            .of("plan.card", done, plan.blocks().size()),
                                    web.texts()
                                            .of(
                                                    "plan.next",
                                                    words.name(left.get(0).block()),
                                                    left.get(0).block().minutes())));
                })
                .orElse(null);
    }

    /** What is followed by a player, for whoever may see it. */
    Followed followed(Player player, SessionPlan plan) {
        List<BlockView> blocks = new ArrayList<>();
        int done = 0;
        int minutes = 0;
        int all = 0;
        int bags = 0;
        boolean next = plan.open();
        for (int place = 0; place < plan.blocks().size(); place++) {
            Placed placed = plan.blocks().get(place);
            Optional<RunDetail> run =
                    placed.run().isEmpty() ? Optional.empty() : web.records().run(player.id(), placed.run());
            boolean over = !placed.doneAt().isEmpty()
                    || run.map(found -> !found.run().open()).orElse(false);
            String state = over ? "done" : run.isPresent() ? "open" : next ? "next" : "waiting";
            next &= over;
            PlannedBlock block = placed.block();
            all += block.minutes();
            if (over) {
                done++;
                minutes += block.minutes();
            }
            bags += run.map(found -> found.run().sum().thrown()).orElse(0);
            blocks.add(new BlockView(
                    place,
                    words.name(block),
                    words.does(block),
                    block.why(),
                    block.minutes(),
                    state,
                    block.activity() == Activity.BREAK,
                    block.serves(),
                    run.map(found -> Numbers.path(found.run().id())).orElse(""),
                    run.map(found -> result(player, block, found)).orElse("")));
        }
        boolean finished = !plan.open() || done == blocks.size();
        List<String> notes = new ArrayList<>();
        if (plan.limited()) {
            notes.add(web.texts().of("plan.limited"));
        }
        notes.add(web.texts().of("plan.caution"));
        return new Followed(
                plan.id(),
                web.texts().of("plan.sum", all, plan.minutes()),
                blocks,
                done,
                minutes,
                all,
                plan.open() && done < blocks.size(),
                finished && done > 0 ? changed(player, plan, done, bags) : List.of(),
                notes);
    }

    private String result(Player player, PlannedBlock block, RunDetail detail) {
        Run run = detail.run();
        if (TriesPage.DRILLS.contains(run.drill())) {
            return web.describe().tried(run, web.records().tries(player.id(), run.id()));
        }
        String result = web.describe().result(run, detail.rounds());
        Integer target = block.target();
        Integer points = run.sum().points();
        Integer reached =
                block.activity() == Activity.VOLUME ? (Integer) run.sum().in() : points;
        if (run.open() || target == null || reached == null) {
            return result;
        }
        return result + " " + web.texts().of(reached >= target ? "plan.reached" : "plan.missed", target);
    }

    /** What was done, and what the records make of it. */
    private List<String> changed(Player player, SessionPlan plan, int done, int bags) {
        List<String> changed = new ArrayList<>();
        changed.add(web.texts().of("plan.done", done, plan.blocks().size(), bags));
        Points before = plan.before();
        Points now = PlanWords.points(form(player));
        if (now != null) {
            changed.add(
                    before == null
                            ? web.texts().of("plan.changed.first", range(now))
                            : web.texts().of("plan.changed", range(before), range(now)));
        }
        changed.add(web.texts().of("plan.changed.about"));
        return changed;
    }

    private static String range(Points points) {
        return Numbers.one(points.estimate()) + " (" + Numbers.one(points.low()) + "\u2013" + Numbers.one(points.high())
                + ")";
    }

    /** What the page at the boards knows of the plan of today that a run is thrown for, or null where there is none. */
    @Nullable
    PlanBoot boot(Player player, String run) {
        return web.records()
                .plans()
                .of(player.id(), run)
                .filter(plan -> plan.open() && plan.day().equals(web.today().toString()))
                .map(plan -> new PlanBoot(plan.id(), steps(player, plan)))
                .orElse(null);
    }

    private List<PlanBoot.Step> steps(Player player, SessionPlan plan) {
        List<PlanBoot.Step> steps = new ArrayList<>();
        for (int place = 0; place < plan.blocks().size(); place++) {
            Placed placed = plan.blocks().get(place);
            if (!placed.taken()) {
                PlannedBlock block = placed.block();
                PlanBoot.Kind kind = PlanBoot.kind(block);
                steps.add(new PlanBoot.Step(
                        block.choice(),
                        place,
                        web.texts().of("plan.block", block.minutes(), words.name(block)),
                        words.does(block),
                        block.why(),
                        kind,
                        kind == PlanBoot.Kind.HERE ? starts.prepared(player, block) : null));
            }
        }
        return steps;
    }

    /** Where a run's page leads back to, or null where it was thrown for no plan of today. */
    @Nullable
    String back(Player player, String run) {
        return web.records()
                .plans()
                .of(player.id(), run)
                .filter(plan -> plan.day().equals(web.today().toString()))
                .map(plan -> "/plan")
                .orElse(null);
    }

    /** Parameters of a page that may lead back to a plan. */
    Map<String, Object> with(Player player, String run, Object view) {
        Map<String, Object> values = new HashMap<>(Map.of("view", view));
        String back = back(player, run);
        if (back != null) {
            values.put("plan", back);
        }
        return values;
    }
}
