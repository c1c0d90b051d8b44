package boardside.engine.skill;

import boardside.engine.rules.Setting;
import java.util.List;

/** What it does to a player that something is at stake. */
public sealed interface StakesAnswer {
    /** Plain words, with a number where there is one, and whether it is signal or luck. */
    String sentence();

    /** Either no practice or nothing but practice is recorded. */
    record NothingAtStake(String sentence) implements StakesAnswer {}

    /**
     * League and tournament against practice, at today's skill and the same mix of bags, faces and approaches.
     *
     * @param settings those recorded, at least one
     * @param sentence theirs together
     */
    record Stakes(List<Stake> settings, String sentence) implements StakesAnswer {
        /** List copied. */
        public Stakes {
            settings = List.copyOf(settings);
        }
    }

    /**
     * One setting.
     *
     * @param setting league or tournament
     * @param throwsCounted bags thrown in it, 1 or more
     * @param difference its points per round less those of practice, -12..12
     * @param probabilityBetter the chance that the difference is above 0
     * @param verdict how sure its sign is
     * @param sentence what the screen says
     */
    record Stake(
            Setting setting,
            long throwsCounted,
            Interval difference,
            double probabilityBetter,
            Verdict verdict,
            String sentence) {}
}
