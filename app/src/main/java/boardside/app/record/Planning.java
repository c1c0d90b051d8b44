package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.DayBags;
import boardside.app.practice.Exercise;
import boardside.app.practice.Fixture;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.Moment;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.SlideTest;
import boardside.app.practice.TrialPlan;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Level;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.TypicalPlayer;
import boardside.engine.physics.Range;
import boardside.engine.plan.Ability;
import boardside.engine.plan.Activity;
import boardside.engine.plan.Due;
import boardside.engine.plan.Habits;
import boardside.engine.plan.PlayerState;
import boardside.engine.plan.Rival;
import boardside.engine.plan.Theme;
import boardside.engine.plan.Tried;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Setting;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Interval;
import boardside.engine.skill.NarrowAnswer.Narrow;
import boardside.engine.skill.Skill;
import boardside.engine.skill.StakesAnswer.Stakes;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.advice.Playbook;
import boardside.engine.trial.TrialDesign;
import boardside.engine.trial.TrialState;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a plan goes by, out of a player's records. Takes as long as a fit of the skill model; not for a request. */
public final class Planning {
    /** Days over which it is told how fast form has been coming. */
    private static final int LEARNING_DAYS = 90;

    /** League matches farther ahead do not count yet. */
    private static final int LEAGUE_DAYS = 14;

    /** Runs of a drill that tell a pace. */
    private static final int PACED = 10;

    /** Slower or faster than this, in bags a minute, the clock of a run did not tell its throwing. */
    private static final double SLOWEST = 1;

    private static final double FASTEST = 20;

    private static final List<Drill> PRESSED = List.of(Drill.RACE, Drill.CLIMB, Drill.GAME, Drill.DUEL, Drill.FIXTURE);

    private final Records records;
    private final Player player;
    private final Skill skill;
    private final LocalDate today;

    private Planning(Records records, Player player, Skill skill, LocalDate today) {
        this.records = records;
        this.player = player;
        this.skill = skill;
        this.today = today;
    }

    /**
     * What a player's records say to a plan.
     *
     * @param skill what they say of the player's skill on that day
     */
    public static PlayerState state(Records records, Player player, Skill skill, LocalDate today) {
        return new Planning(records, player, skill, today).state();
    }

    /** Bag sets in use, the one thrown last first. */
    public static List<BagSet> bags(Records records, Player player) {
        Set<String> latest = records.lastRun(player.id(), null)
                .map(run -> (Set<String>) new LinkedHashSet<>(run.setup().bags()))
                .orElse(Set.of());
        List<String> order = List.copyOf(latest);
        return records.bags(player.id()).stream()
                .filter(bag -> !bag.retired())
                .sorted(Comparator.comparingInt(
                        bag -> order.contains(bag.id()) ? order.indexOf(bag.id()) : order.size()))
                .toList();
    }

    /** Kinds of the player's boards in use; a regulation board where none is named. */
    public static Set<BoardKind> boards(Records records, Player player) {
        Set<BoardKind> kinds = EnumSet.noneOf(BoardKind.class);
        records.boards(player.id()).stream()
                .filter(board -> !board.retired())
                .forEach(board -> kinds.add(board.kind()));
        return kinds.isEmpty() ? EnumSet.of(BoardKind.REGULATION) : kinds;
    }

    private PlayerState state() {
        Set<Theme.Kind> goals = EnumSet.noneOf(Theme.Kind.class);
        records.plans()
                .goals(player.id())
                .forEach(goal -> goals.addAll(goal.goal().themes()));
        return new PlayerState(form(), rivals(), targets(), shots(), due(), habits(), goals, Map.of());
    }

    /** Whether a playbook would change a plan: nothing is said of shots to a player who tries none. */
    public static boolean asksForPlaybook(PlayerState state) {
        return !state.shots().isEmpty() || !state.targets().isEmpty();
    }

    /** Games in a hundred more won by each shot, if it works ten times in a hundred more often. */
    public static Map<Shot, Interval> worths(Playbook playbook) {
        return playbook.worths().stream().collect(Collectors.toMap(Playbook.Worth::shot, worth -> {
            Range game = worth.perGame();
            return new Interval(100 * game.estimate(), 100 * game.low(), 100 * game.high());
        }));
    }

    /** What a block of situations plays, by the id of its choice; empty where it is not among what was tried any more. */
    public static Optional<Exercise.Step> step(Records records, Player player, LocalDate today, String choice) {
        List<KeptSituation> kept = records.situations(player.id());
        return TryRates.of(records, player.id(), Drill.SITUATION, today, Set.of()).rows().stream()
                .filter(row -> choice.equals(Activity.SITUATION.word() + ":" + id(row, shotId(row, kept))))
                .findFirst()
                .map(row -> new Exercise.Step(row.shot(), row.target(), row.position()));
    }

    private static String shotId(TryRates.Row row, List<KeptSituation> kept) {
        NamedPosition position = NamedPosition.of(row.position(), Board.usualWidth(row.board()), kept);
        return row.shot().word() + ":" + position.code();
    }

