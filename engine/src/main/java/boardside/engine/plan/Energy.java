package boardside.engine.plan;

import boardside.engine.rules.Word;

/**
 * How fresh a player is. All numbers are chosen, after common practice without a source; they are general advice, and
 * whoever hurts stops.
 */
public enum Energy implements Word {
    LOW(45, 250),
    NORMAL(70, 500),
    HIGH(95, 700);

    private final double stamina;
    private final int mostBags;

    Energy(double stamina, int mostBags) {
        this.stamina = stamina;
        this.mostBags = mostBags;
    }

    /** Minutes of practice without a break after which a bag teaches about 0.6 of what a fresh one does. */
    double stamina() {
        return stamina;
    }

    /** The most bags of a session, unless the player's own weeks say otherwise. */
    int mostBags() {
        return mostBags;
    }
}
