package boardside.app.practice;

/**
 * A best with where it was thrown.
 *
 * @param value how much
 * @param run id of the run, or empty where it is of no single one
 * @param day yyyy-mm-dd
 */
public record Held(int value, String run, String day) {}
