package boardside.engine.skill;

import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.FormAnswer.Trend;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The answers in plain words. None claims more than the model knows, and this model settles nothing. */
final class Sentences {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    private Sentences() {}

    static String noRecords(LocalDate asOf) {
        return "No counted throws up to " + DAY.format(asOf) + " yet; throw a few rounds and ask again.";
    }

    static String form(Interval points, long bags, LocalDate from, boolean recent) {
        String base = "You throw about " + one(points.estimate()) + " points a round, most likely " + range(points)
                + ", going by " + bags(bags) + " since " + DAY.format(from) + ".";
        return recent ? base : base + " None of them is from the last " + Skill.RECENT_DAYS + " days.";
    }

    static String trend(Trend trend, List<List<Counts>> windows) {
        String now = trend.days() == 1 ? "The last day" : "The last " + trend.days() + " days";
        String then = trend.days() == 1 ? "the day before" : "the " + trend.days() + " before";
        if (windows.get(0).isEmpty()) {
            return now + " hold no rounds with points, so there is no trend to speak of.";
        }
        if (windows.get(1).isEmpty()) {
            return "Nothing to compare " + now.toLowerCase(Locale.ENGLISH) + " with yet: " + then
                    + " hold no rounds with points.";
        }
        Interval change = trend.change();
        String size = one(Math.abs(change.estimate()));
        String found = size.equals("0.0")
                ? " look like " + then
                : " look " + size + (change.estimate() > 0 ? " higher than " : " lower than ") + then;
        return now + found + " (" + signed(change.low()) + " to " + signed(change.high())
                + "): too early to say whether that is you or luck.";
    }

    static String unsaid(List<Trait> by, long bags) {
        return "Nothing to compare: none of your " + bags(bags) + " says which " + titles(by) + " it was thrown with.";
    }

    static String comparison(List<Trait> by, List<Group> groups, long leftOut) {
        Group first = groups.get(0);
        String rest = leftOut == 0
                ? ""
                : " " + bags(leftOut) + (leftOut == 1 ? " is" : " are") + " left out: no " + titles(by)
                        + " was recorded.";
        if (groups.size() == 1) {
            return "Only " + name(first) + " so far: about "
                    + one(first.pointsPerRound().estimate())
                    + " points a round, most likely " + range(first.pointsPerRound())
                    + ". Nothing to compare it with yet."
                    + rest;
        }
        Group second = groups.get(1);
        double gap = first.pointsPerRound().estimate() - second.pointsPerRound().estimate();
        String lead = one(gap).equals("0.0")
                ? name(first) + " and " + name(second) + " look alike as thrown"
                : name(first) + " looks " + one(gap) + " points a round better than " + name(second) + " as thrown";
        return lead + ", but days and dates are not allowed for yet: too early to say whether that is "
                + (by.size() == 1 ? "the " + titles(by) : "how you threw") + " or luck. About "
                + rounds(first.roundsToSettle()) + " more rounds with each would probably tell." + rest;
    }

    private static String rounds(long rounds) {
        return rounds > 1000 ? "more than a thousand" : String.valueOf(rounds);
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
