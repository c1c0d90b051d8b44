package boardside.engine.physics;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Writes what the engine makes of known slide tests as JSON, so that the script that answers on a phone without a network can
 * be held against it. To write the committed file anew, run {@link #main} in the engine's folder.
 *
 * <p>Each case: the {@code conditions} told, the {@code slides}, {@code models} that stand for what was known before, what
 * each makes of the day's friction ({@code days}: mean and standard deviation of its logarithm against the usual, and the
 * slide's length there), and the whole {@code answer}: low and high ends of the friction against the usual and of the slide,
 * and the chance of slower boards, from a fit that the test is a part of.
 */
final class SlideVectors {
    /** The committed file, seen from the engine's folder. */
    static final Path FILE = Path.of("..", "app", "src", "test", "resources", "slide-vectors.json");

    private static final int MODELS = 80;

    private SlideVectors() {}

    public static void main(String[] args) throws IOException {
        Files.writeString(FILE, json(), StandardCharsets.UTF_8);
    }

    /** The file's text. */
    static String json() {
        List<String> cases = new ArrayList<>();
        cases.add(example(new ThrowModel(0.8, 3, 39, 6, 0.06, 20, 0.36), 1, 8, null, 1));
        cases.add(example(new ThrowModel(-1, 2, 41, 4, 0.04, 25, 0.31), 1.2, 5, Conditions.SLOW, 2));
        cases.add(example(new ThrowModel(0, 4, 37, 8, 0.09, 16, 0.42), 0.85, 6, Conditions.FAST, 3));
        return "[\n" + String.join(",\n", cases) + "\n]\n";
    }

    private static String example(
            ThrowModel player, double factor, int bags, @Nullable Conditions conditions, long seed) {
        MadeUpThrows throwing = new MadeUpThrows(player, seed);
        ThrowPrior prior = ThrowPrior.of(5, Face.SLOW);
        List<ThrowCount> counts = List.of(throwing.count(Board.of(BoardKind.REGULATION), 400, true));
        List<TappedDay> before = List.of(throwing.test(null, 1, 8));
        TappedDay day = throwing.test(conditions, factor, bags);
        List<ThrowModel> draws =
                ThrowFit.of(prior, new ThrowRecords(counts, before)).draws();
        List<ThrowModel> models = new ArrayList<>();
        for (int i = 0; i < MODELS; i++) {
            models.add(draws.get((int) ((i + 0.5) * draws.size() / MODELS)));
        }
        ThrowFit.Day answer = ThrowFit.of(prior, new ThrowRecords(counts, List.of(before.get(0), day)))
                .day(day);
        ThrowLikelihood.Day sums = new ThrowLikelihood.Day(day);
        return "{\"conditions\": " + (conditions == null ? "null" : "\"" + conditions.word() + "\"")
                + ",\n \"slides\": ["
                + day.taps().stream().map(SlideVectors::slide).collect(Collectors.joining(", "))
                + "],\n \"models\": ["
                + models.stream().map(SlideVectors::model).collect(Collectors.joining(",\n  "))
                + "],\n \"days\": ["
                + models.stream().map(model -> day(sums, model)).collect(Collectors.joining(",\n  "))
                + "],\n \"answer\": {\"factor\": " + range(answer.factor()) + ", \"slide\": " + range(answer.slide())
                + ", \"slower\": " + answer.probabilitySlower() + "}}";
    }

    private static String slide(Tap tap) {
        return "{\"outcome\": \"" + tap.outcome().word() + "\", \"landing\": " + place(tap.landing()) + ", \"rest\": "
                + place(tap.rest()) + "}";
    }

    private static String place(Tap.@Nullable Place place) {
        return place == null ? "null" : "{\"x\": " + place.x() + ", \"y\": " + place.y() + "}";
    }

    private static String model(ThrowModel model) {
        return String.format(
                Locale.ROOT,
                "{\"x\": %s, \"spreadX\": %s, \"reach\": %s, \"spreadY\": %s, \"spreadSpeed\": %s, \"slide\": %s,"
                        + " \"friction\": %s}",
                model.x(),
                model.spreadX(),
                model.reach(),
                model.spreadY(),
                model.spreadSpeed(),
                model.slide(),
                model.friction());
    }

    private static String day(ThrowLikelihood.Day sums, ThrowModel model) {
        double[] friction = sums.frictionAgainst(model);
        return "[" + friction[0] + ", " + friction[1] + ", "
                + model.onBoards(StrictMath.exp(friction[0])).slide() + "]";
    }

    private static String range(Range range) {
        return "[" + range.estimate() + ", " + range.low() + ", " + range.high() + "]";
    }
}
