package boardside.engine.trial;

import boardside.engine.skill.Interval;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a trial stands after the blocks thrown so far.
 *
 * @param ending whether it is decided
 * @param blocks blocks that count
 * @param longest blocks after which it ends
 * @param standings all candidates: those in play first, then the latest to drop out; among those in play most points first
 * @param lead points per round between the first two of these, a 90 % credible interval; before the first block 0 to 0
 * @param needed points per round the first must be ahead of the last in play for that one to drop out, after these blocks;
 *     0 before the first
 * @param inPlay candidates still thrown, by number
 * @param rest candidates already thrown in the block under way, in order
 * @param unused units that do not count: of blocks left unfinished, or thrown after the end
 * @param sentence what the screen says
 */
public record TrialState(
        Ending ending,
        int blocks,
        int longest,
        List<Standing> standings,
        Interval lead,
        double needed,
        List<Integer> inPlay,
        List<Integer> rest,
        int unused,
        String sentence) {
    /** Lists copied. */
    public TrialState {
        standings = List.copyOf(standings);
        inPlay = List.copyOf(inPlay);
        rest = List.copyOf(rest);
    }

    /** Whether nothing more need be thrown. */
    public boolean over() {
        return !(ending instanceof Ending.UnderWay);
    }

    /**
     * One candidate.
     *
     * @param candidate from 0
     * @param rounds rounds of four that count
     * @param pointsPerRound as its bags alone speak for, 0..12; null before the first block
     * @param behind points per round it is behind the first, a 90 % credible interval; null for the first itself and before
     *     the first block
     * @param droppedAfter blocks after which it dropped out, or null while in play
     */
    public record Standing(
            int candidate,
            int rounds,
            @Nullable Interval pointsPerRound,
            @Nullable Interval behind,
            @Nullable Integer droppedAfter) {}
}
