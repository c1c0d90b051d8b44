package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.engine.odds.BagChances;
import boardside.engine.rules.Approach;
import boardside.engine.rules.Face;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.advice.RoundPosition;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A position with the question which shot to throw, as the adviser reads it.
 *
 * @param position the round
 * @param game the score before the round
 * @param me chances of a bag of mine, or null for what records say
 * @param versus chances of a bag of theirs, or null for an opponent as good as me
 * @param bag name of the bag set, or null for the last run's
 * @param face the face down, or null for the last run's
 * @param approach base policy in the rest of the round, or null for the last run's
 */
public record AdviceQuestion(
        RoundPosition position,
        Game game,
        @Nullable BagChances me,
        @Nullable BagChances versus,
        @Nullable String bag,
        @Nullable Face face,
        @Nullable Approach approach) {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Set<String> KEYS =
            Set.of("name", "bags", "in", "left", "next", "score", "me", "versus", "bag", "face", "approach");
    private static final int TARGET = GameRules.STANDARD.target();

    /**
     * Reads one from JSON.
     *
     * @throws Failure.BadInput if it is none; a line for each fault: what, where, what to do
     */
    public static AdviceQuestion read(String text) {
        JsonNode root;
        try {
            root = MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            throw new Failure.BadInput("the position is not JSON: " + e.getOriginalMessage());
        }
        if (root == null || !root.isObject()) {
            throw new Failure.BadInput(
                    "a position is a JSON object with bags, in, left and next; see boardside advise" + " --help");
        }
        return new Reader(root).question();
    }

    /** Reads key by key and gathers what is wrong. */
    private static final class Reader {
        private final JsonNode root;
        private final List<String> faults = new ArrayList<>();

        Reader(JsonNode root) {
            this.root = root;
        }

        AdviceQuestion question() {
            root.fieldNames().forEachRemaining(key -> {
                if (!KEYS.contains(key)) {
                    faults.add("\"" + key
                            + "\" is no part of a position; there are bags, in, left, next, score, me, versus,"
                            + " bag, face and approach");
                }
            });
            List<Lying> bags = bags();
            int[] in = pair("in", 0, RoundPosition.BAGS);
            int[] left = pair("left", 0, RoundPosition.BAGS);
            int[] score = pair("score", 0, TARGET - 1);
            Side next = word(Side.class, "next");
            BagChances me = chances("me");
            BagChances versus = chances("versus");
            String bag = text("bag");
            Face face = word(Face.class, "face");
            Approach approach = word(Approach.class, "approach");
            if (next == Side.VERSUS) {
                faults.add("next: advice is for your own throw, so \"me\" is next");
            }
            if (left[0] == 0 && root.has("left")) {
                faults.add("left.me: you have no bag left to throw; say 1 to 4");
            }
            if (!root.has("left")) {
                faults.add("left: say how many bags each side has still to throw, such as {\"me\":3,\"versus\":2}");
            }
            stop();
            RoundPosition position = checked(
                    "bags", () -> new RoundPosition(new Position(bags), in[0], in[1], left[0], left[1], Side.ME));
            stop();
            if (position == null) {
                throw new IllegalStateException("a fault was not told");
            }
            return new AdviceQuestion(
                    position,
                    new Game(GameRules.STANDARD, score[0], score[1], position.meFirst(), 0),
                    me,
                    versus,
                    bag,
                    face,
                    approach);
        }

        private void stop() {
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
        }

        private <T> @Nullable T checked(String where, Supplier<T> value) {
            try {
                return value.get();
            } catch (IllegalArgumentException e) {
                faults.add(where + ": " + e.getMessage());
                return null;
            }
        }

        private List<Lying> bags() {
            List<Lying> bags = new ArrayList<>();
            JsonNode list = root.path("bags");
            if (!list.isMissingNode() && !list.isArray()) {
                faults.add("bags: a list of {\"x\":0,\"y\":33,\"side\":\"versus\"}, not " + list);
            }
            for (int i = 0; i < list.size(); i++) {
                String where = "bags, number " + (i + 1);
                JsonNode bag = list.get(i);
                if (!bag.path("x").isNumber()
                        || !bag.path("y").isNumber()
                        || !bag.path("side").isTextual()) {
                    faults.add(where + ": x and y in inches and a side, me or versus, not " + bag);
                    continue;
                }
                Lying lying = checked(
                        where,
                        () -> new Lying(
                                bag.path("x").doubleValue(),
                                bag.path("y").doubleValue(),
                                Word.of(Side.class, bag.path("side").textValue())));
                if (lying != null) {
                    overlaps(bags, lying, i);
                    bags.add(lying);
                }
            }
            return bags;
        }

        private void overlaps(List<Lying> bags, Lying lying, int number) {
            for (int j = 0; j < bags.size(); j++) {
                double apart = bags.get(j).spot().distance(lying.spot());
                if (apart < 6 - 1e-6) {
                    faults.add(String.format(
                            Locale.ROOT,
                            "bags, numbers %d at (%.1f, %.1f) and %d at (%.1f, %.1f): they lie over each other, %.1f in"
                                    + " apart; keep their middles at least 6 in apart",
                            j + 1,
                            bags.get(j).x(),
                            bags.get(j).y(),
                            number + 1,
                            lying.x(),
                            lying.y(),
                            apart));
                }
            }
        }

        private int[] pair(String key, int low, int high) {
            JsonNode node = root.path(key);
            int[] pair = new int[2];
            if (node.isMissingNode()) {
                return pair;
            }
            String[] sides = {"me", "versus"};
            for (int i = 0; i < 2; i++) {
                JsonNode number = node.path(sides[i]);
                if (!number.canConvertToInt() || !number.isIntegralNumber()) {
                    faults.add(key + "." + sides[i] + ": a whole number from " + low + " to " + high + ", not "
                            + (number.isMissingNode() ? "nothing" : number.toString()));
                } else if (number.intValue() < low || number.intValue() > high) {
                    faults.add(key + "." + sides[i] + ": " + low + " to " + high + ", not " + number
                            + (key.equals("score") ? "; a game is over at " + TARGET : ""));
                } else {
                    pair[i] = number.intValue();
                }
            }
            return pair;
        }

        private @Nullable BagChances chances(String key) {
            JsonNode node = root.path(key);
            if (node.isMissingNode() || node.isNull()) {
                return null;
            }
            if (!node.path("in").isNumber() || !node.path("on").isNumber()) {
                faults.add(key + ": the chances of a bag, such as {\"in\":0.3,\"on\":0.4}, not " + node);
                return null;
            }
            return checked(
                    key,
                    () -> new BagChances(
                            node.path("in").doubleValue(), node.path("on").doubleValue()));
        }

        private @Nullable String text(String key) {
            JsonNode node = root.path(key);
            if (node.isMissingNode() || node.isNull()) {
                return null;
            }
            if (!node.isTextual()) {
                faults.add(key + ": a name, not " + node);
                return null;
            }
            return node.textValue();
        }

        private <W extends Enum<W> & Word> @Nullable W word(Class<W> kind, String key) {
            String text = text(key);
            return text == null ? null : checked(key, () -> Word.of(kind, text));
        }
    }
}
