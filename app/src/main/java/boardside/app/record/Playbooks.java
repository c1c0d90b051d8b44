package boardside.app.record;

import boardside.app.practice.Contest;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.engine.rules.Approach;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
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
     * @param careful duels against oneself that conservative won against aggressive, with this face of this bag set on both sides
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

    /** What to play and what each shot is worth, without the rest of the book; takes seconds. */
    public static Playbook worked(Records records, Player player, LocalDate today) {
        return worked(Advising.of(records, player.id(), today, null, null, null, null, null, null), player);
    }

    private static Playbook worked(Advising.Asked asked, Player player) {
        return Playbook.of(asked.matchup(), player.throwsFrom() == Player.Hand.RIGHT, SAMPLES, SEED);
    }

    /** Works it out; takes seconds. */
    public static Book of(Records records, Player player, LocalDate today) {
        Advising.Asked asked = Advising.of(records, player.id(), today, null, null, null, null, null, null);
        Playbook playbook = worked(asked, player);
        Map<Throws.Key, int[]> duels = duels(records, player.id());
        List<Bag> bags = new ArrayList<>();
        for (Throws.Group group : Throws.of(records, player.id(), today).groups()) {
            boolean thrown = group.bags() > 0;
            if (bags.size() < MOST_BAGS && (thrown || bags.isEmpty())) {
                Thrower thrower =
                        Thrower.believed(group.fit().mean(), group.fit().draws(), Approach.CONSERVATIVE, List.of());
                int[] won = Objects.requireNonNullElse(duels.get(group.key()), new int[2]);
                bags.add(new Bag(
                        group.name(),
                        group.key().face(),
                        Approaches.of(
                                thrower,
                                Thrower.known(thrower.usual(), Approach.CONSERVATIVE),
                                GameRules.STANDARD,
                                SAMPLES),
                        won[0],
                        won[1]));
            }
        }
        return new Book(asked, playbook, bags, Strength.of(asked.matchup().me().tries()));
    }

    /** Duels against oneself, one approach against the other with the same face of a bag set: won by either. */
    static Map<Throws.Key, int[]> duels(Records records, int player) {
        Map<Throws.Key, int[]> duels = new LinkedHashMap<>();
        for (RunDetail detail : records.latest(player, Drill.DUEL, MOST_DUELS)) {
            Run run = detail.run();
            Contest.Way first = way(detail.rounds(), Side.A);
            Contest.Way second = way(detail.rounds(), Side.B);
            Game.Result result = Games.after(run, detail.rounds()).result();
            Contest contest = run.setup().contest();
            boolean even = contest == null || contest.headStart() == 0;
            if (first != null && second != null && even && result != Game.Result.OPEN && met(first, second)) {
                boolean bold = (result == Game.Result.WON) == (first.approach() == Approach.AGGRESSIVE);
                duels.computeIfAbsent(new Throws.Key(first.bag(), first.face()), key -> new int[2])[bold ? 1 : 0]++;
            }
        }
        return duels;
    }

    /** Whether two sides differ in their approach and in nothing else. */
    private static boolean met(Contest.Way first, Contest.Way second) {
        return first.bag().equals(second.bag())
                && first.face() == second.face()
                && first.approach() != null
                && second.approach() != null
                && first.approach() != second.approach();
    }

    /** How a side threw throughout; null where it changed, or did not throw. */
    private static Contest.@Nullable Way way(List<Round> rounds, Side side) {
        List<Contest.Way> ways = rounds.stream()
                .filter(round -> round.side() == side)
                .flatMap(round -> round.lines().stream())
                .map(line -> new Contest.Way(line.bag(), line.face(), line.approach()))
                .distinct()
                .toList();
        return ways.size() == 1 ? ways.get(0) : null;
    }
}
