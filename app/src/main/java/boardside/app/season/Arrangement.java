package boardside.app.season;

import boardside.engine.league.season.SeasonMatch;
import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * What is arranged about a match, beside its result.
 *
 * @param extended when it closes, as the season's clocks show it; null for the end of its week
 * @param firstSubstitute who throws for the side named first, or empty
 * @param secondSubstitute who throws for the other side, or empty
 * @param headStart points the side named first is given in each game; negative, the other side
 * @param note what is to be known of it
 */
public record Arrangement(
        @Nullable LocalDateTime extended, String firstSubstitute, String secondSubstitute, int headStart, String note) {
    /** That of a match as it stands. */
    public static Arrangement of(SeasonMatch match) {
        return new Arrangement(
                match.extended(), match.firstSubstitute(), match.secondSubstitute(), match.headStart(), match.note());
    }

    /** The same with another end. */
    public Arrangement until(@Nullable LocalDateTime other) {
        return new Arrangement(other, firstSubstitute, secondSubstitute, headStart, note);
    }

    /** The same with other substitutes. */
    public Arrangement substitutes(String first, String second) {
        return new Arrangement(extended, first, second, headStart, note);
    }

    /** The same with another head start. */
    public Arrangement headStart(int points) {
        return new Arrangement(extended, firstSubstitute, secondSubstitute, points, note);
    }

    /** The same with another note. */
    public Arrangement note(String text) {
        return new Arrangement(extended, firstSubstitute, secondSubstitute, headStart, text);
    }
}
