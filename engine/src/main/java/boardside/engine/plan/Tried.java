package boardside.engine.plan;

import boardside.engine.rules.BoardKind;
import boardside.engine.skill.Interval;

/**
 * Something a player tries at set-up bags or at a called part of the board.
 *
 * @param id of what is tried, unique among all of its kind: the target's text, or the situation with the shot
 * @param shot the word of the shot: block and back-block for targets
 * @param aim what the player reads: the target's text, or the situation's name
 * @param board the board it is tried on
 * @param rate how often it works, 0..1
 * @param tries recorded, 0 or more
 * @param ability what came of practising it
 */
public record Tried(String id, String shot, String aim, BoardKind board, Interval rate, long tries, Ability ability) {}