    private static String id(TryRates.Row row, String id) {
        return row.board() == BoardKind.REGULATION ? id : id + "/" + row.board().word();
    }

    private double daysSince(Stream<Drill> drills) {
        return drills.map(drill -> records.lastRun(player.id(), drill))
                .flatMap(Optional::stream)
                .mapToDouble(run -> daysSince(run.startedAt().substring(0, 10)))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private double daysSince(String day) {
        return Math.max(0, today.toEpochDay() - LocalDate.parse(day).toEpochDay());
    }

    private PlayerState.Form form() {
        List<DayBags> days = records.deeds().days(player.id(), LocalDate.EPOCH, today);
        LocalDate from = today.minusDays(LEARNING_DAYS);
        double all = 0;
        double since = 0;
        for (DayBags day : days) {
            all += day.bags();
            since += LocalDate.parse(day.day()).isAfter(from) ? day.bags() : 0;
        }
        Optional<ChanceRange> chances = skill.chances();
        double pace = 1;
        if (chances.isPresent() && skill.form(LEARNING_DAYS) instanceof Form form && since < all) {
            pace = Ability.pace(form.trend().change(), chances.get().likely(), all - since, since);
        }
        double practised = daysSince(Stream.of(Drill.values()).filter(Drill::counted));
        double pressed = daysSince(PRESSED.stream());
        Ability bags = new Ability(all, practised, 0.1, pace);
        return new PlayerState.Form(
                chances,
                bags,
                bags,
                new Ability(all, pressed, 0.3, 1),
                stakes(),
                skill.narrow() instanceof Narrow narrow ? Optional.of(narrow.cost()) : Optional.empty());
    }

    /** What league nights cost, else tournaments. */
    private Optional<Interval> stakes() {
        if (!(skill.stakes() instanceof Stakes stakes)) {
            return Optional.empty();
        }
        return stakes.settings().stream()
                .min(Comparator.comparing(stake -> stake.setting() != Setting.LEAGUE))
                .map(stake -> stake.difference())
                .map(difference -> new Interval(-difference.estimate(), -difference.high(), -difference.low()));
    }

    private List<Rival> rivals() {
        List<Rival> rivals = new ArrayList<>();
        skill.chances().map(ChanceRange::likely).ifPresent(bag -> {
            double level =
                    Level.of(GameRules.STANDARD, RoundDistribution.of(bag)).value();
            rivals.add(Rival.ghost((int) Math.max(1, Math.round(level))));
            league().ifPresent(rivals::add);
        });
        return rivals;
    }

    /** Who is to be met next in a league, by the totals they posted or are expected to throw. */
    private Optional<Rival> league() {
        Optional<Rival> next = Optional.empty();
        double soonest = LEAGUE_DAYS;
        for (LeagueState state : records.leagues().all(player.id())) {
            for (Fixture fixture : state.toThrow()) {
                double days = state.deadline(fixture)
                        .map(at -> (double)
                                (LocalDate.ofInstant(at, ZoneOffset.UTC).toEpochDay() - today.toEpochDay()))
                        .orElse((double) LEAGUE_DAYS);
                if (days >= 0 && days < soonest) {
                    soonest = days;
                    next = rival(state, fixture, days);
                }
            }
        }
        return next;
    }

    private Optional<Rival> rival(LeagueState state, Fixture fixture, double days) {
        int rounds = state.league().rounds();
        LeagueNight night = new LeagueNight(List.of(), skill.total(rounds).orElse(null));
        return night.rival(state, fixture, 1).map(theirs -> {
            double mean = 0;
            for (int points = 0; points < theirs.chances().size(); points++) {
                mean += points * theirs.chances().get(points);
            }
            BagChances bag = TypicalPlayer.ofPoints(Math.min(12, mean / rounds));
            return Rival.league(
                    fixture.against(state.league().me()),
                    RoundDistribution.of(bag),
                    state.league().games(),
                    rounds,
                    days);
        });
    }

    private List<Tried> targets() {
        double days = daysSince(Stream.of(Drill.PLACEMENT));
        return TryRates.of(records, player.id(), Drill.PLACEMENT, today, Set.of()).rows().stream()
                .filter(row -> row.target() != null)
                .map(row -> {
                    String target = row.target() == null ? "" : row.target().text();
                    return tried(row, target, target, days);
                })
                .toList();
    }

    private List<Tried> shots() {
        double days = daysSince(Stream.of(Drill.SITUATION));
        List<KeptSituation> kept = records.situations(player.id());
        return TryRates.of(records, player.id(), Drill.SITUATION, today, Set.of()).rows().stream()
                .map(row -> {
                    double width = Board.usualWidth(row.board());
                    NamedPosition position = NamedPosition.of(row.position(), width, kept);
                    return tried(row, shotId(row, kept), row.shot().word() + ", " + position.words(), days);
                })
                .toList();
    }

    private static Tried tried(TryRates.Row row, String id, String aim, double days) {
        Rate rate = row.rate();
        double p = Math.min(0.99, Math.max(0.01, rate.estimate()));
        double uncertainty = Math.min(1.5, (rate.high() - rate.low()) / 3.29 / (p * (1 - p)));
        return new Tried(
                id(row, id),
                row.shot().word(),
                aim,
                row.board(),
                new Interval(rate.estimate(), rate.low(), rate.high()),
                row.tries(),
                new Ability(row.tries(), days, uncertainty, 1));
    }

    private Due due() {
        Ladder ladder = Ladder.of(records, player.id());
        OptionalInt rung = ladder.next();
        Optional<Due.Ladder> climb = rung.isEmpty()
                ? Optional.empty()
                : Optional.of(new Due.Ladder(
                        rung.getAsInt(), daysSince(ladder.races().get(0).day())));
        return new Due(climb, trial(), boardsTested());
    }

    /** When the boards were last tested, and whether the last run since was thrown on boards that play otherwise. */
    private Due.Boards boardsTested() {
        for (SlideTest test : records.slideTests().latest(player.id(), 1)) {
            SlideTest.Tapped tapped = test.tapped();
            if (tapped != null) {
                long at = Moment.of(tapped.at()).millis();
                Conditions then = tapped.conditions();
                boolean changed = records.lastRun(player.id(), null)
                        .filter(run -> Moment.of(run.startedAt()).millis() > at)
                        .map(run -> run.setup().conditions())
                        .filter(now -> then != null && now != then)
                        .isPresent();
                return new Due.Boards(daysSince(tapped.day()), changed);
            }
        }
        return Due.Boards.UNTESTED;
    }

    /** The newest trial that is thrown and not decided. */
    private Optional<Due.Trial> trial() {
        for (TrialDetail detail : records.trials().all(player.id())) {
            TrialPlan plan = detail.plan();
            if (plan.state() == TrialPlan.State.OPEN) {
                TrialState state = detail.state();
                if (!state.over()) {
                    return Optional.of(new Due.Trial(
                            plan.id(),
                            plan.name(),
                            bags(plan, state.inPlay()),
                            plan.board(),
                            TrialDesign.ROUNDS * state.inPlay().size(),
                            Math.max(1, plan.longest() - state.blocks())));
                }
            }
        }
        return Optional.empty();
    }

    /** Names of the bag sets that candidates are thrown with. */
    private List<String> bags(TrialPlan plan, List<Integer> inPlay) {
        Set<String> ids = inPlay.stream()
                .map(candidate -> plan.candidates().get(candidate).bag())
                .collect(Collectors.toSet());
        return records.bags(player.id()).stream()
                .filter(bag -> ids.contains(bag.id()))
                .map(BagSet::name)
                .toList();
    }

    /** The trial of a planned block, by the id of its choice; empty where it is paused, stopped or deleted by now. */
    public static Optional<TrialDetail> trial(Records records, Player player, String choice) {
        String prefix = Activity.TRIAL.word() + ":";
        return choice.startsWith(prefix)
                ? records.trials()
                        .find(player.id(), choice.substring(prefix.length()))
                        .filter(detail -> detail.plan().state() == TrialPlan.State.OPEN)
                : Optional.empty();
    }

    private Habits habits() {
        Load load = records.deeds().load(player.id(), today);
        List<DayBags> month = records.deeds().days(player.id(), today.minusDays(28), today.minusDays(1));
        double usual = month.stream().mapToInt(DayBags::bags).average().orElse(0);
        return new Habits(
                bags(records, player).stream().map(BagSet::name).toList(),
                pace(),
                records.plans().refused(player.id(), today),
                usual,
                load.left());
    }

    private Map<Activity, Double> pace() {
        Map<Activity, Double> pace = new EnumMap<>(Activity.class);
        for (Activity activity : Activity.values()) {
            activity.drill()
                    .filter(drill -> activity != Activity.WARM_UP && drill != Drill.VOLUME)
                    .flatMap(drill -> pace(records.latestRuns(player.id(), drill, PACED)))
                    .ifPresent(bags -> pace.put(activity, bags));
        }
        // A trial is thrown like any rounds of four, one run going on over days: the time between rounds tells it
        // better.
        Pace rounds = records.pace(player.id());
        if (rounds.rounds() > 0) {
            pace.put(Activity.TRIAL, Finish.BAGS / rounds.minutesPerRound());
        }
        return pace;
    }

    /** The middle one of the paces that can be told. */
    static Optional<Double> pace(List<Run> runs) {
        List<Double> paces = new ArrayList<>();
        for (Run run : runs) {
            String end = run.finishedAt();
            if (end != null && run.sum().thrown() > 0) {
                double minutes = Duration.between(OffsetDateTime.parse(run.startedAt()), OffsetDateTime.parse(end))
                                .toSeconds()
                        / 60.0;
                double bags = run.sum().thrown() / minutes;
                if (bags >= SLOWEST && bags <= FASTEST) {
                    paces.add(bags);
                }
            }
        }
        paces.sort(null);
        return paces.size() < 3 ? Optional.empty() : Optional.of(paces.get(paces.size() / 2));
    }
}
