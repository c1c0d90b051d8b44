package boardside.app.record;

import boardside.app.json.Json;
import boardside.app.practice.DayCount;
import boardside.engine.rules.Tally;
import boardside.engine.skill.Learned;
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
    private static final int MOST_PLAYERS = 16;

    /** Records that have grown by no more than this since something was learned of them have little more to teach. */
    private static final double GROWN = 1.25;

    private final Analyses analyses;
    private final boolean keeps;
    private final Map<Integer, Kept> players = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, Kept> eldest) {
            return size() > MOST_PLAYERS;
        }
    };

    /** Keeps what is learned in the store, too, for the next start of the program. */
    public Skills(Records records) {
        this(records, true);
    }

    private Skills(Records records, boolean keeps) {
        this.analyses = records.analyses();
        this.keeps = keeps;
    }

    /** What a player's counted records say on a day, that day included; nothing is written to the store. */
    public static Skill of(Records records, int player, LocalDate asOf) {
        return new Skills(records, false).skill(player, asOf);
    }

    /** What a player's counted records say on a day, that day included. */
    public Skill skill(int player, LocalDate asOf) {
        Kept kept;
        synchronized (players) {
            kept = players.computeIfAbsent(player, Kept::new);
        }
        return kept.skill(asOf);
    }

    /** What was learned, or nothing where another version of the program wrote it otherwise. */
    private static @Nullable Learned read(String json) {
        try {
            return Json.read(json, Learned.class);
        } catch (IllegalArgumentException e) {
            return null;
        }
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
        private @Nullable Learned learned;

        Kept(int player) {
            this.player = player;
        }

        synchronized Skill skill(LocalDate asOf) {
            List<RunCount> added = new ArrayList<>();
            boolean changed = bringUpToDate(added);
            if (!changed && last != null && asOf.equals(day)) {
                return last;
            }
            Skill skill = fitted(added, asOf);
            // Earlier days are asked about once in a while; the latest again and again.
            if (day == null || !asOf.isBefore(day)) {
                day = asOf;
                last = skill;
            }
            return skill;
        }

        /**
         * What changed runs have come to: moves on from the last answer where they are all new, else begins with what was
         * learned last; without that, with nothing.
         */
        private Skill fitted(List<RunCount> added, LocalDate asOf) {
            Learned start = learned;
            if (start == null) {
                start = read(analyses.learned(player).orElse(""));
            }
            Skill skill;
            if (last != null && !added.isEmpty() && asOf.equals(day) && mayMoveOn(start)) {
                skill = last.with(added);
            } else {
                skill = start == null ? Skill.of(counts(), asOf) : Skill.of(counts(), asOf, start);
            }
            Learned end = skill.learned().orElse(null);
            if (end != null && !end.equals(start)) {
                learned = end;
                if (keeps) {
                    analyses.keepLearned(player, Json.write(end));
                }
            }
            return skill;
        }

        /** Whether the records have grown too little for what was learned of them to be learned anew. */
        private boolean mayMoveOn(@Nullable Learned start) {
            long bags = runs.values().stream()
                    .flatMap(List::stream)
                    .mapToLong(RunCount::thrown)
                    .sum();
            return start != null && bags <= GROWN * start.bags();
        }

        /**
         * Reads what has changed.
         *
         * @param added filled with the counts that are new, where nothing else has changed
         */
        private boolean bringUpToDate(List<RunCount> added) {
            Analyses.Changes changes = analyses.since(player, version);
            if (version >= 0 && outdated(changes)) {
                seen.clear();
                runs.clear();
                last = null;
                learned = null;
                changes = analyses.since(player, -1);
            }
            boolean changed = last == null || !changes.changed().isEmpty();
            version = changes.version();
            names = changes.bagNames();
            seen.addAll(changes.changed());
            boolean onlyNew = !runs.keySet().removeAll(changes.changed());
            for (DayCount count : changes.counts()) {
                RunCount counted = counted(count, names);
                runs.computeIfAbsent(count.run(), run -> new ArrayList<>(1)).add(counted);
                if (onlyNew) {
                    added.add(counted);
                }
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
    }

    /** All counts of a player that count, without asking a model about them. */
    static List<RunCount> counts(Records records, int player) {
        Analyses.Changes all = records.analyses().since(player, -1);
        return all.counts().stream()
                .map(count -> counted(count, all.bagNames()))
                .toList();
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
