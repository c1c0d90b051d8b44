package boardside.engine.plan;

import boardside.engine.plan.Objective.Visit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the session that is worth most by {@link Objective}, exactly.
 *
 * <p>A session is a set of visits, in an order. Its rules:
 *
 * <ol>
 *   <li>It fits the minutes, and its bags fit the most there may be.
 *   <li>A theme comes once or twice; the second visit is as long as the first, or a minute off. No block is shorter than a
 *       twelfth of the session, nor longer than {@value Choice#LONGEST} minutes.
 *   <li>No two blocks of one theme follow each other.
 *   <li>Pressure comes last; a session of {@value #LONG} minutes or more has it, where anything of that kind fits.
 *   <li>A warm-up comes first; breaks lie between blocks.
 * </ol>
 *
 * <p>By rule 3 and 4 a set has an order unless a theme comes twice and nothing else can stand between (the only obstacle, as
 * no theme comes more often), and its worth does not depend on which order that is. So a dynamic programme over themes finds
 * the best set: its state is the minutes, the bags where they are scarce, and whether something can stand between
 * ({@link Standing}). The order is then found by {@link Order}, exactly too.
 */
public final class Planner {
    /** A session of so many minutes closes under pressure. */
    static final int LONG = 60;

    /** Blocks a session has at most, give or take one for choices that cannot be longer. */
    static final int BLOCKS = 12;

    /** Fewer bags than this left over make no block. */
    private static final int SLACK = 60;

    /** Bags are counted in fours. */
    private static final int FOUR = 4;

    private final Means means;
    private final int mostBags;
    private final List<List<Option>> options;
    private final int pressure;

    private Planner(Means means, List<Choice> choices, int mostBags) {
        this.means = means;
        this.mostBags = mostBags;
        Map<Theme, List<Choice>> themes = new LinkedHashMap<>();
        for (Choice choice : choices) {
            themes.computeIfAbsent(choice.theme(), theme -> new ArrayList<>()).add(choice);
        }
        List<List<Option>> all = new ArrayList<>();
        int found = -1;
        for (Map.Entry<Theme, List<Choice>> theme : themes.entrySet()) {
            List<Option> some = options(theme.getValue());
            if (!some.isEmpty()) {
                found = theme.getKey().kind() == Theme.Kind.PRESSURE ? all.size() : found;
                all.add(some);
            }
        }
        this.options = all;
        this.pressure = found;
    }

    /** Visits of one theme. */
    private record Option(List<Visit> visits, int minutes, int bags, double value) {}

    /** What stands so far, besides one block of pressure, which closes the session. */
    private enum Standing {
        NOTHING,
        /** One block. */
        ONE,
        /** A theme twice, and nothing to stand between. */
        STUCK,
        /** Enough for any order. */
        FREE;

        Standing with(int visits, boolean closes) {
            if (closes && visits == 1) {
                return this;
            }
            return this == NOTHING ? visits == 1 ? ONE : STUCK : FREE;
        }
    }

    /** A session: visits in their order, with warm-up and where the breaks lie. */
    record Session(boolean warm, List<Visit> visits, List<Integer> breaksAfter, double value) {
        /** Bags it takes, the warm-up's too. */
        int bags() {
            return (warm ? Objective.WARM_UP_BAGS : 0)
                    + visits.stream().mapToInt(Visit::bags).sum();
        }
    }

    /** The shortest block of a choice in a session. */
    static int shortest(Choice choice, int minutes) {
        int twelfth = (minutes + BLOCKS - 1) / BLOCKS;
        return Math.min(Math.max(choice.shortest(), twelfth), choice.longest());
    }

    /**
     * The best session.
     *
     * @param choices what can be practised with the means, in an order that decides between equals
     * @param mostBags bags there may be in all, 0 or more
     */
    static Session solve(Means means, List<Choice> choices, int mostBags) {
        Planner planner = new Planner(means, choices, mostBags);
        boolean must = means.minutes() >= LONG && planner.pressure >= 0;
        return planner.best(must).or(() -> planner.best(false)).orElse(new Session(false, List.of(), List.of(), 0));
    }

    /** Bags are looked at only where the best session without regard to them takes too many. */
    private Optional<Session> best(boolean mustClose) {
        Optional<Session> free = solve(mustClose, false);
        boolean fits = free.isPresent() && free.get().bags() <= mostBags;
        return fits ? free : solve(mustClose, true);
    }

    private List<Option> options(List<Choice> choices) {
        List<Visit> single = new ArrayList<>();
        for (Choice choice : choices) {
            int most = Math.min(choice.longest(), means.minutes());
            for (int minutes = shortest(choice, means.minutes()); minutes <= most; minutes++) {
                if (choice.rounds(minutes) > 0) {
                    single.add(new Visit(choice, minutes));
                }
            }
        }
        List<Option> found = new ArrayList<>();
        for (int i = 0; i < single.size(); i++) {
            Visit one = single.get(i);
            found.add(option(List.of(one)));
            for (int j = i; j < single.size(); j++) {
                Visit other = single.get(j);
                boolean twice = one.choice() == other.choice();
                if (Math.abs(one.minutes() - other.minutes()) <= 1
                        && one.minutes() + other.minutes() <= means.minutes()
                        && !(twice && one.choice().once())) {
                    found.add(option(List.of(one, other)));
                }
            }
        }
        return undominated(found);
    }

    private Option option(List<Visit> visits) {
        return new Option(
                visits,
                visits.stream().mapToInt(Visit::minutes).sum(),
                visits.stream().mapToInt(Visit::bags).sum(),
                Objective.theme(visits));
    }

    /** Of equally many minutes and visits, those that no other beats with as few bags; of equals the first. */
    private List<Option> undominated(List<Option> all) {
        Map<Integer, List<Option>> groups = new LinkedHashMap<>();
        for (Option option : all) {
            if (option.bags() <= mostBags) {
                groups.computeIfAbsent(2 * option.minutes() + option.visits().size() - 1, key -> new ArrayList<>())
                        .add(option);
            }
        }
        List<Option> kept = new ArrayList<>();
        for (List<Option> group : groups.values()) {
            for (int i = 0; i < group.size(); i++) {
                Option one = group.get(i);
                boolean beaten = false;
                for (int j = 0; j < group.size() && !beaten; j++) {
                    Option other = group.get(j);
                    boolean notWorse = other.value() >= one.value() && other.bags() <= one.bags();
                    boolean better = other.value() > one.value() || other.bags() < one.bags();
                    beaten = notWorse && (better || j < i);
                }
                if (!beaten) {
                    kept.add(one);
                }
            }
        }
        return kept;
    }

    private Optional<Session> solve(boolean mustClose, boolean countBags) {
        int minutes = means.minutes() + 1;
        int fours = countBags ? mostBags / FOUR + 1 : 1;
        int standings = Standing.values().length;
        double[] value = new double[standings * minutes * fours];
        Arrays.fill(value, Double.NEGATIVE_INFINITY);
        value[0] = 0;
        // For each theme and state: 0 where the theme is left out, else one more than the option and standing before.
        List<int[]> came = new ArrayList<>();
        for (int theme = 0; theme < options.size(); theme++) {
            boolean closes = theme == pressure;
            double[] next = new double[value.length];
            if (closes && mustClose) {
                Arrays.fill(next, Double.NEGATIVE_INFINITY);
            } else {
                System.arraycopy(value, 0, next, 0, value.length);
            }
            int[] from = new int[value.length];
            boolean[] reached = reached(value, fours);
            List<Option> some = options.get(theme);
            for (int o = 0; o < some.size(); o++) {
                Option option = some.get(o);
                int bags = countBags ? fours(option.bags()) : 0;
                for (Standing before : Standing.values()) {
                    Standing after = before.with(option.visits().size(), closes);
                    for (int m = 0; m + option.minutes() < minutes; m++) {
                        if (!reached[before.ordinal() * minutes + m]) {
                            continue;
                        }
                        int at = (before.ordinal() * minutes + m) * fours;
                        int to = (after.ordinal() * minutes + m + option.minutes()) * fours + bags;
                        for (int f = 0; f + bags < fours; f++) {
                            double sum = value[at + f] + option.value();
                            if (sum > next[to + f]) {
                                next[to + f] = sum;
                                from[to + f] = 1 + o * standings + before.ordinal();
                            }
                        }
                    }
                }
            }
            value = next;
            came.add(from);
        }
        return end(value, came, minutes, fours, countBags);
    }

    /** By standing and minutes, whether any state is reached: most are not. */
    private static boolean[] reached(double[] value, int fours) {
        boolean[] reached = new boolean[value.length / fours];
        for (int at = 0; at < value.length; at++) {
            reached[at / fours] |= value[at] > Double.NEGATIVE_INFINITY;
        }
        return reached;
    }

    /** Bags in fours; every choice's bags are a multiple of four. */
    private static int fours(int bags) {
        return bags / FOUR;
    }

    private Optional<Session> end(double[] value, List<int[]> came, int minutes, int fours, boolean countBags) {
        double best = 0;
        int at = -1;
        boolean warm = false;
        int breaks = 0;
        for (Standing standing : Standing.values()) {
            if (standing == Standing.STUCK) {
                continue;
            }
            for (int work = 1; work < minutes; work++) {
                for (int f = 0; f < fours; f++) {
                    int state = (standing.ordinal() * minutes + work) * fours + f;
                    if (value[state] == Double.NEGATIVE_INFINITY) {
                        continue;
                    }
                    for (int number = 0; number <= Objective.mostBreaks(work); number++) {
                        for (boolean first : new boolean[] {false, true}) {
                            int all = work + number * Objective.BREAK + (first ? Objective.WARM_UP : 0);
                            int warmUp = first && countBags ? Objective.WARM_UP_BAGS : 0;
                            if (all >= minutes || FOUR * f + warmUp > mostBags) {
                                continue;
                            }
                            double worth = Objective.session(value[state], work, number, first, means.energy());
                            if (worth > best) {
                                best = worth;
                                at = state;
                                warm = first;
                                breaks = number;
                            }
                        }
                    }
                }
            }
        }
        if (at < 0) {
            return Optional.empty();
        }
        List<Visit> visits = visits(came, at, minutes, fours, countBags);
        List<Visit> ordered = Order.of(visits);
        return Optional.of(new Session(warm, ordered, Order.breaks(ordered, breaks), best));
    }

    private List<Visit> visits(List<int[]> came, int end, int minutes, int fours, boolean countBags) {
        int standings = Standing.values().length;
        List<Visit> visits = new ArrayList<>();
        int at = end;
        for (int theme = options.size() - 1; theme >= 0; theme--) {
            int from = came.get(theme)[at];
            if (from == 0) {
                continue;
            }
            Option option = options.get(theme).get((from - 1) / standings);
            int before = (from - 1) % standings;
            int f = at % fours - (countBags ? fours(option.bags()) : 0);
            int m = at / fours % minutes - option.minutes();
            at = (before * minutes + m) * fours + f;
            visits.addAll(0, option.visits());
        }
        return visits;
    }

    /**
     * The best session for a player, as blocks.
     *
     * @param player what they can do and what is due
     */
    public static Plan plan(Means means, PlayerState player) {
        return plan(means, player, Set.of());
    }

    /**
     * The best session without some choices: for a part of a session whose block the player would rather swap.
     *
     * @param player what they can do and what is due
     * @param except ids of choices to leave out
     */
    public static Plan plan(Means means, PlayerState player, Set<String> except) {
        List<Choice> choices = Menu.of(means, player).stream()
                .filter(choice -> !except.contains(choice.id()))
                .toList();
        int most = player.habits().mostBags(means.energy());
        Session session = solve(means, choices, most);
        List<Block> blocks = new ArrayList<>();
        int work = session.visits().stream().mapToInt(Visit::minutes).sum();
        if (session.warm()) {
            blocks.add(Menu.warmUp(player, work));
        }
        int bout = 0;
        for (int i = 0; i < session.visits().size(); i++) {
            Visit visit = session.visits().get(i);
            blocks.add(visit.choice().block(visit.minutes()));
            bout += visit.minutes();
            if (session.breaksAfter().contains(i)) {
                blocks.add(Menu.rest(bout));
                bout = 0;
            }
        }
        int filled = blocks.stream().mapToInt(Block::minutes).sum();
        boolean limited = means.minutes() - filled >= Means.LEAST_MINUTES && most - session.bags() < SLACK;
        return new Plan(means, blocks, session.value(), limited);
    }
}
