package boardside.engine.skill;

import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.FormAnswer.Trend;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The answers in plain words. None claims more than its verdict allows. */
final class Sentences {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    /** More rounds than this are many, however many they are. */
    private static final long MANY_ROUNDS = 1000;

    private Sentences() {}

    static String noRecords(LocalDate asOf) {
        return "No counted throws up to " + DAY.format(asOf) + " yet; throw a few rounds and ask again.";
    }

    static String form(Interval points, long bags, LocalDate from, boolean recent) {
        String base = "You throw about " + one(points.estimate()) + " points a round, most likely " + range(points)
                + ", going by " + bags(bags) + " since " + DAY.format(from) + ".";
        return recent ? base : base + " None of them is from the last " + Skill.RECENT_DAYS + " days.";
    }

    /** The trend as far as it can be told; {@code reaches} whether there are records from as long ago. */
    static String trend(Trend trend, boolean reaches) {
        String then = trend.days() == 1 ? "yesterday" : trend.days() + " days ago";
        if (!reaches) {
            return "There is nothing from " + (trend.days() == 1 ? "before yesterday" : then)
                    + " or earlier to compare with yet.";
        }
        Interval change = trend.change();
        String size = one(Math.abs(change.estimate()));
        String range = " (" + signed(change.low()) + " to " + signed(change.high()) + ")";
        String found = size.equals("0.0")
                ? "You throw as you did " + then
                : "You throw " + size + (change.estimate() > 0 ? " more than " : " less than ") + then;
        return found
                + range
                + switch (trend.verdict()) {
                    case SIGNAL -> ": very likely a real change, not luck.";
                    case LEANING -> ": more likely a real change than luck, but not settled.";
                    case OPEN -> ": too early to say whether that is you or luck.";
                };
    }

    static String unsaid(List<Trait> by, long bags) {
        return "Nothing to compare: none of your " + bags(bags) + " says which " + titles(by) + " it was thrown with.";
    }

    static String alone(List<Trait> by, Group only, long leftOut) {
        return "Only " + name(only) + " so far: about "
                + one(only.pointsPerRound().estimate())
                + " points a round, most likely " + range(only.pointsPerRound())
                + ". Nothing to compare it with yet."
                + leftOut(by, leftOut);
    }

    static String comparison(List<Trait> by, List<Group> groups, Interval lead, Verdict verdict, long leftOut) {
        Group first = groups.get(0);
        Group second = groups.get(1);
        String size = one(lead.estimate());
        String range = " (" + signed(lead.low()) + " to " + signed(lead.high()) + ")";
        String cause = by.size() == 1 ? "the " + titles(by) : "how you threw";
        String found = switch (verdict) {
            case SIGNAL ->
                name(first) + " is " + size + " points a round better than " + name(second) + range + ": very likely "
                        + cause + ", not luck.";
            case LEANING ->
                name(first) + " looks " + size + " points a round better than " + name(second) + range
                        + ": more likely " + cause + " than luck, but not settled." + more(first);
            case OPEN ->
                (size.equals("0.0")
                                ? name(first) + " and " + name(second) + " look alike"
                                : name(first) + " looks " + size + " points a round better than " + name(second))
                        + range + ": too early to say whether that is " + cause + " or luck." + more(first);
        };
        return capital(found) + " Days and dates are allowed for." + leftOut(by, leftOut);
    }

    private static String more(Group first) {
        long rounds = first.roundsToSettle();
        String howMany = rounds > MANY_ROUNDS
                ? "More than a thousand more rounds"
                : rounds > 1 ? "About " + rounds + " more rounds" : "A few more rounds";
        return " " + howMany + " with each would probably tell.";
    }

    /** A sentence may begin with a name or a word of the records, which are kept as written. */
    private static String capital(String sentence) {
        int end = sentence.offsetByCodePoints(0, 1);
        return sentence.substring(0, end).toUpperCase(Locale.ROOT) + sentence.substring(end);
    }

    private static String leftOut(List<Trait> by, long bags) {
        return bags == 0
                ? ""
                : " " + bags(bags) + (bags == 1 ? " is" : " are") + " left out: no " + titles(by) + " was recorded.";
    }

    static String noStakes() {
        return "League or tournament rounds beside practice are needed to say what the stakes do to you.";
    }

    static String stake(String setting, Interval difference, Verdict verdict) {
        String size = one(Math.abs(difference.estimate()));
        String range = " (" + signed(difference.low()) + " to " + signed(difference.high()) + ")";
        String more = difference.estimate() > 0 ? " more" : " less";
        return switch (verdict) {
            case SIGNAL ->
                "In a " + setting + " you throw " + size + more + " points a round than in practice" + range
                        + ": very likely the stakes, not luck.";
            case LEANING ->
                "In a " + setting + " you seem to throw " + size + more
                        + " points a round than in practice" + range
                        + ": more likely the stakes than luck, but not settled.";
            case OPEN ->
                (size.equals("0.0")
                                ? "In a " + setting + " you throw about as in practice"
                                : "In a " + setting + " it was " + size + more + " points a round than in practice")
                        + range + ": too early to say whether that is the stakes or luck.";
        };
    }

