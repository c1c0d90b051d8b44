package boardside.app.practice;

import boardside.engine.tactics.Position;

/**
 * A situation a player keeps to play again.
 *
 * @param id made by whoever drew it, UUIDv7
 * @param op the client's id (UUIDv7) of the upload that last set it
 * @param name not blank
 * @param position what lies on the board
 * @param retired no longer offered
 */
public record KeptSituation(String id, String op, String name, Position position, boolean retired) {}
