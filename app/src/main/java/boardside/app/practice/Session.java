package boardside.app.practice;

/**
 * One outing to the boards.
 *
 * @param id any non-blank text, unique for the player
 * @param startedAt ISO-8601 with offset, as given
 * @param day the date of {@code startedAt} in its own offset, yyyy-mm-dd
 * @param note free text, or empty
 */
public record Session(String id, String startedAt, String day, String note) {}
