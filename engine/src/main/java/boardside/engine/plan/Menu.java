package boardside.engine.plan;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.Race;
import boardside.engine.odds.RaceAnswer;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.plan.Choice.Reachable;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Finish;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Word;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** All that a player can practise with what is at hand, and what each of it would bring. Constants: docs/plan.md. */
final class Menu {
    /** Bags of a hundred for which each shot is called, where no playbook says what it is worth; common practice, no source. */
    static final Map<Shot, Double> CALLED = Map.of(
            Shot.SLIDE, 0.20,
            Shot.BLOCK, 0.08,
            Shot.BACK_BLOCK, 0.03,
            Shot.PUSH, 0.10,
            Shot.CUT_LEFT, 0.04,
            Shot.CUT_RIGHT, 0.04,
            Shot.ROLL, 0.03,
            Shot.AIRMAIL, 0.06,
            Shot.DRAG, 0.04);

    private static final int MOST_TARGETS = 6;
    private static final int MOST_SHOTS = 6;

    private static final double TEN_IN_A_HUNDRED = 0.1;

    /** Fewer games in a hundred than this are told as none. */
    private static final double TOLD = 0.05;

    /** Something tried for less has not been tried. */
    private static final int FEW_TRIES = 20;

    private static final int LONG_AGO = 14;

    /** What is known of a skill before anything is: bags its uncertainty of one logit is worth. */
    private static final double PRIOR_BAGS = 8;

    /** Wins that knowing a skill to within a logit is worth, of what the logit itself is; chosen. */
    private static final double KNOWING = 0.01;

    /** What one refusal takes: all that a choice brings is less by the exponential of minus this; chosen. */
    private static final double REFUSAL = 0.5;

    /** What serves a goal counts so much more; chosen. */
    private static final double GOAL = 1.3;

    /** Minutes of the best other practice that doing what is due is worth; chosen. */
    private static final double TRIAL_MINUTES = 12;

    private static final double LEAGUE_MINUTES = 12;
    private static final double LADDER_MINUTES = 5;
    private static final double SLIDE_MINUTES = 5;

    /** Days after which a slide test has lost all but 1/e of its worth; chosen. */
    private static final double SLIDE_DAYS = 30;

    /** Narrow boards cost so many logits of bags kept where the player never threw at one; chosen. */
    private static final double NARROW_COST = 0.6;

    /** Logits lost when a game hangs on it, where no league or tournament tells; chosen. */
    private static final double LOST = 0.1;

    /** What can be won back however little seems to be lost: that is not known exactly. Chosen. */
    private static final double LOST_AT_LEAST = 0.03;

    /** A race is begun where there is time for this much of an average one; chosen. */
    private static final double MOST_OF_A_RACE = 0.7;

    /** A bag is worth this at least, so that somebody who misses nothing, or everything, gets a plan too. */
    private static final double LEAST = 1e-6;

    private static final double BEST = (Learning.EASIEST + Learning.HARDEST) / 2;

    private static final Reachable NOTHING = new Reachable.Nothing();

    private final Means means;
    private final PlayerState player;
    private final Gains gains;
    private final BoardKind board;
    private final BagChances here;
    private final double perFinish;
    private final double perControl;
    private final double perPressure;
    private final List<Choice> choices = new ArrayList<>();

    private Menu(Means means, PlayerState player) {
        this.means = means;
        this.player = player;
        this.gains = Gains.of(player);
        this.board = means.boards().contains(BoardKind.REGULATION) ? BoardKind.REGULATION : BoardKind.NARROW;
        this.here = board == BoardKind.REGULATION ? gains.bag() : narrow();
        this.perFinish = gains.finish() * brings(player.form().finish());
        this.perControl = gains.control() * brings(player.form().control());
        double lost = player.form()
                .stakes()
                .map(points -> Math.max(0, points.estimate()) / gains.pointsPerLogit())
                .orElse(LOST);
        this.perPressure = (gains.finish() + gains.control())
                * (LOST_AT_LEAST + lost)
                * Learning.closing(player.form().pressure().pace())
                * Learning.spacing(player.form().pressure().days(), gains.horizon());
    }

    /** The choices, in an order that depends on nothing but what was given. */
    static List<Choice> of(Means means, PlayerState player) {
        Menu menu = new Menu(means, player);
        menu.bagsIn();
        menu.pressure();
        menu.targets();
        menu.shots();
        menu.trial();
        menu.boards();
        return menu.choices;
    }

    /** Logits a fresh bag brings today. */
    private double brings(Ability ability) {
        return Learning.perBag(ability.bags(), ability.pace()) * Learning.spacing(ability.days(), gains.horizon());
    }

