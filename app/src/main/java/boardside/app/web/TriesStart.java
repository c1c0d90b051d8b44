package boardside.app.web;

import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Exercise;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.practice.Try;
import boardside.app.record.OfferedSituation;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Setting up a run of tries: which targets, or which set-up and shots; filled in from the last one. */
public final class TriesStart {
    private static final int LONGEST_NAME = 60;
    private static final List<Depth> ROWS =
            List.of(Depth.BACK, Depth.ONE, Depth.TWO, Depth.THREE, Depth.FOUR, Depth.FIVE, Depth.SIX);

    private final Web web;

    TriesStart(Web web) {
        this.web = web;
    }

    /** A situation to choose, with its id. */
    public record Offer(String id, String name, Position position) {}

    /** One shot of a chain as chosen: words, or empty. */
    public record Link(String shot, String target) {}

    /**
     * What the form shows.
     *
     * @param faults what was wrong with the last try, worded
     */
    public record View(
            Drill drill,
            Setup setup,
            Exercise exercise,
            List<BagSet> bags,
            List<Offer> situations,
            List<Link> links,
            StakesForm.View stakes,
            List<String> faults) {
        public boolean placement() {
            return drill == Drill.PLACEMENT;
        }

        public List<Depth> rows() {
            return ROWS;
        }

        public List<Lane> lanes() {
            return List.of(Lane.values());
        }

        public boolean calls(Depth depth, Lane lane) {
            return exercise.targets().contains(new Target(depth, lane));
        }

        public boolean offers(Shot shot) {
            return exercise.shots().stream().anyMatch(step -> step.shot() == shot);
        }

        public List<Shot> shots() {
            return List.of(Shot.values());
        }

        public List<Exercise.Call> calls() {
            return Arrays.stream(Exercise.Call.values())
                    .filter(call -> placement() || call != Exercise.Call.ORDER)
                    .toList();
        }

        /** The situation chosen, or the first. */
        public String chosen() {
            return situations.stream().anyMatch(offer -> offer.id().equals(exercise.situation()))
                    ? exercise.situation()
                    : situations.get(0).id();
        }

        /** The usual ends, and the one in force where it is not among them; empty for an open end. */
        public List<String> ends(boolean worked) {
            return FormReader.offered(
                    end(worked), worked ? List.of("", "3", "5", "10") : List.of("10", "20", "40", ""));
        }

        /** What was entered for how the run ends; empty for an open end. */
        public String end(boolean worked) {
            Integer number = worked ? exercise.until() : exercise.tries();
            return number == null ? "" : number.toString();
        }
    }

    /** The exercise of somebody's first run of a drill. */
    static Exercise first(Drill drill) {
        List<Target> targets = new ArrayList<>();
        for (Depth depth : List.of(Depth.ONE, Depth.TWO)) {
            for (Lane lane : Lane.values()) {
                targets.add(new Target(depth, lane));
            }
        }
        Position gate = Situation.GATE.position();
        return drill == Drill.PLACEMENT
                ? new Exercise(targets, List.of(), false, Exercise.Call.RANDOM, null, 20, "", "", "")
                : new Exercise(
                        List.of(),
                        List.of(
                                new Exercise.Step(Shot.CUT_LEFT, null, gate),
                                new Exercise.Step(Shot.CUT_RIGHT, null, gate)),
                        false,
                        Exercise.Call.RANDOM,
                        null,
                        20,
                        Situation.GATE.word(),
                        "",
                        "");
    }

    void placement(Context ctx) {
        show(ctx, Drill.PLACEMENT);
    }

    void situation(Context ctx) {
        show(ctx, Drill.SITUATION);
    }

    private void show(Context ctx, Drill drill) {
        Player player = web.player(ctx);
        Setup setup = web.nextSetup(player.id(), drill);
        Exercise last = Objects.requireNonNullElseGet(setup.exercise(), () -> first(drill));
        String wanted = ctx.queryParam("situation");
        Exercise exercise = wanted == null
                ? last
                : new Exercise(
                        last.targets(),
                        last.shots(),
                        false,
                        last.call(),
                        last.until(),
                        last.tries(),
                        wanted,
                        "",
                        last.partner());
        Map<String, String> fields = new TreeMap<>();
        StakesForm.fill(fields, setup.stakes());
        show(ctx, view(player, drill, setup, exercise, links(exercise), fields, List.of()));
    }

