package boardside.app.web;

import boardside.app.practice.Setup;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What may be chosen for the parts of a set-up that change between rounds, with what is chosen now. */
public final class Choices {
    private Choices() {}

    /**
     * One choice.
     *
     * @param word its value in a form, empty for not said
     * @param key of its label
     * @param chosen whether it is the one now
     */
    public record Choice(String word, String key, boolean chosen) {}

    public static List<Choice> faces(Setup setup) {
        return optional("face", Face.class, setup.face());
    }

    public static List<Choice> approaches(Setup setup) {
        return optional("approach", Approach.class, setup.approach());
    }

    public static List<Choice> boards(Setup setup) {
        return given("board", BoardKind.class, setup.board());
    }

    public static List<Choice> conditions(Setup setup) {
        return optional("conditions", Conditions.class, setup.conditions());
    }

    private static <E extends Enum<E> & Word> List<Choice> optional(String name, Class<E> kind, @Nullable E now) {
        List<Choice> choices = new ArrayList<>(given(name, kind, now));
        choices.add(0, new Choice("", "choice.none", now == null));
        return choices;
    }

    private static <E extends Enum<E> & Word> List<Choice> given(String name, Class<E> kind, @Nullable E now) {
        List<Choice> choices = new ArrayList<>();
        for (E value : kind.getEnumConstants()) {
            choices.add(new Choice(value.word(), name + "." + value.word(), value == now));
        }
        return choices;
    }
}