    private BagChances narrow() {
        BagChances bag = gains.bag();
        double kept = bag.in() + bag.on();
        double share = kept > 0 ? bag.in() / kept : 0;
        double less = player.form()
                .narrow()
                .map(cost -> Math.max(0, kept - Math.max(0, cost.estimate()) / (Finish.BAGS * (1 + 2 * share))))
                .orElseGet(() -> shifted(kept, -NARROW_COST));
        return new BagChances(less * share, less * (1 - share));
    }

    private static double shifted(double p, double logits) {
        double odds = p / Math.max(1e-9, 1 - p) * Math.exp(logits);
        return odds / (1 + odds);
    }

    // Bags in, bags kept.

    private void bagsIn() {
        Reason toIn = reason(true);
        Reason toOn = reason(false);
        int sets = Math.max(1, Math.min(means.bagSets(), player.habits().bags().size()));
        double half = Learning.challenge(here.in());
        add(new Draft(Theme.of(Theme.Kind.FINISH), Activity.VOLUME, "volume", board, toIn).with(draft -> {
            draft.bags = player.habits().bags().stream().limit(sets).toList();
            draft.bagsPerRound = Finish.BAGS * sets;
            draft.perBag = half * (perFinish + 0.5 * perControl);
            draft.target = new Reachable.Worked(here.in());
        }));
        add(new Draft(Theme.of(Theme.Kind.FINISH), Activity.TOTAL, "total:aggressive", board, toIn).with(draft -> {
            draft.approach = Approach.AGGRESSIVE;
            draft.perBag = 0.9 * perFinish + 0.7 * perControl;
            draft.target = new Reachable.Points(RoundDistribution.of(here));
        }));
        add(new Draft(Theme.of(Theme.Kind.CONTROL), Activity.TOTAL, "total:conservative", board, toOn).with(draft -> {
            draft.approach = Approach.CONSERVATIVE;
            draft.perBag = 0.4 * perFinish + perControl;
            draft.target = new Reachable.Points(RoundDistribution.of(here));
        }));
        if (board == BoardKind.REGULATION && means.boards().contains(BoardKind.NARROW)) {
            BagChances slim = narrow();
            add(new Draft(Theme.of(Theme.Kind.CONTROL), Activity.TOTAL, "total:narrow", BoardKind.NARROW, toOn)
                    .with(draft -> {
                        draft.perBag = Learning.challenge(slim.in() + slim.on()) * (0.4 * perFinish + 1.2 * perControl);
                        draft.target = new Reachable.Points(RoundDistribution.of(slim));
                    }));
        }
    }

    private Reason reason(boolean toIn) {
        if (!gains.known()) {
            return new Reason.FirstNumbers();
        }
        Rival chief = gains.chief();
        return new Reason.Worth(toIn, gains.wins(toIn), chief.name(), chief.ghost());
    }

    // Games that hang in the balance.

    private void pressure() {
        RoundDistribution mine = RoundDistribution.of(here);
        double whole = 0.5 * (perFinish + perControl) + perPressure;
        int even = even();
        race("race", Activity.RACE, even, whole, 0, balance(even));
        Optional<Due.Ladder> ladder = player.due().ladder();
        ladder.ifPresent(rung -> race(
                "climb",
                Activity.CLIMB,
                rung.rung(),
                whole,
                minutes(LADDER_MINUTES * -Math.expm1(-rung.days() / 7)),
                rung.days() < LONG_AGO / 2.0
                        ? balance(rung.rung())
                        : new Reason.Ladder(rung.rung(), (long) rung.days())));
        Rival chief = gains.chief();
        if (chief.games() > 0) {
            add(new Draft(
                            Theme.of(Theme.Kind.PRESSURE),
                            Activity.TOTAL,
                            "rehearsal",
                            board,
                            new Reason.LeagueNight(chief.name(), (long) chief.days()))
                    .with(draft -> {
                        // A game of the match at a time.
                        draft.bagsPerRound = Finish.BAGS;
                        draft.perBag = whole;
                        draft.due = minutes(LEAGUE_MINUTES * Math.exp(-chief.days() / 3));
                        draft.target = new Reachable.Points(mine);
                        draft.once = true;
                    }));
        }
        if (means.company()) {
            Reason why = player.form().stakes().<Reason>map(Reason.Stakes::new).orElse(balance(even));
            add(new Draft(Theme.of(Theme.Kind.PRESSURE), Activity.DUEL, "duel", board, why).with(draft -> {
                draft.shortest = shortest(Activity.DUEL, even);
                draft.perBag = whole + 0.2 * perPressure;
            }));
        }
    }

