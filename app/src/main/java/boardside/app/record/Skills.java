package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.DayCount;
import boardside.engine.rules.Tally;
import boardside.engine.skill.RunCount;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What the engine is told of the records. */
public final class Skills {
    private Skills() {}

    /** What a player's counted records say on a day, that day included. */
    public static Skill of(Records records, int player, LocalDate asOf) {
        Map<String, String> names = records.bags(player).stream().collect(Collectors.toMap(BagSet::id, BagSet::name));
        List<RunCount> counts = records.dayCounts(player, null, asOf.toString()).stream()
                .map(count -> counted(count, names))
                .toList();
        return Skill.of(counts, asOf);
    }

    private static RunCount counted(DayCount count, Map<String, String> names) {
        return new RunCount(
                LocalDate.parse(count.day()),
                count.run(),
                count.drill(),
                names.getOrDefault(count.bag(), ""),
                count.face(),
                count.approach(),
                count.board(),
                count.setting(),
                count.conditions(),
                count.rounds(),
                new Tally(count.knownIn(), count.knownOn(), count.known() - count.knownIn() - count.knownOn()),
                count.thrown() - count.known(),
                count.in() - count.knownIn(),
                count.finishes());
    }
}
