package boardside.app.practice;

/**
 * Bags thrown on a day, by all of the player's own sides, warm-ups and uncounted drills included.
 *
 * @param day yyyy-mm-dd
 * @param bags 1 or more
 * @param runs in how many runs
 */
public record DayBags(String day, int bags, int runs) {}
