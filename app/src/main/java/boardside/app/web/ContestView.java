package boardside.app.web;

import boardside.app.practice.Contest;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.record.Opponents;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.Drill;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Skill;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The part of the start form that asks for the two sides of a duel or a game. */
public final class ContestView {
    private static final int MOST_HEAD_STARTS = 4;

    private final Web web;

    ContestView(Web web) {
        this.web = web;
    }

    /**
     * What it shows.
     *
     * @param duel whether it is a duel; else a real game
     * @param now as last set up
     * @param other how the player's second side throws, as a set-up
     * @param opponent who is played, or empty
     * @param names who may be played
     * @param headStarts what would be fair with some of them, in sentences
     */
    public record View(
            boolean duel, Contest now, Setup other, String opponent, List<String> names, List<String> headStarts) {
        public boolean isOtherBag(String bag) {
            Contest.Way way = now.other();
            return bag.equals(way == null ? "" : way.bag());
        }

        public boolean swaps() {
            return now.firstThrow() == FirstThrow.SWAP;
        }
    }

    View view(Player player, Drill drill, Setup setup, String opponent) {
        Contest now = setup.contest();
        if (now == null) {
            throw new IllegalArgumentException("a " + drill.word() + " without its sides");
        }
        Contest.Way way = now.other();
        Setup other = setup.with(draft -> {
            draft.face = way == null ? null : way.face();
            draft.approach = way == null ? null : way.approach();
        });
        Set<String> names = new LinkedHashSet<>(web.records().opponents(player.id()));
        web.records().household(player.id()).stream()
                .filter(each -> each.id() != player.id())
                .map(Player::name)
                .forEach(names::add);
        boolean duel = drill == Drill.DUEL;
        return new View(duel, now, other, opponent, List.copyOf(names), duel ? headStarts(player, names) : List.of());
    }

    private Skill skill(Player player) {
        return web.skills().skill(player.id(), web.today());
    }

    private Optional<RoundDistribution> rounds(Player player, String opponent) {
        return Opponents.named(web.records(), player, opponent, this::skill);
    }

    private List<String> headStarts(Player player, Set<String> names) {
        Optional<ChanceRange> mine = skill(player).chances();
        List<String> said = new ArrayList<>();
        for (String name : names) {
            if (mine.isPresent() && said.size() < MOST_HEAD_STARTS) {
                rounds(player, name).ifPresent(theirs -> said.add(said(mine.get(), name, theirs)));
            }
        }
        return said;
    }

    private String said(ChanceRange mine, String name, RoundDistribution theirs) {
        List<HeadStart> starts = List.of(mine.likely(), mine.low(), mine.high()).stream()
                .map(bag -> HeadStart.of(Race.solve(GameRules.STANDARD, RoundDistribution.of(bag), theirs)))
                .toList();
        int least = starts.stream().mapToInt(ContestView::forThem).min().orElseThrow();
        int most = starts.stream().mapToInt(ContestView::forThem).max().orElseThrow();
        return web.texts()
                .of(
                        "start.fair.said",
                        name,
                        points(forThem(starts.get(0)), name),
                        points(least, name),
                        points(most, name));
    }

    private static int forThem(HeadStart start) {
        return start.to() == Side.ME ? -start.points() : start.points();
    }

    private String points(int forThem, String name) {
        if (forThem == 0) {
            return web.texts().of("odds.head-start.none");
        }
        return web.texts()
                .of(
                        "odds.head-start.points",
                        Math.abs(forThem),
                        forThem > 0 ? name : web.texts().of("odds.head-start.you"));
    }

    /** The set-up with the head start that brings the game nearest to even; where it cannot be known, a fault says so. */
    Setup fair(Player player, String opponent, Setup setup, StartForm form) {
        Contest now = setup.contest();
        Optional<ChanceRange> mine = skill(player).chances();
        Optional<RoundDistribution> theirs = opponent.isEmpty() ? Optional.empty() : rounds(player, opponent);
        GameRules rules = GameRules.STANDARD.withTarget(setup.target() == null ? 21 : setup.target());
        if (now == null || mine.isEmpty() || theirs.isEmpty() || setup.exact()) {
            form.fault(
                    setup.exact() ? "start.fault.fair.exact" : "start.fault.fair",
                    mine.isEmpty() || opponent.isEmpty() ? web.texts().of("start.fault.fair.somebody") : opponent,
                    Opponents.LEAST_ROUNDS);
            return setup;
        }
        HeadStart start =
                HeadStart.of(Race.solve(rules, RoundDistribution.of(mine.get().likely()), theirs.get()));
        return setup.with(draft -> draft.contest = new Contest(
                now.alone(), now.theirs(), now.doubles(), now.first(), now.firstThrow(), -forThem(start), now.other()));
    }
}
