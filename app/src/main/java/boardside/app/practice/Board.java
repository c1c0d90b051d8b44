package boardside.app.practice;

import boardside.engine.rules.BoardKind;

/**
 * A board a player throws at.
 *
 * @param id made by whoever first named it, UUIDv7
 * @param name unique for the player, not blank
 * @param kind regulation or narrow
 * @param width inches, above 0, at most 24; 24 for a regulation board
 * @param front height of the front edge, inches, 2..6
 * @param note free text, or empty
 * @param retired no longer in use
 */
public record Board(String id, String name, BoardKind kind, double width, double front, String note, boolean retired) {
    /** Width of a regulation board, inches. */
    public static final double REGULATION_WIDTH = 24;

    /** Width of a narrow board unless said otherwise, inches. */
    public static final double NARROW_WIDTH = 12;

    /** Height of the front edge unless said otherwise, inches. */
    public static final double USUAL_FRONT = 3.5;

    /** Width of a kind of board unless said otherwise, inches. */
    public static double usualWidth(BoardKind kind) {
        return kind == BoardKind.NARROW ? NARROW_WIDTH : REGULATION_WIDTH;
    }
}
