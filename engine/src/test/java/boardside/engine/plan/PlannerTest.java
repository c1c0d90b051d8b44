package boardside.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.odds.BagChances;
import boardside.engine.plan.Choice.Reachable;
import boardside.engine.plan.Objective.Visit;
import boardside.engine.rules.BoardKind;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Shot;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PlannerTest {
    /** A rule of the issue: plans fit minutes and equipment on 10,000 random cases. */
    @Test
    void fitsMinutesBagsAndBoards() {
        for (int seed = 0; seed < 10_000; seed++) {
            Random random = new Random(seed);
            Means means = Made.means(random);
            PlayerState player = Made.player(random);
            Plan plan = Planner.plan(means, player);
            String which = "seed " + seed + ": " + means;
            assertThat(plan.minutes()).as(which).isLessThanOrEqualTo(means.minutes());
            assertThat(plan.throwsPlanned())
                    .as(which)
                    .isLessThanOrEqualTo(player.habits().mostBags(means.energy()));
            for (Block block : plan.blocks()) {
                assertThat(block.bags().size()).as(which).isLessThanOrEqualTo(means.bagSets());
                assertThat(block.board() == null || means.boards().contains(block.board()))
                        .as(which)
                        .isTrue();
                assertThat(means.company() || block.activity() != Activity.DUEL)
                        .as(which)
                        .isTrue();
                if (block.work()) {
                    double pace = player.habits()
                            .pace(block.activity(), Math.max(1, block.bags().size()));
                    assertThat(block.throwsPlanned()).as(which).isPositive().isLessThanOrEqualTo((int)
                            Math.ceil((block.minutes() - 1) * pace));
                    assertThat(player.habits().bags().containsAll(block.bags()) || block.activity() == Activity.TRIAL)
                            .as(which)
                            .isTrue();
                }
            }
            checkOrder(which, means, plan);
        }
    }

    private static void checkOrder(String which, Means means, Plan plan) {
        List<Block> blocks = plan.blocks();
        List<Block> work = blocks.stream().filter(Block::work).toList();
        for (int i = 0; i < blocks.size(); i++) {
            Activity activity = blocks.get(i).activity();
            assertThat(activity != Activity.WARM_UP || i == 0).as(which).isTrue();
            if (activity == Activity.BREAK) {
                assertThat(i > 0
                                && i < blocks.size() - 1
                                && blocks.get(i - 1).work()
                                && blocks.get(i + 1).work())
                        .as(which)
                        .isTrue();
            }
        }
        Map<String, Integer> times = new HashMap<>();
        for (int i = 0; i < work.size(); i++) {
            times.merge(work.get(i).choice(), 1, Integer::sum);
            if (i > 0) {
                assertThat(work.get(i).choice())
                        .as(which)
                        .isNotEqualTo(work.get(i - 1).choice());
            }
        }
        assertThat(times.values()).as(which).allMatch(number -> number <= 2);
        boolean pressed = work.stream().anyMatch(PlannerTest::pressure);
        if (pressed) {
            assertThat(pressure(work.get(work.size() - 1))).as(which).isTrue();
        }
        assertThat(work).as(which).hasSizeLessThanOrEqualTo(15);
    }

    private static boolean pressure(Block block) {
        return Set.of("race", "climb", "rehearsal", "duel").contains(block.choice());
    }

    /** Where bags are no limit, the minutes are filled but for those in which no round more could be thrown. */
    @Test
    void fillsTheMinutes() {
        PlayerState player = seasoned(Habits.NONE);
        for (int minutes = 5; minutes <= 90; minutes++) {
            Plan plan = Planner.plan(means(minutes), player);
            assertThat(plan.minutes()).as(minutes + " minutes").isBetween(minutes - 2, minutes);
            assertThat(plan.limited()).isFalse();
        }
    }

    @Test
    void eightMinutesGiveOneGoodBlock() {
        Plan plan = Planner.plan(means(8), seasoned(Habits.NONE));
        assertThat(plan.blocks()).hasSize(1);
        assertThat(plan.blocks().get(0).minutes()).isEqualTo(8);
        assertThat(plan.blocks().get(0).work()).isTrue();
    }

    @Test
    void twoHoursWarmUpMixRestAndCloseUnderPressure() {
        Plan plan = Planner.plan(means(120), seasoned(Habits.NONE));
        List<Block> blocks = plan.blocks();
        assertThat(blocks.get(0).activity()).isEqualTo(Activity.WARM_UP);
        assertThat(blocks).anyMatch(block -> block.activity() == Activity.BREAK);
        assertThat(pressure(blocks.get(blocks.size() - 1))).isTrue();
        assertThat(blocks.stream()
                        .filter(Block::work)
                        .map(Block::choice)
                        .distinct()
                        .count())
                .isGreaterThanOrEqualTo(4);
    }

    @Test
    void tiredPlayersRestMoreAndThrowLess() {
        PlayerState player = seasoned(Habits.NONE);
        Plan low = Planner.plan(new Means(100, Energy.LOW, 2, Set.of(BoardKind.REGULATION), false), player);
        Plan high = Planner.plan(new Means(100, Energy.HIGH, 2, Set.of(BoardKind.REGULATION), false), player);
        assertThat(low.throwsPlanned()).isLessThan(high.throwsPlanned()).isLessThanOrEqualTo(250);
    }

    @Test
    void aWeekThatHasRisenSharplyLeavesALightDay() {
        Habits tired = new Habits(List.of("Blue"), Map.of(), Map.of(), 300, 0);
        Plan plan = Planner.plan(means(60), seasoned(tired));
        assertThat(plan.throwsPlanned()).isLessThanOrEqualTo(120);
        assertThat(plan.limited()).isTrue();
    }

    @Test
    void whatIsRefusedComesLess() {
        Plan first = Planner.plan(means(8), seasoned(Habits.NONE));
        String chosen = first.blocks().get(0).choice();
        Habits refusing = new Habits(List.of(), Map.of(), Map.of(chosen, 3.0), 0, Double.POSITIVE_INFINITY);
        assertThat(Planner.plan(means(8), seasoned(refusing)).blocks().get(0).choice())
                .isNotEqualTo(chosen);
    }

    @Test
    void theSameAnswerEachTime() {
        for (int seed = 0; seed < 50; seed++) {
            Means means = Made.means(new Random(seed));
            assertThat(Planner.plan(means, Made.player(new Random(seed))))
                    .isEqualTo(Planner.plan(means, Made.player(new Random(seed))));
        }
    }

    @Test
    void meansAreChecked() {
        assertThatThrownBy(() -> new Means(3, Energy.LOW, 1, Set.of(BoardKind.NARROW), false))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("minutes: a session takes 5 to 240 minutes, not 3");
        assertThat(Means.faults(300, 0, Set.of()))
                .containsExactly(
                        "minutes: a session takes 5 to 240 minutes, not 300; plan a longer day in parts",
                        "bag-sets: at hand are 1 to 25 bag sets, not 0",
                        "boards: name at least one of regulation, narrow");
    }

    private static Means means(int minutes) {
        return new Means(minutes, Energy.NORMAL, 2, Set.of(BoardKind.REGULATION), false);
    }

    /** Somebody who has thrown thousands of bags, for whom everything is known. */
    static PlayerState seasoned(Habits habits) {
        BagChances bag = new BagChances(0.45, 0.38);
        Ability ability = new Ability(6000, 2, 0.1, 1);
        return new PlayerState(
                new PlayerState.Form(
                        Optional.of(new ChanceRange(bag, new BagChances(0.42, 0.38), new BagChances(0.48, 0.38))),
                        ability,
                        ability,
                        ability,
                        Optional.empty(),
                        Optional.empty()),
                List.of(Rival.ghost(6)),
                List.of(),
                List.of(),
                Due.NOTHING,
                habits,
                Set.of(),
                Map.of());
    }

    /** A slide test is due where the boards were long not measured, and at once where they play otherwise. */
    @Test
    void boardsThatPlayOtherwiseAreMeasured() {
        assertThat(boardsDue(new Due.Boards(0, false))).isEmpty();
        assertThat(boardsDue(new Due.Boards(90, false))).contains(new Reason.BoardsUnknown(90));
        assertThat(boardsDue(new Due.Boards(1, true))).contains(new Reason.BoardsChanged());
    }

    private static List<Reason> boardsDue(Due.Boards boards) {
        PlayerState player = seasoned(Habits.NONE);
        Due due = new Due(Optional.empty(), Optional.empty(), boards);
        PlayerState state = new PlayerState(
                player.form(),
                player.rivals(),
                player.targets(),
                player.shots(),
                due,
                player.habits(),
                player.goals(),
                player.worths());
        return Planner.plan(means(45), state).blocks().stream()
                .filter(block -> block.activity() == Activity.SLIDE)
                .map(Block::reason)
                .toList();
    }

    /** What a playbook says of shots moves the plan, and the plan says why; without one it goes on as it did. */
    @Test
    void aShotIsPractisedForWhatThePlaybookSaysItIsWorth() {
        Interval half = new Interval(0.5, 0.4, 0.6);
        Ability ability = new Ability(100, 5, 0.2, 1);
        PlayerState player = seasoned(Habits.NONE);
        PlayerState tries = new PlayerState(
                player.form(),
                player.rivals(),
                List.of(),
                List.of(
                        new Tried("push:gate", "push", "push, gate", BoardKind.REGULATION, half, 100, ability),
                        new Tried(
                                "airmail:gate", "airmail", "airmail, gate", BoardKind.REGULATION, half, 100, ability)),
                player.due(),
                player.habits(),
                player.goals(),
                Map.of());
        assertThat(reasons(tries)).noneMatch(reason -> reason instanceof Reason.ShotWorth);
        Interval wins = new Interval(4, 2.5, 6);
        PlayerState airmail = tries.withWorths(Map.of(Shot.AIRMAIL, wins));
        assertThat(shots(airmail)).containsOnly("situation:airmail:gate");
        assertThat(reasons(airmail)).contains(new Reason.ShotWorth(Shot.AIRMAIL, wins, half, 100));
        assertThat(shots(tries.withWorths(Map.of(Shot.PUSH, wins)))).containsOnly("situation:push:gate");
        // Worth nothing, neither is practised.
        assertThat(shots(tries.withWorths(Map.of(Shot.SLIDE, wins)))).isEmpty();
    }

    /** The playbook's ten in a hundred against the share of bags a shot is called for: the same worth, the same plan. */
    @Test
    void worthsAreGamesInAHundredForTenTimesMoreInAHundred() {
        PlayerState player = Made.player(new Random(3));
        double every = Gains.of(player).everyBag();
        Map<Shot, Interval> same = new HashMap<>();
        for (Shot shot : Shot.values()) {
            double wins = Menu.CALLED.getOrDefault(shot, 0.0) * every / 10;
            same.put(shot, new Interval(wins, wins, wins));
        }
        Means means = new Means(120, Energy.HIGH, 4, Set.of(BoardKind.REGULATION, BoardKind.NARROW), true);
        List<Choice> without = Menu.of(means, player.withWorths(Map.of()));
        List<Choice> with = Menu.of(means, player.withWorths(same));
        assertThat(with).hasSameSizeAs(without).hasSizeGreaterThan(5);
        for (int i = 0; i < with.size(); i++) {
            assertThat(with.get(i).id()).isEqualTo(without.get(i).id());
            assertThat(with.get(i).perBag()).isCloseTo(without.get(i).perBag(), within(1e-12));
        }
    }

    private static List<Reason> reasons(PlayerState player) {
        return Planner.plan(means(120), player).blocks().stream()
                .map(Block::reason)
                .toList();
    }

    private static List<String> shots(PlayerState player) {
        return Planner.plan(means(120), player).blocks().stream()
                .filter(block -> block.activity() == Activity.SITUATION)
                .map(Block::choice)
                .toList();
    }

    // Held against every session there is.

    @Test
    void nothingIsWorthMoreThanWhatTheSolverFinds() {
        int tight = 0;
        for (int seed = 0; seed < 120; seed++) {
            Random random = new Random(seed);
            List<Choice> choices = choices(random);
            Means means = new Means(
                    5 + random.nextInt(12), Energy.values()[random.nextInt(3)], 4, Set.of(BoardKind.REGULATION), false);
            int mostBags = random.nextBoolean() ? 1000 : 4 * random.nextInt(20);
            tight += mostBags < 100 ? 1 : 0;
            Planner.Session session = Planner.solve(means, choices, mostBags);
            Brute brute = new Brute(means, choices, mostBags);
            brute.extend(new ArrayList<>(), 0);
            assertThat(session.value()).as("seed %s", seed).isCloseTo(brute.best, within(1e-12));
            assertThat(brute.valid(session.visits())).as("seed %s", seed).isTrue();
            assertThat(session.bags()).isLessThanOrEqualTo(mostBags);
        }
        assertThat(tight).isPositive();
    }

    @Test
    void anHourClosesUnderPressureEvenWhereItIsWorthLess() {
        List<Choice> choices = List.of(
                choice("a", Theme.Kind.FINISH, 1, 5, 20, new Random(1)),
                choice("b", Theme.Kind.CONTROL, 1, 5, 20, new Random(2)),
                choice("c", Theme.Kind.PLACEMENT, 1, 5, 20, new Random(2)),
                choice("p", Theme.Kind.PRESSURE, 1e-5, 5, 20, new Random(3)));
        List<Visit> visits = Planner.solve(means(60), choices, 10_000).visits();
        assertThat(visits.get(visits.size() - 1).choice().id()).isEqualTo("p");
    }

    private static List<Choice> choices(Random random) {
        List<Choice> choices = new ArrayList<>();
        Theme.Kind[] kinds = {Theme.Kind.FINISH, Theme.Kind.PRESSURE, Theme.Kind.CONTROL};
        int number = 2 + random.nextInt(3);
        for (int i = 0; i < number; i++) {
            int shortest = 2 + random.nextInt(4);
            choices.add(choice(
                    "c" + i,
                    kinds[random.nextInt(kinds.length)],
                    0.01 * random.nextDouble(),
                    shortest,
                    shortest + random.nextInt(3),
                    random));
        }
        return choices;
    }

    private static Choice choice(String id, Theme.Kind kind, double perBag, int shortest, int longest, Random random) {
        return new Choice(
                id,
                Theme.of(kind),
                Activity.TOTAL,
                List.of(),
                null,
                BoardKind.REGULATION,
                null,
                "",
                4 + 4 * random.nextDouble(),
                4,
                shortest,
                longest,
                random.nextInt(4) == 0,
                perBag,
                random.nextInt(3) == 0 ? 0.1 * random.nextDouble() : 0,
                0.1 * random.nextDouble(),
                random.nextInt(100),
                new Reachable.Nothing(),
                new Reason.FirstNumbers(),
                false);
    }

    /** Every sequence of visits, with and without warm-up, with any number of breaks; rules told anew from their words. */
    private static final class Brute {
        private final Means means;
        private final List<Choice> choices;
        private final int mostBags;
        double best;

        Brute(Means means, List<Choice> choices, int mostBags) {
            this.means = means;
            this.choices = choices;
            this.mostBags = mostBags;
        }

        void extend(List<Visit> sequence, int minutes) {
            look(sequence, minutes);
            for (Choice choice : choices) {
                int shortest = Math.min(
                        Math.max(choice.shortest(), (int) Math.ceil(means.minutes() / 12.0)), choice.longest());
                for (int length = shortest; length <= choice.longest(); length++) {
                    if (minutes + length <= means.minutes() && choice.rounds(length) > 0) {
                        sequence.add(new Visit(choice, length));
                        extend(sequence, minutes + length);
                        sequence.remove(sequence.size() - 1);
                    }
                }
            }
        }

        boolean valid(List<Visit> sequence) {
            boolean pressure = false;
            for (int i = 0; i < sequence.size(); i++) {
                Choice choice = sequence.get(i).choice();
                pressure |= choice.theme().kind() == Theme.Kind.PRESSURE;
                if (i > 0 && sequence.get(i - 1).choice().theme().equals(choice.theme())) {
                    return false;
                }
                List<Visit> same = sequence.stream()
                        .filter(visit -> visit.choice().theme().equals(choice.theme()))
                        .toList();
                if (same.size() > 2
                        || same.size() == 2
                                && (Math.abs(same.get(0).minutes() - same.get(1).minutes()) > 1
                                        || choice.once()
                                                && same.get(0)
                                                        .choice()
                                                        .equals(same.get(1).choice()))) {
                    return false;
                }
            }
            return !pressure
                    || sequence.get(sequence.size() - 1).choice().theme().kind() == Theme.Kind.PRESSURE;
        }

        private void look(List<Visit> sequence, int work) {
            if (sequence.isEmpty() || !valid(sequence)) {
                return;
            }
            Map<Theme, List<Visit>> themes = new HashMap<>();
            sequence.forEach(visit -> themes.computeIfAbsent(visit.choice().theme(), key -> new ArrayList<>())
                    .add(visit));
            double sum = 0;
            for (List<Visit> theme : themes.values()) {
                List<Visit> sorted = new ArrayList<>(theme);
                sorted.sort(Collections.reverseOrder((one, other) -> Integer.compare(one.minutes(), other.minutes())));
                sum += Objective.theme(sorted);
            }
            int bags = sequence.stream().mapToInt(Visit::bags).sum();
            for (int breaks = 0; breaks < sequence.size() && breaks <= work / 25; breaks++) {
                for (boolean warm : new boolean[] {false, true}) {
                    if (work + 5 * breaks + (warm ? 4 : 0) <= means.minutes() && bags + (warm ? 12 : 0) <= mostBags) {
                        best = Math.max(best, Objective.session(sum, work, breaks, warm, means.energy()));
                    }
                }
            }
        }
    }
}