    /** The ghost that is beaten nearest to 58 times in 100: a better ghost is beaten less often. */
    private int even() {
        int easy = 0;
        int hard = RoundDistribution.MOST;
        while (hard - easy > 1) {
            int middle = (easy + hard) / 2;
            if (win(here, middle) >= BEST) {
                easy = middle;
            } else {
                hard = middle;
            }
        }
        return off(win(here, hard)) < off(win(here, easy)) ? hard : easy;
    }

    private void race(String id, Activity activity, int points, double brings, double dueNow, Reason why) {
        add(new Draft(Theme.of(Theme.Kind.PRESSURE), activity, id, board, why).with(draft -> {
            draft.ghost = points;
            draft.shortest = shortest(activity, points);
            draft.perBag = Learning.challenge(win(here, points)) * brings;
            draft.due = dueNow;
        }));
    }

    private static double off(double win) {
        return Math.abs(win - BEST);
    }

    private static double win(BagChances bag, int ghost) {
        return Race.solve(GameRules.STANDARD, RoundDistribution.of(bag), RoundDistribution.ghost(ghost))
                .winOrHalf(0, 0, true);
    }

    /** Minutes in which most of a race is thrown: shorter ones are not begun. A block holds as many as there is time for. */
    private int shortest(Activity activity, int ghost) {
        RaceAnswer answer = Race.solve(GameRules.STANDARD, RoundDistribution.of(here), RoundDistribution.ghost(ghost))
                .fromStart();
        double rounds = answer instanceof RaceAnswer.Ends ends ? ends.expectedRounds() : 20;
        double minutes = MOST_OF_A_RACE * rounds * Finish.BAGS / player.habits().pace(activity, 1);
        return (int) Math.max(Means.LEAST_MINUTES, Math.min(Choice.LONGEST, Choice.CHANGE_OVER + Math.ceil(minutes)));
    }

    private Reason balance(int ghost) {
        if (!gains.known()) {
            return new Reason.FirstNumbers();
        }
        return new Reason.Balance(gains.range().of(bag -> win(bag, ghost)));
    }

    // Bags put where they are called, and shots.

    private void targets() {
        List<Tried> all = new ArrayList<>(player.targets());
        if (all.isEmpty()) {
            String front = new Target(Depth.TWO, Lane.MIDDLE).text();
            all.add(new Tried(front, Shot.BLOCK.word(), front, board, new Interval(0.3, 0.08, 0.65), 0, Ability.NEVER));
        }
        all.stream()
                .filter(tried -> means.boards().contains(tried.board()))
                .map(tried -> tried(tried, Theme.of(Theme.Kind.PLACEMENT), Activity.PLACEMENT))
                .sorted(Comparator.comparingDouble(draft -> -draft.perBag))
                .limit(MOST_TARGETS)
                .forEach(this::add);
    }

    private void shots() {
        player.shots().stream()
                .filter(tried -> means.boards().contains(tried.board()))
                .map(tried -> tried(tried, Theme.shot(tried.shot()), Activity.SITUATION))
                .sorted(Comparator.comparingDouble(draft -> -draft.perBag))
                .limit(MOST_SHOTS)
                .forEach(this::add);
    }

    private Draft tried(Tried tried, Theme theme, Activity activity) {
        double rate = tried.rate().estimate();
        Shot shot = Word.of(Shot.class, tried.shot());
        Optional<Interval> worth = worth(shot);
        double every = worth.map(wins -> wins.estimate() / TEN_IN_A_HUNDRED)
                .orElseGet(() -> CALLED.getOrDefault(shot, 0.03) * gains.everyBag());
        double logit = every * rate * (1 - rate);
        Reason why = worth.filter(wins -> wins.estimate() >= TOLD)
                .<Reason>map(wins -> new Reason.ShotWorth(shot, wins, tried.rate(), tried.tries()))
                .orElseGet(() -> without(tried));
        double own = Learning.challenge(rate) * logit * brings(tried.ability());
        double transfer = theme.kind() == Theme.Kind.PLACEMENT ? 0.3 * perControl : 0;
        return new Draft(theme, activity, activity.word() + ":" + tried.id(), tried.board(), why).with(draft -> {
            draft.aim = tried.aim();
            draft.perBag = own + transfer;
            draft.knowing = KNOWING * logit * tried.ability().uncertainty();
            draft.known = PRIOR_BAGS + tried.tries();
            draft.target = new Reachable.Worked(rate);
        });
    }

    /** What a playbook says of a shot; empty where there is no playbook. */
    private Optional<Interval> worth(Shot shot) {
        return player.worths().isEmpty()
                ? Optional.empty()
                : Optional.of(player.worths().getOrDefault(shot, new Interval(0, 0, 0)));
    }