    static String oneBoard() {
        return "Rounds on both the regulation and the narrow board are needed to say what the narrow one costs.";
    }

    static String narrow(Interval cost, Verdict verdict) {
        String size = one(Math.abs(cost.estimate()));
        String range = " (" + signed(cost.low()) + " to " + signed(cost.high()) + ")";
        String found = size.equals("0.0")
                ? "The narrow board makes no difference to you so far"
                : cost.estimate() > 0
                        ? "The narrow board costs you " + size + " points a round"
                        : "You throw " + size + " points a round more on the narrow board";
        return found
                + range
                + switch (verdict) {
                    case SIGNAL -> ": very likely the board, not luck.";
                    case LEANING -> ": more likely the board than luck, but not settled.";
                    case OPEN -> ": too early to say whether that is the board or luck.";
                };
    }

    static String trainingTooEarly(int days) {
        return "Whether the narrow board has helped cannot be asked yet: that takes records of at least " + days
                + " days before the first narrow round, and as many since.";
    }

    static String training(int days, Interval before, Interval after, Verdict verdict, boolean faster) {
        return "In the " + days + " days before your first narrow round your points a round changed by "
                + signed(before.estimate()) + ", in the first " + days + " days since by " + signed(after.estimate())
                + ". "
                + switch (verdict) {
                    case SIGNAL ->
                        (faster ? "You got better faster since" : "You got better faster before")
                                + ", very likely not by luck; whether the narrow board did that, the records cannot say.";
                    case LEANING ->
                        "That leans to "
                                + (faster ? "faster progress since" : "slower progress since")
                                + ", but it is not settled, and other things changed as well.";
                    case OPEN -> "The records cannot answer whether the narrow board has helped.";
                };
    }

    static String fewRuns(int runs) {
        return "At least " + runs + " runs are needed to tell luck from good and bad days.";
    }

    static String swing(int rounds, Interval luck, Interval days, Interval change) {
        return "Of the swing between your totals of " + rounds + " rounds, luck alone makes " + percent(luck)
                + "; good and bad days make " + percent(days) + ", and changing skill over the last year "
                + percent(change) + ".";
    }

    static String noTotals() {
        return "No round with points is counted yet, so nothing is usual; throw a few and ask again.";
    }

    static String usual(int rounds, int low, int high) {
        return "Nine in ten of your totals of " + rounds + (rounds == 1 ? " round" : " rounds") + " should lie between "
                + low + " and " + high + " points.";
    }

    static String unusual(int total, int rounds, double atMost, double atLeast) {
        String what = total + " in " + rounds + (rounds == 1 ? " round" : " rounds");
        double tail = Math.min(atMost, atLeast);
        if (tail > 0.25) {
            return what + " is about what you usually throw.";
        }
        boolean high = atLeast < atMost;
        String often = tail < 0.001
                ? "fewer than 1 time in 1,000"
                : tail < 0.01
                        ? "about " + Math.round(1000 * tail) + (Math.round(1000 * tail) == 1 ? " time" : " times")
                                + " in 1,000"
                        : "about " + Math.round(100 * tail) + (Math.round(100 * tail) == 1 ? " time" : " times")
                                + " in 100";
        String so = high ? " or more" : " or fewer";
        return tail > 0.05
                ? what + " is a " + (high ? "good" : "quiet") + " one, but not unusual: you would throw that" + so + " "
                        + often + "."
                : what + " is unusual: you would throw that" + so + " " + often + ".";
    }

    static String nothingForecast(int totals) {
        return "At least " + totals + " totals of ten rounds are needed to hold forecasts against what came.";
    }

    static String forecasts(long totals, long inside, double stated, Interval happened) {
        return "Of " + totals + " totals of ten rounds, each forecast from the records before it, " + inside
                + " fell inside their 90 in 100 range. When it said " + Math.round(100 * stated)
                + " in 100, it happened "
                + Math.round(100 * happened.estimate()) + " in 100 times.";
    }

    private static String percent(Interval share) {
        return Math.round(100 * share.estimate()) + " % (" + Math.round(100 * share.low()) + " to "
                + Math.round(100 * share.high()) + ")";
    }

    private static String bags(long bags) {
        return bags == 1 ? "1 bag" : bags + " bags";
    }

    private static String titles(List<Trait> by) {
        return by.stream().map(Trait::title).collect(Collectors.joining(", "));
    }

    private static String name(Group group) {
        return String.join(", ", group.key());
    }

    private static String range(Interval interval) {
        return one(interval.low()) + " to " + one(interval.high());
    }

    private static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    private static String signed(double value) {
        String text = String.format(Locale.ROOT, "%+.1f", value).replace('-', '\u2212');
        return text.substring(1).equals("0.0") ? "0.0" : text;
    }
}
