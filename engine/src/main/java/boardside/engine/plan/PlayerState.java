package boardside.engine.plan;

import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Shot;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a plan goes by.
 *
 * @param form how the player throws
 * @param rivals whom they want to win against; empty where none is known
 * @param targets parts of the board they tried to hit
 * @param shots shots they tried in situations
 * @param due what waits
 * @param habits how they practise
 * @param goals themes that serve their goals
 * @param worths games in a hundred more won by a shot that works ten times in a hundred more often, as a playbook says; empty
 *     where there is none, and a share of the player's bags is taken instead ({@link Menu})
 */
public record PlayerState(
        Form form,
        List<Rival> rivals,
        List<Tried> targets,
        List<Tried> shots,
        Due due,
        Habits habits,
        Set<Theme.Kind> goals,
        Map<Shot, Interval> worths) {
    /** Copied. */
    public PlayerState {
        rivals = List.copyOf(rivals);
        targets = List.copyOf(targets);
        shots = List.copyOf(shots);
        goals = Set.copyOf(goals);
        worths = Map.copyOf(worths);
    }

    /** The same with what shots are worth. */
    public PlayerState withWorths(Map<Shot, Interval> known) {
        return new PlayerState(form, rivals, targets, shots, due, habits, goals, known);
    }

    /** Somebody of whom nothing is known. */
    public static PlayerState unknown() {
        return new PlayerState(
                Form.UNKNOWN, List.of(), List.of(), List.of(), Due.NOTHING, Habits.NONE, Set.of(), Map.of());
    }

    /**
     * How somebody throws.
     *
     * @param chances one bag's; empty without records that count points
     * @param finish kept bags that go in
     * @param control bags kept
     * @param pressure throwing when a game hangs on it
     * @param stakes points a round lost when something is at stake; empty where no league or tournament is recorded
     * @param narrow points a round that the narrow board costs; empty where it was not thrown at
     */
    public record Form(
            Optional<ChanceRange> chances,
            Ability finish,
            Ability control,
            Ability pressure,
            Optional<Interval> stakes,
            Optional<Interval> narrow) {
        static final Form UNKNOWN = new Form(
                Optional.empty(), Ability.NEVER, Ability.NEVER, Ability.NEVER, Optional.empty(), Optional.empty());
    }
}