    /** Why something is tried where no playbook gives a reason. */
    private static Reason without(Tried tried) {
        double days = tried.ability().days();
        return tried.tries() < FEW_TRIES
                ? new Reason.Unsure(tried.tries())
                : days >= LONG_AGO ? new Reason.Neglected((long) days) : new Reason.RightlyHard(tried.rate());
    }

    // What is due.

    /** What so many minutes of the best practice of bags in and kept would bring. */
    private double minutes(double minutes) {
        return minutes * player.habits().pace(Activity.TOTAL, 1) * 0.7 * (perFinish + perControl);
    }

    private void trial() {
        player.due()
                .trial()
                .filter(trial ->
                        trial.bags().size() <= means.bagSets() && means.boards().contains(trial.board()))
                .ifPresent(trial -> add(new Draft(
                                Theme.of(Theme.Kind.TRIAL),
                                Activity.TRIAL,
                                Activity.TRIAL.word() + ":" + trial.id(),
                                trial.board(),
                                new Reason.TrialOpen(trial.name(), trial.blocksLeft()))
                        .with(draft -> {
                            draft.bags = trial.bags();
                            draft.bagsPerRound = Finish.BAGS * trial.roundsPerBlock();
                            draft.perBag = 0.6 * (perFinish + perControl);
                            draft.due = minutes(TRIAL_MINUTES);
                            draft.once = true;
                        })));
    }

    private void boards() {
        Due.Boards boards = player.due().boards();
        boolean never = Double.isInfinite(boards.days());
        Reason why = boards.changed()
                ? new Reason.BoardsChanged()
                : new Reason.BoardsUnknown(never ? -1 : (long) boards.days());
        double stale = boards.changed() ? 1 : -Math.expm1(-Math.min(boards.days(), 1e6) / SLIDE_DAYS);
        add(new Draft(Theme.of(Theme.Kind.BOARDS), Activity.SLIDE, "slide", board, why).with(draft -> {
            draft.longest = 6;
            draft.once = true;
            draft.due = minutes(SLIDE_MINUTES * stale) * (gains.horizon() <= 2 ? 2 : 1) / (never ? 2 : 1);
        }));
    }

    /** A choice in the making: a block of rounds of four with the player's usual bags. */
    private static final class Draft {
        final Theme theme;
        final Activity activity;
        final String id;
        final BoardKind on;
        final Reason reason;
        List<String> bags = List.of();

        @Nullable
        Approach approach;

        @Nullable
        Integer ghost;

        String aim = "";
        int bagsPerRound = Finish.BAGS;
        int shortest = Means.LEAST_MINUTES;
        int longest = Choice.LONGEST;
        boolean once;
        double perBag;
        double due;
        double knowing;
        double known;
        Reachable target = NOTHING;

        Draft(Theme theme, Activity activity, String id, BoardKind on, Reason reason) {
            this.theme = theme;
            this.activity = activity;
            this.id = id;
            this.on = on;
            this.reason = reason;
        }

        Draft with(Consumer<Draft> changes) {
            changes.accept(this);
            return this;
        }
    }

    private void add(Draft draft) {
        boolean serves = player.goals().contains(draft.theme.kind());
        double weight =
                Math.exp(-REFUSAL * player.habits().refused().getOrDefault(draft.id, 0.0)) * (serves ? GOAL : 1);
        int sets = draft.activity == Activity.VOLUME ? draft.bagsPerRound / Finish.BAGS : 1;
        choices.add(new Choice(
                draft.id,
                draft.theme,
                draft.activity,
                draft.bags.isEmpty() ? player.habits().bags().stream().limit(1).toList() : draft.bags,
                draft.approach,
                draft.on,
                draft.ghost,
                draft.aim,
                player.habits().pace(draft.activity, sets),
                draft.bagsPerRound,
                draft.shortest,
                draft.longest,
                draft.once,
                weight * Math.max(LEAST, draft.perBag),
                weight * draft.due,
                weight * draft.knowing,
                draft.known,
                draft.target,
                draft.reason,
                serves));
    }

    // What frames the work.

    static Block warmUp(PlayerState player, int work) {
        return frame(
                Activity.WARM_UP,
                Objective.WARM_UP,
                Objective.WARM_UP_BAGS,
                player.habits().bags().stream().limit(1).toList(),
                new Reason.WarmUp(work));
    }

    static Block rest(int bout) {
        return frame(Activity.BREAK, Objective.BREAK, 0, List.of(), new Reason.Rest(bout));
    }

    private static Block frame(Activity activity, int minutes, int bags, List<String> sets, Reason reason) {
        return new Block(
                activity.word(),
                activity,
                minutes,
                bags,
                bags / Finish.BAGS,
                sets,
                null,
                null,
                null,
                null,
                "",
                reason,
                false);
    }
}
