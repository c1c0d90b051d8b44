package boardside.app.practice;

/**
 * Somebody who throws; one household can hold several.
 *
 * @param id the store's number for the player, 1 or more
 * @param name unique in the store, not blank
 * @param hand the hand that throws
 * @param throwsFrom the side of the board they stand on, as they face it
 * @param version grows with every change of the player's records; derived values are cached under it
 */
public record Player(int id, String name, Hand hand, Hand throwsFrom, long version) {
    /** Left or right, of a hand or of the board's sides as the thrower faces it. */
    public enum Hand implements boardside.engine.rules.Word {
        LEFT,
        RIGHT
    }
}
