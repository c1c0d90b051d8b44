package boardside.engine.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** A constant with a word of its own, as it stands in records and on the command line. */
public interface Word {
    /** The constant's name in code. */
    String name();

    /** The word: the name in lower case, {@code -} between parts. */
    default String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The constant of a kind for a word.
     *
     * @throws IllegalArgumentException if no constant has that word; the message lists those that exist
     */
    static <E extends Enum<E> & Word> E of(Class<E> kind, String word) {
        for (E value : kind.getEnumConstants()) {
            if (value.word().equals(word)) {
                return value;
            }
        }
        throw new IllegalArgumentException(
                "\"" + word + "\" is none of " + String.join(", ", words(kind)) + "; use one of these");
    }

    /** All words of a kind, in the order of its constants. */
    static <E extends Enum<E> & Word> List<String> words(Class<E> kind) {
        return Arrays.stream(kind.getEnumConstants()).map(Word::word).toList();
    }
}
