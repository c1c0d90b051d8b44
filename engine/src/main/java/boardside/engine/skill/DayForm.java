package boardside.engine.skill;

import java.time.LocalDate;

/**
 * Points per round over some days, for a picture.
 *
 * @param from first day, inclusive
 * @param to last day, inclusive
 * @param throwsCounted bags whose points were counted, 1 or more
 * @param pointsPerRound what these bags alone say, 0..12
 */
public record DayForm(LocalDate from, LocalDate to, long throwsCounted, Interval pointsPerRound) {}
