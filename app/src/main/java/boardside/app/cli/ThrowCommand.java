package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.engine.physics.Bag;
import boardside.engine.physics.Board;
import boardside.engine.physics.Contact;
import boardside.engine.physics.End;
import boardside.engine.physics.Landing;
import boardside.engine.physics.Lying;
import boardside.engine.physics.Scene;
import boardside.engine.physics.Simulator;
import boardside.engine.physics.Thrown;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import com.fasterxml.jackson.databind.node.NullNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What becomes of one bag that has just landed, and of those it meets. */
@Command(
        name = "throw",
        description = "Slide one bag that has just landed, and say where it and the bags it meets end.",
        footerHeading = "%n",
        footer = {
            "Places are inches on the board: x to the right of the centre line, y up from the front edge (the hole's centre"
                    + " is 0, 39). Bags slide, push and fall in as docs/physics.md says.",
            "",
            "For example: boardside throw --x 0 --y 14 --speed 2.6 --friction 0.35 --bags \"0,33 -4,27\"",
            "",
            "Exit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input."
        })
final class ThrowCommand implements Callable<Integer> {
    private static final Pattern PLACE = Pattern.compile("([^,]+),([^,]+)");
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

    private final Context context;

    @Option(names = "--x", required = true, paramLabel = "IN", description = "Where it landed, inches to the right.")
    private double x;

    @Option(names = "--y", required = true, paramLabel = "IN", description = "Where it landed, inches up the board.")
    private double y;

    @Option(names = "--speed", required = true, paramLabel = "M_S", description = "Its speed, metres a second.")
    private double speed;

    @Option(
            names = "--heading",
            paramLabel = "DEG",
            description = "Where it is heading, degrees to the right of straight up the board; 0 unless said.")
    private double heading;

    @Option(
            names = "--friction",
            required = true,
            paramLabel = "MU",
            description = "Friction of bags on the board, usually 0.2 (fast) to 0.6 (slow).")
    private double friction;

    @Option(
            names = "--slope",
            paramLabel = "DEG",
            description = "Slope of the board, degrees; unless said, that of a board 12 in high at the back.")
    private @Nullable Double slope;

    @Option(
            names = "--front",
            paramLabel = "IN",
            description = "Height of the front edge, inches, where no slope is given; 3.5 unless said.")
    private @Nullable Double front;

    @Option(
            names = "--bags",
            paramLabel = "PLACES",
            description = "Bags that lie there, at most 8, such as \"0,33 -4,27\".")
    private String bags = "";

    @Option(names = "--board", paramLabel = "BOARD", description = "regulation (unless said) or narrow, 12 in wide.")
    private String board = BoardKind.REGULATION.word();

    @Option(
            names = "--width",
            paramLabel = "IN",
            description = "Width of the board as measured, inches, where it is another than its kind's.")
    private @Nullable Double width;

    ThrowCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        List<String> faults = new ArrayList<>();
        Board surface = checked(faults, "--board, --width, --front, --slope", this::board);
        Bag bag = checked(faults, "--friction", () -> Bag.of(friction));
        Landing landing = checked(faults, "--x, --y, --speed, --heading", () -> new Landing(x, y, speed, heading));
        List<double[]> places = places(faults);
        if (surface != null && landing != null && !surface.holds(x, y)) {
            faults.add("--x, --y: (" + x + ", " + y + ") is not on the board, which is " + -surface.width() / 2 + " to "
                    + surface.width() / 2 + " in across and 0 to " + Board.LENGTH + " in up; land the bag on it");
        }
        Scene scene =
                surface == null || bag == null ? null : checked(faults, "--bags", () -> scene(surface, bag, places));
        if (!faults.isEmpty() || scene == null || bag == null || landing == null) {
            throw new Failure.BadInput(faults);
        }
        Thrown thrown = new Simulator(scene, bag).slide(landing);
        Map<String, Object> json = json(thrown.thrown());
        json.put("bags", thrown.bags().stream().map(ThrowCommand::json).toList());
        context.answer(json, words(thrown));
        return Cli.DONE;
    }

    private static <T> @Nullable T checked(List<String> faults, String options, Supplier<T> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            faults.add(options + ": " + e.getMessage());
            return null;
        }
    }

    private Board board() {
        if (slope != null && front != null) {
            throw new IllegalArgumentException(
                    "a slope and a front height are two ways to say one thing; leave one out");
        }
        BoardKind kind = Word.of(BoardKind.class, board);
        Board usual =
                Board.of(width == null ? Board.of(kind).width() : width, front == null ? Board.FRONT_HEIGHT : front);
        return slope == null ? usual : usual.withSlope(slope);
    }

    private List<double[]> places(List<String> faults) {
        List<double[]> places = new ArrayList<>();
        String text = bags.strip();
        for (String place : text.isEmpty() ? new String[0] : text.split("\\s+")) {
            var parts = PLACE.matcher(place);
            if (!(parts.matches()
                    && NUMBER.matcher(parts.group(1)).matches()
                    && NUMBER.matcher(parts.group(2)).matches())) {
                faults.add(
                        "--bags: \"" + place + "\" is no place; write x,y in inches, with a space between bags, such as"
                                + " \"0,33 -4,27\"");
                return List.of();
            }
            places.add(new double[] {Double.parseDouble(parts.group(1)), Double.parseDouble(parts.group(2))});
        }
        return places;
    }

    private Scene scene(Board surface, Bag bag, List<double[]> places) {
        List<Lying> lying =
                places.stream().map(at -> new Lying(at[0], at[1], bag)).toList();
        Scene scene = new Scene(surface, Contact.USUAL, lying);
        scene.requireApart();
        for (int i = 0; i < places.size(); i++) {
            double apart = Math.hypot(places.get(i)[0] - x, places.get(i)[1] - y);
            if (!(apart >= 2 * Bag.RADIUS - 1e-9)) {
                throw new IllegalArgumentException("the thrown bag at (" + x + ", " + y + ") and bag " + (i + 1)
                        + " at (" + places.get(i)[0] + ", " + places.get(i)[1] + ") overlap: their centres are " + apart
                        + " in apart; land it at least " + 2 * Bag.RADIUS + " in away");
            }
        }
        return scene;
    }

    private static Map<String, Object> json(End end) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("outcome", end.outcome().word());
        json.put("rest", end instanceof End.On on ? place(on) : NullNode.getInstance());
        return json;
    }

    private static Map<String, Double> place(End.On on) {
        Map<String, Double> place = new LinkedHashMap<>();
        place.put("x", on.x());
        place.put("y", on.y());
        return place;
    }

    private static String words(Thrown thrown) {
        StringBuilder words = new StringBuilder("The thrown bag ").append(words(thrown.thrown()));
        for (int i = 0; i < thrown.bags().size(); i++) {
            words.append("\nBag ")
                    .append(i + 1)
                    .append(' ')
                    .append(words(thrown.bags().get(i)));
        }
        return words.toString();
    }

    private static String words(End end) {
        if (end instanceof End.On on) {
            return "rests on the board, " + aside(on.x()) + " and "
                    + String.format(Locale.ROOT, "%.1f in up from the front edge.", on.y());
        }
        return "is " + end.outcome().word() + ".";
    }

    private static String aside(double x) {
        double tenths = Math.round(Math.abs(x) * 10) / 10.0;
        return tenths == 0
                ? "on the centre line"
                : tenths + " in " + (x > 0 ? "right" : "left") + " of the centre line";
    }
}
