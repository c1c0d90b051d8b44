package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.Player;
import boardside.app.record.Pushes;
import boardside.app.record.Throws;
import boardside.engine.physics.Frame;
import boardside.engine.physics.Range;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.StringJoiner;

/** A throw seen from above: a slide at an empty board, or a push through a block. */
public final class WatchPage {
    /** Throws that can be gone through; then the first comes again. */
    private static final int MOST = 1000;

    private final Web web;
    private final Remembered<View> remembered;

    WatchPage(Web web) {
        this.web = web;
        remembered = web.remembered();
    }

    /** What can be chosen instead; the sign is what stands on its button. */
    public record Choice(String path, String name, String sign, boolean chosen) {}

    /** A bag's way: points of a line in SVG, where it ends, and whether it lies there. */
    public record Way(String points, double x, double y, boolean lies) {}

    /**
     * What the page shows.
     *
     * @param said what becomes of this throw, in sentences
     * @param chance how often that goes well, with its range, in a sentence
     * @param ways of the thrown bag, then of the block
     * @param frames for the script: of each, every bag's place in SVG, or null once it is gone
     * @param next address of another throw
     */
    public record View(
            List<Choice> boards, String name, String said, String chance, List<Way> ways, String frames, String next) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        int bag = number(ctx, "bag", 999);
        int depth = number(ctx, "block", Pushes.DEEPEST);
        int throwing = number(ctx, "throw", MOST);
        web.showFound(
                ctx,
                "watch",
                web.texts().of("watch.title"),
                remembered.soon(
                        player,
                        web.today(),
                        bag + " " + depth + " " + throwing,
                        () -> view(player, bag, depth, throwing)),
                "working.throws");
    }

    private static int number(Context ctx, String name, int most) {
        String text = Objects.requireNonNullElse(ctx.queryParam(name), "");
        return text.matches("\\d{1,4}") && Integer.parseInt(text) <= most ? Integer.parseInt(text) : 0;
    }

    /** Address of a throw. */
    static String path(int bag, int depth, int throwing) {
        return "/throws/watch?bag=" + bag + "&block=" + depth + "&throw=" + throwing;
    }

    private View view(Player player, int asked, int depth, int throwing) {
        List<Throws.Group> groups =
                Throws.of(web.records(), player.id(), web.today()).groups();
        int bag = asked < groups.size() ? asked : 0;
        Throws.Group group = groups.get(bag);
        List<Frame> frames = Pushes.watch(group.fit().mean(), depth, throwing);
        List<Choice> boards = new ArrayList<>();
        for (int i = 0; i <= Pushes.DEEPEST; i++) {
            boards.add(new Choice(
                    path(bag, i, 0),
                    i == 0 ? web.texts().of("watch.empty") : web.texts().of("watch.block", i),
                    i == 0 ? web.texts().of("watch.none") : String.valueOf(i),
                    i == depth));
        }
        return new View(
                boards,
                ThrowsPage.name(web.texts(), group),
                said(frames, depth, throwing),
                chance(group, depth),
                ways(frames),
                Json.write(places(frames)),
                path(bag, depth, throwing % MOST + 1));
    }

    private String said(List<Frame> frames, int depth, int throwing) {
        List<Frame.Spot> end = frames.get(frames.size() - 1).bags();
        String thrown = web.texts().of("watch.thrown." + word(end.get(0)));
        String which = web.texts().of(throwing == 0 ? "watch.meant" : "watch.one", throwing);
        return which + " " + thrown + (depth == 0 ? "" : " " + web.texts().of("watch.block." + word(end.get(1))));
    }

    private static String word(Frame.Spot spot) {
        return switch (spot.doing()) {
            case IN -> "in";
            case OFF -> "off";
            case SLIDING, LYING -> "on";
        };
    }

    private String chance(Throws.Group group, int depth) {
        Range chance = depth == 0 ? group.advice().in() : Pushes.collected(group.fit(), depth);
        return web.texts()
                .of(depth == 0 ? "watch.chance.slide" : "watch.chance.push", ThrowsPage.percent(chance), depth);
    }

    /** Up is up: the y of SVG runs down. */
    private static double tenth(double inches) {
        return Math.round(10 * inches) / 10.0;
    }

    private static List<Way> ways(List<Frame> frames) {
        List<Way> ways = new ArrayList<>();
        for (int i = 0; i < frames.get(0).bags().size(); i++) {
            StringJoiner points = new StringJoiner(" ");
            for (Frame frame : frames) {
                Frame.Spot spot = frame.bags().get(i);
                points.add(tenth(spot.x()) + "," + -tenth(spot.y()));
            }
            Frame.Spot end = frames.get(frames.size() - 1).bags().get(i);
            boolean lies = end.doing() == Frame.Doing.LYING || end.doing() == Frame.Doing.SLIDING;
            ways.add(new Way(points.toString(), tenth(end.x()), -tenth(end.y()), lies));
        }
        return ways;
    }

    private static List<Object> places(List<Frame> frames) {
        List<Object> places = new ArrayList<>();
        for (Frame frame : frames) {
            List<List<Double>> bags = new ArrayList<>();
            for (Frame.Spot spot : frame.bags()) {
                boolean there = spot.doing() == Frame.Doing.LYING || spot.doing() == Frame.Doing.SLIDING;
                bags.add(there ? List.of(tenth(spot.x()), -tenth(spot.y())) : List.of());
            }
            places.add(List.of(frame.time(), bags));
        }
        return places;
    }
}
