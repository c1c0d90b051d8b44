package boardside.app.record;

import boardside.app.practice.Line;
import boardside.engine.rules.Word;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How two lines of one key (run, round, side, bag, face) differ.
 *
 * @param column the log's name for what differs
 * @param message both values in words
 */
public record LineDifference(String column, String message) {
    /**
     * The first difference, counts before the rest. What the first line leaves open is no difference.
     *
     * @param has how the other line is spoken of, such as "line 3 has"
     */
    public static Optional<LineDifference> between(Line said, Line other, String has) {
        if (said.thrown() != other.thrown()
                || !Objects.equals(said.in(), other.in())
                || !Objects.equals(said.on(), other.on())) {
            String column = !Objects.equals(said.in(), other.in()) ? "in" : said.on() == null ? "thrown" : "on";
            return Optional.of(new LineDifference(column, counts(said) + ", but " + has + " " + counts(other)));
        }
        return first("approach", word(said.approach()), word(other.approach()), has)
                .or(() -> first("board", said.board().word(), other.board().word(), has))
                .or(() ->
                        first("setting", said.setting().word(), other.setting().word(), has))
                .or(() -> first("conditions", word(said.conditions()), word(other.conditions()), has))
                .or(() -> first("ghost", said.ghost(), other.ghost(), has))
                .or(() ->
                        first("miss_left", said.misses().left(), other.misses().left(), has))
                .or(() -> first(
                        "miss_right", said.misses().right(), other.misses().right(), has))
                .or(() -> first(
                        "miss_short", said.misses().shortOf(), other.misses().shortOf(), has))
                .or(() ->
                        first("miss_long", said.misses().past(), other.misses().past(), has))
                .or(() -> first("at", text(said.at()), text(other.at()), has))
                .or(() -> first("note", text(said.note()), text(other.note()), has));
    }

    private static Optional<LineDifference> first(
            String column, @Nullable Object said, @Nullable Object other, String has) {
        return said == null || said.equals(other)
                ? Optional.empty()
                : Optional.of(new LineDifference(
                        column, "\"" + said + "\", but " + has + " \"" + Objects.toString(other, "") + "\""));
    }

    private static @Nullable String word(@Nullable Word word) {
        return word == null ? null : word.word();
    }

    private static @Nullable String text(String text) {
        return text.isEmpty() ? null : text;
    }

    private static String counts(Line line) {
        return line.on() == null
                ? (line.in() == null ? "nothing counted" : line.in() + " in") + " of " + line.thrown()
                : line.in() + " in, " + line.on() + " on, " + line.off() + " off";
    }
}