    private void show(Context ctx, View view) {
        web.show(
                ctx,
                view.placement() ? "start_placement" : "start_situation",
                web.texts().of("drill." + view.drill().word()),
                Map.of("view", view));
    }

    private View view(
            Player player,
            Drill drill,
            Setup setup,
            Exercise exercise,
            List<Link> links,
            Map<String, String> fields,
            List<String> faults) {
        List<BagSet> bags = web.records().bags(player.id()).stream()
                .filter(bag -> !bag.retired() || setup.bags().contains(bag.id()))
                .toList();
        StakesForm.View stakes = new StakesForm.View(drill, setup.stakes(), fields);
        return new View(drill, setup, exercise, bags, offers(player), links, stakes, faults);
    }

    /** Where the first block of a chain may lie in the situation shown first. */
    private static String free(Exercise exercise) {
        Position position = exercise.shots().isEmpty()
                ? Position.EMPTY
                : exercise.shots().get(0).position();
        return Stream.of("1-middle", "2-middle", "1-left", "1-right")
                .filter(text -> lies(position, Target.parse(text), Board.REGULATION_WIDTH) != null)
                .findFirst()
                .orElse("3-middle");
    }

    /** The position with a bag of mine in the middle of a part of the board; null where one lies there already. */
    private static @Nullable Position lies(Position position, Target target, double width) {
        Spot centre = target.centre(width);
        if (centre.inHole()) {
            return position;
        }
        try {
            return position.with(new Lying(centre.x(), centre.y(), Side.ME));
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    /** The chain as it was last chosen, else one to begin with: put the blocker there, go round it, collect it. */
    private static List<Link> links(Exercise exercise) {
        List<Link> links = new ArrayList<>();
        if (exercise.chain()) {
            for (Exercise.Step step : exercise.shots()) {
                Target target = step.target();
                links.add(new Link(step.shot().word(), target == null ? "" : target.text()));
            }
        } else {
            links.add(new Link(Shot.BLOCK.word(), free(exercise)));
            links.add(new Link(Shot.CUT_LEFT.word(), ""));
            links.add(new Link(Shot.PUSH.word(), ""));
        }
        while (links.size() < 4) {
            links.add(new Link("", ""));
        }
        return links;
    }

    private List<Offer> offers(Player player) {
        TryWords words = new TryWords(web.texts(), List.of(), Map.of());
        return OfferedSituation.of(web.records(), player).stream()
                .map(one -> new Offer(one.id(), words.offered(one), one.position()))
                .toList();
    }

    /** Starts a run and goes to it; with faults, shows the form again as it was filled in. */
    void start(Context ctx) {
        Player player = web.player(ctx);
        Drill drill = "situation".equals(ctx.formParam("drill")) ? Drill.SITUATION : Drill.PLACEMENT;
        Setup before = web.nextSetup(player.id(), drill);
        FormReader form = new FormReader(web.texts(), ctx, Map.of());
        BoardKind board = Objects.requireNonNullElse(form.word("board", BoardKind.class), BoardKind.REGULATION);
        Exercise exercise = exercise(ctx, form, player, drill, board);
        Setup setup = before.with(draft -> {
            draft.bags = form.all("bag");
            draft.face = form.word("face", Face.class);
            draft.approach = form.word("approach", Approach.class);
            draft.board = board;
            draft.conditions = form.word("conditions", Conditions.class);
            draft.rounds = null;
            draft.stakes = StakesForm.read(form, drill, false, exercise.tries());
        });
        if (!form.faults().isEmpty()) {
            ctx.status(422);
            show(ctx, view(player, drill, setup, exercise, sentLinks(ctx), form.fields(), form.faults()));
            return;
        }
        String name = form.text("new-bag");
        List<String> bags = name.isEmpty() ? setup.bags() : List.of(web.bagNamed(player.id(), name));
        Setup ready = setup.with(draft -> {
            draft.bags = bags;
            draft.exercise = exercise;
        });
        ctx.redirect("/runs/" + web.startRun(player, drill, ready, form.is("warm-up", "yes"), ""));
    }

    private Exercise exercise(Context ctx, FormReader form, Player player, Drill drill, BoardKind board) {
        Exercise.Call call = Objects.requireNonNullElse(form.word("call", Exercise.Call.class), Exercise.Call.MINE);
        Integer until = form.number("until", "tries.until", 1, Exercise.MOST_TRIES);
        Integer tries = form.number("tries", "tries.tries", 1, Exercise.MOST_TRIES);
        if (drill == Drill.PLACEMENT) {
            List<Target> targets = form.all("target").stream()
                    .map(Target::parse)
                    .sorted(Comparator.comparing(Target::depth).thenComparing(Target::lane))
                    .toList();
            if (targets.isEmpty()) {
                form.fault("tries.fault.target");
            }
            return new Exercise(targets, List.of(), false, call, until, tries, "", "", "");
        }
        String partner = form.name("partner", "tries.partner", LONGEST_NAME);
        String chosen = form.text("situation");
        Offer offer = offers(player).stream()
                .filter(one -> one.id().equals(chosen))
                .findFirst()
                .orElse(new Offer("", "", Position.EMPTY));
        Position position = form.is("mirror", "yes") ? offer.position().mirrored() : offer.position();
        boolean chain = form.is("chain", "yes");
        double width = Board.usualWidth(board);
        List<Exercise.Step> shots = chain ? chain(sentLinks(ctx), position, width, form) : shots(form, position);
        if (shots.isEmpty()) {
            form.fault("tries.fault.shot");
        }
        if (shots.stream().anyMatch(step -> !step.position().on(width))) {
            form.fault("tries.fault.narrow");
        }
        return new Exercise(List.of(), shots, chain, call, until, tries, offer.id(), offer.name(), partner);
    }

    private static List<Exercise.Step> shots(FormReader form, Position position) {
        Target target = placedAt(form.text("target"));
        return form.all("shot").stream()
                .map(word -> Word.of(Shot.class, word))
                .map(shot -> new Exercise.Step(shot, placed(shot, target), position))
                .toList();
    }

    private static Target placedAt(String text) {
        return Target.parse(text.isEmpty() ? "2-middle" : text);
    }

    private static @Nullable Target placed(Shot shot, Target target) {
        if (shot == Shot.BACK_BLOCK) {
            return target.depth() == Depth.BACK ? target : new Target(Depth.BACK, target.lane());
        }
        return shot == Shot.BLOCK ? target : null;
    }

    private static List<Link> sentLinks(Context ctx) {
        List<String> shots = ctx.formParams("chain-shot");
        List<String> targets = ctx.formParams("chain-target");
        List<Link> links = new ArrayList<>();
        for (int i = 0; i < Math.min(shots.size(), targets.size()); i++) {
            links.add(new Link(shots.get(i), targets.get(i)));
        }
        return links;
    }

    /** A bag put somewhere lies there for the shots that follow, until one collects it. */
    private List<Exercise.Step> chain(List<Link> links, Position start, double width, FormReader form) {
        List<Exercise.Step> steps = new ArrayList<>();
        Position position = start;
        for (Link link : links) {
            if (link.shot().isEmpty() || steps.size() == Try.MOST_STEPS) {
                continue;
            }
            Shot shot = Word.of(Shot.class, link.shot());
            Target target = placed(shot, placedAt(link.target()));
            steps.add(new Exercise.Step(shot, target, position));
            Position after = target == null ? position : lies(position, target, width);
            if (after == null) {
                TryWords words = new TryWords(web.texts(), List.of(), Map.of());
                form.fault("tries.fault.taken", steps.size(), words.target(Objects.requireNonNull(target)));
                return steps;
            }
            position = shot == Shot.PUSH || shot == Shot.DRAG ? start : after;
        }
        return steps;
    }
}
