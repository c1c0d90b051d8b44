package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Contest;
import boardside.app.practice.Run;
import boardside.engine.rules.Approach;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.tactics.advice.Approaches;
import boardside.engine.tactics.advice.Playbook;
import boardside.engine.tactics.advice.Strength;
import boardside.engine.tactics.advice.Thrower;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A player's playbook, from the records. */
public final class Playbooks {
    /** Rests of the round for each shot of each situation; also of rounds for each draw and approach. */
    private static final int SAMPLES = 512;

    private static final long SEED = 1;
    private static final int MOST_BAGS = 3;
    private static final int MOST_DUELS = 500;

    private Playbooks() {}

    /**
     * How the two approaches do with one bag set's face.
     *
     * @param name of the bag set, or empty
     * @param approaches in whole games of simple rules
     * @param careful duels of one's own that conservative won against aggressive, with this bag set on both sides
     * @param bold duels that aggressive won
     */
    public record Bag(String name, @Nullable Face face, Approaches approaches, int careful, int bold) {}

    /** All of it. */
    public record Book(Advising.Asked asked, Playbook playbook, List<Bag> bags, List<Strength> strengths) {
        /** Lists copied. */
        public Book {
            bags = List.copyOf(bags);
            strengths = List.copyOf(strengths);
        }
    }

    /** Works it out; takes seconds. */
    public static Book of(Records records, int player, LocalDate today) {
        Advising.Asked asked = Advising.of(records, player, today, null, null, null, null, null);
        Playbook playbook = Playbook.of(asked.matchup(), SAMPLES, SEED);
        Map<String, int[]> duels = duels(records, player);
        List<Bag> bags = new ArrayList<>();
        for (Throws.Group group : Throws.of(records, player, today).groups()) {
            boolean thrown = group.fit().records().bags() > 0;
            if (bags.size() < MOST_BAGS && (thrown || bags.isEmpty())) {
                Thrower thrower =
                        new Thrower(group.fit().mean(), group.fit().draws(), Approach.CONSERVATIVE, List.of());
                int[] won = Objects.requireNonNullElse(duels.get(group.key().bag()), new int[2]);
                bags.add(new Bag(
                        group.name(),
                        group.key().face(),
                        Approaches.of(
                                thrower,
                                Thrower.known(group.fit().mean(), Approach.CONSERVATIVE),
                                GameRules.STANDARD,
                                SAMPLES),
                        won[0],
                        won[1]));
            }
        }
        return new Book(asked, playbook, bags, Strength.of(asked.matchup().me().tries()));
    }

    /** Duels against oneself, one approach against the other with the same bag set: by its id, won by either. */
    private static Map<String, int[]> duels(Records records, int player) {
        Map<String, int[]> duels = new LinkedHashMap<>();
        List<String> known = records.bags(player).stream().map(BagSet::id).toList();
        for (RunDetail detail : records.latest(player, Drill.DUEL, MOST_DUELS)) {
            Run run = detail.run();
            Contest contest = run.setup().contest();
            Approach first = run.setup().approach();
            Contest.Way other = contest == null ? null : contest.other();
            if (contest == null || other == null || first == null || other.approach() == null) {
                continue;
            }
            String bag = run.setup().bags().isEmpty() ? "" : run.setup().bags().get(0);
            boolean same = other.bag().equals(bag) && (bag.isEmpty() || known.contains(bag));
            Game.Result result = Games.after(run, detail.rounds()).result();
            if (same && first != other.approach() && contest.headStart() == 0 && result != Game.Result.OPEN) {
                boolean firstWon = result == Game.Result.WON;
                boolean bold = firstWon == (first == Approach.AGGRESSIVE);
                duels.computeIfAbsent(bag, key -> new int[2])[bold ? 1 : 0]++;
            }
        }
        return duels;
    }
}
