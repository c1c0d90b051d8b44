package boardside.app.record;

import boardside.app.practice.KeptSituation;
import boardside.app.practice.Player;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Situation;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A situation that a player may choose.
 *
 * @param id of a kept one, or a common one's word
 * @param name the name the player gave it; empty for a common one
 * @param common the common one, or null
 * @param position as it looks from the side the player throws from
 */
public record OfferedSituation(
        String id, String name, @Nullable Situation common, Position position) {
    /** The player's own, then the common ones, which are drawn for somebody on the left of the board. */
    public static List<OfferedSituation> of(Records records, Player player) {
        List<OfferedSituation> offered = new ArrayList<>();
        for (KeptSituation kept : records.situations(player.id())) {
            if (!kept.retired()) {
                offered.add(new OfferedSituation(kept.id(), kept.name(), null, kept.position()));
            }
        }
        boolean mirrored = player.throwsFrom() == Player.Hand.RIGHT;
        for (Situation common : Situation.values()) {
            Position drawn = common.position();
            offered.add(new OfferedSituation(common.word(), "", common, mirrored ? drawn.mirrored() : drawn));
        }
        return offered;
    }
}
