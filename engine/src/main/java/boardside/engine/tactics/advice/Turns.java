package boardside.engine.tactics.advice;

/**
 * The rest of a round as {@link Rollouts} sees it: states, shots, chance. Stateless; thread safe.
 *
 * @param <S> what lies where and who has which bags left
 * @param <A> a shot
 */
interface Turns<S, A> {
    /** Bags left to both sides; 0 where the round is over. */
    int left(S state);

    /** Which bag of the round it is that is thrown now, 0..15: its luck is the same in every order of the bags. */
    int turn(S state);

    /** What the base policy of the side to throw plays. */
    A base(S state);

    /**
     * The state after a shot.
     *
     * @param draw which of the players that the records leave possible throws, from 0
     * @param luck the chance in it; its turn is {@code turn(state)}
     */
    S play(S state, A shot, int draw, Luck luck);

    /** Whether a shot did what it was to do. */
    boolean worked(S before, A shot, S after);

    /** How a round ended, 0 up to {@link #results()}, exclusive; of a state with no bags left. */
    int result(S state);

    /** How many ends are told apart, at most 64. */
    int results();

    /** Players that the records leave possible, equally likely. */
    int draws();
}
