package boardside.engine.plan;

import boardside.engine.skill.Interval;
import boardside.engine.tactics.Shot;

/** Why a block was chosen: the number that did it. Words are the caller's. */
public sealed interface Reason {
    /**
     * It wins more than anything else that fits.
     *
     * @param toIn whether bags on the board that go in are meant, else bags off that stay on
     * @param wins games more won in a hundred when one bag in a hundred moves
     * @param rival against whom, or empty for a ghost
     * @param ghost its points a round, or -1
     */
    record Worth(boolean toIn, Interval wins, String rival, int ghost) implements Reason {}

    /** Nothing counted is known of the player yet. */
    record FirstNumbers() implements Reason {}

    /**
     * Little is known of how often it works.
     *
     * @param tries recorded so far
     */
    record Unsure(long tries) implements Reason {}

    /**
     * It was left alone for long.
     *
     * @param days since the last time
     */
    record Neglected(long days) implements Reason {}

    /**
     * It works about as often as teaches most.
     *
     * @param works share of tries, 0..1
     */
    record RightlyHard(Interval works) implements Reason {}

    /**
     * It would win games to make it more often.
     *
     * @param shot which
     * @param wins games more won in a hundred if it works ten times in a hundred more often, as the playbook says
     * @param works share of tries, 0..1
     * @param tries recorded so far
     */
    record ShotWorth(Shot shot, Interval wins, Interval works, long tries) implements Reason {}

    /**
     * A race that hangs in the balance.
     *
     * @param win the chance to win it
     */
    record Balance(Interval win) implements Reason {}

    /**
     * Points lost when something is at stake.
     *
     * @param points a round, more in practice than at stake
     */
    record Stakes(Interval points) implements Reason {}

    /**
     * A league match is near.
     *
     * @param days until it has to be thrown
     */
    record LeagueNight(String rival, long days) implements Reason {}

    /**
     * The ladder waits.
     *
     * @param rung where it stands
     * @param days since the last race of a climb
     */
    record Ladder(int rung, long days) implements Reason {}

    /**
     * A trial is under way.
     *
     * @param name the trial's
     * @param blocks still to throw, at most
     */
    record TrialOpen(String name, int blocks) implements Reason {}

    /**
     * The boards were not tested for long.
     *
     * @param days since the last slide test, or -1 where there was none
     */
    record BoardsUnknown(long days) implements Reason {}

    /** The player has said since the last slide test that the boards play otherwise. */
    record BoardsChanged() implements Reason {}

    /**
     * Before the first counted bag.
     *
     * @param minutes of practice that follow
     */
    record WarmUp(int minutes) implements Reason {}

    /**
     * A pause.
     *
     * @param minutes of practice before it, since the last one
     */
    record Rest(int minutes) implements Reason {}
}
