package boardside.app.practice;

/**
 * A block that was swapped for another.
 *
 * @param id any non-blank text, unique for the player
 * @param day yyyy-mm-dd
 * @param choice what was refused
 */
public record Refused(String id, String day, String choice) {}
