package boardside.app.record;

import boardside.engine.skill.RunCount;
import boardside.engine.trial.Outlook;
import boardside.engine.trial.Swings;
import boardside.engine.trial.TrialDesign;
import java.time.LocalDate;
import java.util.List;

/** What a trial will probably take, by a player's own swings and pace. */
public final class TrialOutlook {
    private TrialOutlook() {}

    /**
     * The outlook of a trial.
     *
     * @param asOf records up to that day, included, are gone by
     */
    public static Outlook of(Records records, int player, LocalDate asOf, TrialDesign design) {
        List<RunCount> counts = Skills.counts(records, player).stream()
                .filter(count -> !count.day().isAfter(asOf))
                .toList();
        Swings swings = counts.isEmpty() ? Swings.usual() : Swings.of(counts);
        return Outlook.of(design, swings, records.pace(player).minutesPerRound());
    }
}
