package boardside.app.transfer;

import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.record.Posted;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Fixtures and results as people write them into a chat. One match a line, two names with {@code v}, {@code vs}, a bar, a tab
 * or a dash with spaces between, then perhaps totals by game ({@code 88-92, 75-?}); a line such as {@code Week 3} holds for
 * those after it, as does a deadline. Bullets, numbers, blank lines, rules and byes are passed over. What cannot be read is
 * a fault with its line, never a guess.
 */
public final class PastedFixtures {
    private static final int MOST_LINES = 5000;

    /** More than two names and some totals need; the patterns take the cube of a line's length. */
    private static final int LONGEST_LINE = 200;

    private static final int MOST_FAULTS = 20;

    private static final Pattern HEAD = Pattern.compile(
            "^(?:week|wk|round|match\\s?day)\\s*#?\\s*(\\d{1,3})\\b\\s*[:.,)\\u2013-]*\\s*", Pattern.CASE_INSENSITIVE);
    private static final Pattern BULLET = Pattern.compile("^(?:[-*\\u2022\\u00b7>]+\\s+|\\d{1,3}[.)]\\s+)");
    private static final Pattern RULE = Pattern.compile("[^\\p{L}\\p{N}]*");
    private static final Pattern BYE = Pattern.compile("\\bbye\\b", Pattern.CASE_INSENSITIVE);
    private static final String ONE = "(?:\\d{1,4}|\\?)";
    private static final Pattern LOOSE = Pattern.compile(
            "(?<![\\p{L}\\p{N}])(" + ONE + ")(?:\\s*[-\\u2013\\u2014]\\s*|:|\\s+:\\s+)(" + ONE + ")(?![\\p{L}\\p{N}])");
    private static final String TOTALS = ONE + "-" + ONE;
    private static final String ALL_TOTALS = TOTALS + "(?:[\\s,;/|]+" + TOTALS + ")*";
    private static final String BETWEEN =
            "(?:\\s+(?:v|vs|versus|against)\\.?\\s+|\\s+[-\\u2013\\u2014]\\s+|\\s*\\|\\s*|\\s*\\t+\\s*)";
    private static final Pattern MATCH = Pattern.compile(
            "^(?<first>.+?)" + BETWEEN + "(?<second>.+?)(?:[\\s:,;(\\[|]+(?<totals>" + ALL_TOTALS + ")\\s*[)\\].]?)?$",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern TOTALS_BETWEEN =
            Pattern.compile("^(?<first>\\D.*?)[\\s:,]+(?<totals>" + ALL_TOTALS + ")[\\s:,]+(?<second>\\D.*)$");

    private PastedFixtures() {}

    /**
     * What a text says.
     *
     * @param today for deadlines without a year
     * @throws Failure.BadInput naming each line that cannot be read (the first {@value #MOST_FAULTS}), or that there is none
     */
    public static List<Posted> read(String text, LocalDate today) {
        List<Posted> posted = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        int week = 0;
        String deadline = null;
        List<String> lines = text.lines().toList();
        if (lines.size() > MOST_LINES) {
            throw new Failure.BadInput("at most " + MOST_LINES + " lines at a time, these are " + lines.size());
        }
        for (int number = 1; number <= lines.size(); number++) {
            String line = lines.get(number - 1).strip();
            if (line.length() > LONGEST_LINE) {
                faults.add(where(number) + "it has " + line.length() + " characters, and " + LONGEST_LINE
                        + " are enough for a match; write one match a line");
                continue;
            }
            PastedDeadline.Found due = PastedDeadline.in(line, today);
            String rest = due.rest();
            if (due.fault() != null) {
                faults.add(where(number) + due.fault());
                continue;
            }
            rest = BULLET.matcher(rest).replaceFirst("");
            Matcher head = HEAD.matcher(rest);
            boolean headed = head.find();
            if (headed) {
                week = Integer.parseInt(head.group(1));
                deadline = null;
                rest = rest.substring(head.end());
            }
            rest = BULLET.matcher(rest.strip()).replaceFirst("");
            boolean nothing = rest.startsWith("#")
                    || RULE.matcher(rest).matches()
                    || BYE.matcher(rest).find();
            if (nothing) {
                deadline = due.deadline() == null ? deadline : due.deadline();
                continue;
            }
            Posted one = match(week, rest, due.deadline() == null ? deadline : due.deadline());
            if (one != null) {
                posted.add(one);
            } else {
                faults.add(where(number) + "there are no two names in \"" + shortened(rest)
                        + "\"; write it like: Ash v Bea, or with totals: Ash v Bea 88-92, 75-80");
            }
        }
        if (faults.isEmpty() && posted.isEmpty()) {
            faults.add("there is no fixture in this text; write one a line, like: Ash v Bea");
        }
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(first(faults));
        }
        return posted;
    }

    private static String where(int line) {
        return "line " + line + ": ";
    }

    private static String shortened(String line) {
        return line.length() <= 60 ? line : line.substring(0, 60) + "\u2026";
    }

    private static List<String> first(List<String> faults) {
        if (faults.size() <= MOST_FAULTS) {
            return faults;
        }
        List<String> some = new ArrayList<>(faults.subList(0, MOST_FAULTS));
        some.add("and " + (faults.size() - MOST_FAULTS) + " more lines");
        return some;
    }

    private static @Nullable Posted match(int week, String line, @Nullable String deadline) {
        // 88 : 92 and 88 – 92 become 88-92, so that only dashes between names have spaces.
        String tight = LOOSE.matcher(line).replaceAll("$1-$2");
        for (Pattern pattern : List.of(TOTALS_BETWEEN, MATCH)) {
            Matcher found = pattern.matcher(tight);
            if (found.matches()) {
                String first = name(found.group("first"));
                String second = name(found.group("second"));
                boolean names = first.matches(".*\\p{L}.*") && second.matches(".*\\p{L}.*");
                if (names && !first.equalsIgnoreCase(second)) {
                    return new Posted(week, first, second, deadline, totals(found.group("totals")));
                }
            }
        }
        return null;
    }

    private static String name(String text) {
        return text.strip().replaceAll("^[\\s:,;]+|[\\s:,;]+$", "").replaceAll("\\s+", " ");
    }

    private static List<Fixture.Totals> totals(@Nullable String text) {
        List<Fixture.Totals> totals = new ArrayList<>();
        if (text != null) {
            for (String game : text.split("[\\s,;/|]+")) {
                String[] both = game.split("-");
                totals.add(new Fixture.Totals(total(both[0]), total(both[1])));
            }
        }
        return totals;
    }

    private static @Nullable Integer total(String text) {
        return text.equals("?") ? null : (Integer) Integer.parseInt(text);
    }
}
