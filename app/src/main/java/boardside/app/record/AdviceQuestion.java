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
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.advice.RoundPosition;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
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
 * @param theirApproach that of the opponent, or null for conservative
 */
public record AdviceQuestion(
        RoundPosition position,
        Game game,
        @Nullable BagChances me,
        @Nullable BagChances versus,
        @Nullable String bag,
        @Nullable Face face,
        @Nullable Approach approach,
        @Nullable Approach theirApproach) {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Set<String> KEYS = Set.of(
            "name", "bags", "in", "left", "next", "score", "me", "versus", "bag", "face", "approach", "theirApproach");
    private static final int TARGET = GameRules.STANDARD.target();

    /** What came of reading a position. */
    public sealed interface Parsed {
        /** It can be answered. */
        record Sound(AdviceQuestion question) implements Parsed {}

        /**
         * It cannot.
         *
         * @param faults all that was found, at least one
         * @param bags those that could be read, as they are told
         */
        record Faulty(List<AdviceFault> faults, List<Lying> bags) implements Parsed {
            /** Lists copied. */
            public Faulty {
                faults = List.copyOf(faults);
                bags = List.copyOf(bags);
            }
        }
    }

    /**
     * Reads one from JSON.
     *
     * @throws Failure.BadInput if it is none; a line for each fault: what, where, what to do
     */
    public static AdviceQuestion read(String text) {
        Parsed parsed = parse(text);
        if (parsed instanceof Parsed.Faulty faulty) {
            throw new Failure.BadInput(
                    faulty.faults().stream().map(AdviceFault::line).toList());
        }
        return ((Parsed.Sound) parsed).question();
    }

    /** Reads one from JSON, telling what is wrong with it. */
    public static Parsed parse(String text) {
        JsonNode root;
        try {
            root = MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            return unreadable("the position is not JSON: " + e.getOriginalMessage());
        }
        if (root == null || !root.isObject()) {
            return unreadable(
                    "a position is a JSON object with bags, in, left and next; see boardside advise" + " --help");
        }
        return new Reader(root).question();
    }

    private static Parsed unreadable(String line) {
        return new Parsed.Faulty(List.of(new AdviceFault.Other(line)), List.of());
    }

    /** Reads key by key and gathers what is wrong. */
    private static final class Reader {
        private final JsonNode root;
        private final List<AdviceFault> faults = new ArrayList<>();
        private final List<Lying> bags = new ArrayList<>();

        Reader(JsonNode root) {
            this.root = root;
        }

        Parsed question() {
            root.fieldNames().forEachRemaining(key -> {
                if (!KEYS.contains(key)) {
                    other("\"" + key
                            + "\" is no part of a position; there are bags, in, left, next, score, me, versus,"
                            + " bag, face, approach and theirApproach");
                }
            });
            bags();
            int[] in = pair("in", RoundPosition.BAGS);
            int[] left = pair("left", RoundPosition.BAGS);
            int[] score = pair("score", TARGET - 1);
            Side next = word(Side.class, "next");
            BagChances me = chances(Side.ME);
            BagChances versus = chances(Side.VERSUS);
            String bag = text("bag");
            Face face = word(Face.class, "face");
            Approach approach = word(Approach.class, "approach");
            Approach theirApproach = word(Approach.class, "theirApproach");
            if (next != null && next != Side.ME) {
                other("next: advice is for your own throw, so \"me\" is next");
            }
            if (!root.has("left")) {
                other("left: say how many bags each side has still to throw, such as {\"me\":3,\"versus\":2}");
            } else if (faults.stream()
                    .noneMatch(fault -> fault instanceof AdviceFault.OutOfRange range
                            && !range.of().equals("score"))) {
                if (left[0] == 0) {
                    faults.add(new AdviceFault.NoneLeft());
                } else {
                    RoundPosition.faults(on(Side.ME), on(Side.VERSUS), in[0], in[1], left[0], left[1], Side.ME)
                            .forEach(fault -> faults.add(new AdviceFault.Round(fault)));
                }
            }
            if (!faults.isEmpty()) {
                return new Parsed.Faulty(faults, bags);
            }
            RoundPosition position = new RoundPosition(new Position(bags), in[0], in[1], left[0], left[1], Side.ME);
            return new Parsed.Sound(new AdviceQuestion(
                    position,
                    new Game(GameRules.STANDARD, score[0], score[1], position.meFirst(), 0),
                    me,
                    versus,
                    bag,
                    face,
                    approach,
                    theirApproach));
        }

        private void other(String line) {
            faults.add(new AdviceFault.Other(line));
        }

        private int on(Side side) {
            return (int) bags.stream().filter(bag -> bag.side() == side).count();
        }

        private <T> @Nullable T checked(Supplier<T> value, Function<String, AdviceFault> fault) {
            try {
                return value.get();
            } catch (IllegalArgumentException e) {
                faults.add(fault.apply(e.getMessage()));
                return null;
            }
        }

        private void bags() {
            JsonNode list = root.path("bags");
            if (!list.isMissingNode() && !list.isArray()) {
                other("bags: a list of {\"x\":0,\"y\":33,\"side\":\"versus\"}, not " + list);
            }
            if (list.size() > 2 * RoundPosition.BAGS) {
                other("bags: two sides have " + 2 * RoundPosition.BAGS + " bags, not " + list.size()
                        + "; take some away");
                return;
            }
            List<Integer> numbers = new ArrayList<>();
            for (int i = 0; i < list.size(); i++) {
                int number = i + 1;
                JsonNode bag = list.get(i);
                if (!bag.path("x").isNumber()
                        || !bag.path("y").isNumber()
                        || !bag.path("side").isTextual()) {
                    faults.add(new AdviceFault.Misplaced(
                            number, "x and y in inches and a side, me or versus, not " + bag));
                    continue;
                }
                Lying lying = checked(
                        () -> new Lying(
                                bag.path("x").doubleValue(),
                                bag.path("y").doubleValue(),
                                Word.of(Side.class, bag.path("side").textValue())),
                        why -> new AdviceFault.Misplaced(number, why));
                if (lying != null) {
                    for (int j = 0; j < bags.size(); j++) {
                        if (bags.get(j).spot().distance(lying.spot()) < 2 * Spot.RADIUS - Position.ROUNDING) {
                            faults.add(new AdviceFault.Overlap(numbers.get(j), bags.get(j), number, lying));
                        }
                    }
                    bags.add(lying);
                    numbers.add(number);
                }
            }
        }

        private int[] pair(String key, int most) {
            JsonNode node = root.path(key);
            int[] pair = new int[2];
            if (node.isMissingNode()) {
                return pair;
            }
            Side[] sides = {Side.ME, Side.VERSUS};
            for (int i = 0; i < 2; i++) {
                JsonNode number = node.path(sides[i].word());
                boolean whole = number.canConvertToInt() && number.isIntegralNumber();
                if (whole && number.intValue() >= 0 && number.intValue() <= most) {
                    pair[i] = number.intValue();
                } else {
                    String given = number.isMissingNode() ? "nothing" : number.toString();
                    faults.add(new AdviceFault.OutOfRange(key, sides[i], most, given, whole));
                }
            }
            return pair;
        }

        private @Nullable BagChances chances(Side side) {
            JsonNode node = root.path(side.word());
            if (node.isMissingNode() || node.isNull()) {
                return null;
            }
            if (!node.path("in").isNumber() || !node.path("on").isNumber()) {
                faults.add(new AdviceFault.Chances(
                        side, "the chances of a bag, such as {\"in\":0.3,\"on\":0.4}, not " + node));
                return null;
            }
            return checked(
                    () -> new BagChances(
                            node.path("in").doubleValue(), node.path("on").doubleValue()),
                    why -> new AdviceFault.Chances(side, why));
        }

        private @Nullable String text(String key) {
            JsonNode node = root.path(key);
            if (node.isMissingNode() || node.isNull()) {
                return null;
            }
            if (!node.isTextual()) {
                other(key + ": a name, not " + node);
                return null;
            }
            return node.textValue();
        }

        private <W extends Enum<W> & Word> @Nullable W word(Class<W> kind, String key) {
            String text = text(key);
            return text == null
                    ? null
                    : checked(() -> Word.of(kind, text), why -> new AdviceFault.Other(key + ": " + why));
        }
    }
}
