package boardside.app.record;

import boardside.app.practice.KeptSituation;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Situation;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a position is called: positions that look the same at the boards have one name.
 *
 * @param kept the name the player gave it, or empty
 * @param common the common situation it is, or null; a name the player gave comes first
 * @param mirrored whether it is the mirror image of that one
 * @param code side, depth and lane of each bag
 */
public record NamedPosition(String kept, @Nullable Situation common, boolean mirrored, String code) {
    /**
     * The name of a position on a board.
     *
     * @param width of the board, inches
     */
    public static NamedPosition of(Position position, double width, List<KeptSituation> situations) {
        String code = position.code(width);
        for (KeptSituation situation : situations) {
            if (situation.position().code(width).equals(code)) {
                return new NamedPosition(situation.name(), null, false, code);
            }
        }
        for (Situation common : Situation.values()) {
            if (common.position().code(width).equals(code)) {
                return new NamedPosition("", common, false, code);
            }
        }
        for (Situation common : Situation.values()) {
            if (common.position().mirrored().code(width).equals(code)) {
                return new NamedPosition("", common, true, code);
            }
        }
        return new NamedPosition("", null, false, code);
    }

    /** In one word or a few, for the terminal. */
    public String words() {
        if (!kept.isEmpty()) {
            return kept;
        }
        return common == null ? code : common.word() + (mirrored ? ", mirrored" : "");
    }
}
