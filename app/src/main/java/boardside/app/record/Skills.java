package boardside.app.record;

import boardside.app.practice.DayCount;
import boardside.engine.rules.Tally;
import boardside.engine.skill.RunCount;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What the engine makes of the records. Keeps what it was told of the players asked about last, so that only runs that
 * changed are read again. Thread safe; one player's answers are worked out one after another.
 */
public final class Skills {
    private static final int MOST_PLAYERS = 4;

    private final Analyses analyses;
    private final Map<Integer, Kept> players = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, Kept> eldest) {
            return size() > MOST_PLAYERS;
        }
    };

    public Skills(Records records) {
        this.analyses = records.analyses();
    }

    /** What a player's counted records say on a day, that day included; nothing is kept. */
    public static Skill of(Records records, int player, LocalDate asOf) {
        return new Skills(records).skill(player, asOf);
    }

    /** What a player's counted records say on a day, that day included. */
    public Skill skill(int player, LocalDate asOf) {
        Kept kept;
        synchronized (players) {
            kept = players.computeIfAbsent(player, Kept::new);
        }
        return kept.skill(asOf);
    }

    /** What is kept of a player. */
    private final class Kept {
        private final int player;
        private long version = -1;
        private Map<String, String> names = Map.of();
        private final Set<String> seen = new HashSet<>();
        private final Map<String, List<RunCount>> runs = new HashMap<>();
        private @Nullable LocalDate day;
        private @Nullable Skill last;

        Kept(int player) {
            this.player = player;
        }

        synchronized Skill skill(LocalDate asOf) {
            boolean changed = bringUpToDate();
            if (!changed && last != null && asOf.equals(day)) {
                return last;
            }
            Skill skill = Skill.of(counts(), asOf);
            // Earlier days are asked about once in a while; the latest again and again.
            if (day == null || !asOf.isBefore(day)) {
                day = asOf;
                last = skill;
            }
            return skill;
        }

        private boolean bringUpToDate() {
            Analyses.Changes changes = analyses.since(player, version);
            if (version >= 0 && outdated(changes)) {
                seen.clear();
                runs.clear();
                changes = analyses.since(player, -1);
            }
            boolean changed = version < 0 || !changes.changed().isEmpty() || !names.equals(changes.bagNames());
            version = changes.version();
            names = changes.bagNames();
            seen.addAll(changes.changed());
            runs.keySet().removeAll(changes.changed());
            for (DayCount count : changes.counts()) {
                runs.computeIfAbsent(count.run(), run -> new ArrayList<>(1)).add(counted(count));
            }
            return changed;
        }

        /** Whether what was kept is of other records (a backup was put back), or calls bag sets by other names. */
        private boolean outdated(Analyses.Changes changes) {
            Set<String> known = new HashSet<>(seen);
            known.addAll(changes.changed());
            return known.size() != changes.runs()
                    || names.entrySet().stream()
                            .anyMatch(name ->
                                    !name.getValue().equals(changes.bagNames().get(name.getKey())));
        }

        /** All counts, in an order that does not depend on when they were read. */
        private List<RunCount> counts() {
            return runs.values().stream()
                    .flatMap(List::stream)
                    .sorted(Comparator.comparing(RunCount::day).thenComparing(RunCount::run))
                    .collect(Collectors.toList());
        }

        private RunCount counted(DayCount count) {
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
}
