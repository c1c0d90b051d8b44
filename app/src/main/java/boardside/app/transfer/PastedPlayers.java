package boardside.app.transfer;

import boardside.app.practice.Failure;
import boardside.app.record.NewSeason.Division;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Who plays in a season, as people write it: a name a line. A line that ends with a colon names the division of those after
 * it; bullets, numbers, blank lines and rules are passed over.
 */
public final class PastedPlayers {
    private static final int MOST_LINES = 5000;
    private static final Pattern BULLET = Pattern.compile("^(?:[-*\\u2022\\u00b7>]+\\s*|\\d{1,3}[.)]\\s*)");
    private static final Pattern RULE = Pattern.compile("[^\\p{L}\\p{N}]*");

    private PastedPlayers() {}

    /**
     * What a text says.
     *
     * @param one name of the division where the text names none
     * @throws Failure.BadInput if there are too few names, or one is there twice
     */
    public static List<Division> read(String text, String one) {
        List<String> lines = text.lines().toList();
        if (lines.size() > MOST_LINES) {
            throw new Failure.BadInput("at most " + MOST_LINES + " lines at a time, these are " + lines.size());
        }
        List<String> faults = new ArrayList<>();
        List<Division> divisions = new ArrayList<>();
        List<String> seen = new ArrayList<>();
        String division = one;
        List<String> names = new ArrayList<>();
        for (int number = 1; number <= lines.size(); number++) {
            String line = BULLET.matcher(lines.get(number - 1).strip())
                    .replaceFirst("")
                    .strip();
            if (line.endsWith(":") && line.length() > 1) {
                add(divisions, division, names);
                names = new ArrayList<>();
                division = line.substring(0, line.length() - 1).strip();
            } else if (!RULE.matcher(line).matches()) {
                String plain = line.replaceAll("\\s+", " ");
                if (seen.contains(plain.toLowerCase(Locale.ROOT))) {
                    faults.add(
                            "line " + number + ": \"" + plain + "\" is there already; give one of them another name");
                }
                seen.add(plain.toLowerCase(Locale.ROOT));
                names.add(plain);
            }
        }
        add(divisions, division, names);
        if (divisions.isEmpty()) {
            faults.add("there are no names in this text; write one a line");
        }
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults.subList(0, Math.min(20, faults.size())));
        }
        return divisions;
    }

    private static void add(List<Division> divisions, String name, List<String> names) {
        if (!names.isEmpty()) {
            divisions.add(new Division(name, names));
        }
    }
}
