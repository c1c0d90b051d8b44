package boardside.app.practice;

import boardside.engine.rules.BoardKind;

/**
 * A board the player owns.
 *
 * @param id made by whoever first named it, UUIDv7
 * @param name unique for the player, not blank
 * @param kind regulation or narrow
 * @param width inches across, above 0, at most 24
 * @param front height of the front edge, inches, 2..6
 * @param note free text, or empty
 * @param retired no longer offered for new runs
 */
public record Board(String id, String name, BoardKind kind, double width, double front, String note, boolean retired) {}
