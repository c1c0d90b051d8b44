package boardside.engine.skill;

/**
 * One way to throw against another.
 *
 * @param lead points per round that the first makes more than the second, -12..12
 * @param probabilityAhead the chance that the lead is above 0
 * @param verdict how sure its sign is
 */
public record Difference(Interval lead, double probabilityAhead, Verdict verdict) {}
