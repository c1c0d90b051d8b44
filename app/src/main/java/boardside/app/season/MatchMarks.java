package boardside.app.season;

import java.time.Instant;

/**
 * How the rounds of a match came in, counted.
 *
 * @param edits changes that came late, or were the organiser's
 * @param latest when the latest round was received
 */
public record MatchMarks(int live, int late, int typed, int edits, Instant latest) {}
