package boardside.engine.rules;

/** A way to practise or play; what a run is a go at. */
public enum Drill implements Word {
    /** Any number of bag sets a round; count the bags in. */
    VOLUME(true, 100),
    /** A number of rounds of four with a running score. */
    TOTAL(true, 4),
    /** A game to 21 against a ghost. */
    RACE(true, 4),
    /** A real game against an opponent. */
    GAME(true, 4),
    /** Races up and down the ghost ladder. */
    CLIMB(true, 4),
    /** Two sides alternate, each with its own bag and approach. */
    DUEL(true, 4),
    /** Put a block in a chosen lane and depth. */
    PLACEMENT(false, 4),
    /** Play a shot, or a chain of shots, at bags set up. */
    SITUATION(false, 4),
    /** A randomised comparison of bags and approaches. */
    TRIAL(true, 4),
    /** A remote-league game. */
    FIXTURE(true, 4),
    /** Just throwing. */
    CASUAL(false, 100);

    private final boolean counted;
    private final int mostBags;

    Drill(boolean counted, int mostBags) {
        this.counted = counted;
        this.mostBags = mostBags;
    }

    /** Whether its rounds, unless a warm-up, say something about the player's skill. */
    public boolean counted() {
        return counted;
    }

    /** The most bags one side throws in a round: 4, or 100 where several bag sets share a round. */
    public int mostBags() {
        return mostBags;
    }

    /** Whether a round is set against a ghost's fixed score. */
    public boolean needsGhost() {
        return this == RACE || this == CLIMB;
    }
}
