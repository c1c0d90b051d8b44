package boardside.app.practice;

import boardside.engine.plan.Goal;

/**
 * A goal a player has set.
 *
 * @param id any non-blank text, unique for the player
 * @param goal what is to be reached
 * @param setOn yyyy-mm-dd
 * @param droppedOn yyyy-mm-dd when it was put away, or empty
 */
public record SetGoal(String id, Goal goal, String setOn, String droppedOn) {}
