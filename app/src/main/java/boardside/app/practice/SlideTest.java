package boardside.app.practice;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A few bags thrown to see how the boards play, tapped where they landed and where they stopped.
 *
 * @param id made by the client, UUIDv7
 * @param op the client's id (UUIDv7) of the upload that last set it
 * @param tapped what was tapped, or null once it was deleted
 */
public record SlideTest(String id, String op, @Nullable Tapped tapped) {
    /**
     * What was tapped.
     *
     * @param at when, ISO-8601 with offset
     * @param bag id of the bag set, or empty
     * @param face the face down, or null
     * @param board the kind of board
     * @param conditions how the player says the boards play, or null
     * @param slides bags that landed on the board, in the order thrown
     */
    public record Tapped(
            String at,
            String bag,
            @Nullable Face face,
            BoardKind board,
            @Nullable Conditions conditions,
            List<Slid> slides) {
        /** Takes a copy of the list. */
        public Tapped {
            slides = List.copyOf(slides);
        }

        /** The day in its own offset, yyyy-mm-dd. */
        public String day() {
            return Moment.of(at).day();
        }
    }

    /**
     * One bag.
     *
     * @param outcome how it ended
     * @param landing where it landed on the board
     * @param rest where it stopped, if it stayed on the board; else null
     */
    public record Slid(Outcome outcome, Round.Point landing, Round.@Nullable Point rest) {}
}
