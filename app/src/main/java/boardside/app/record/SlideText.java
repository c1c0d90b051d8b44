package boardside.app.record;

import boardside.app.practice.Round;
import boardside.app.practice.SlideTest;
import boardside.engine.rules.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Slides as text, {@code x,y>x,y} in inches for each: where the bag landed and where it stopped; {@code x,y>in} and {@code
 * x,y>off} for one that slid into the hole or off the board.
 */
public final class SlideText {
    private static final String NUMBER = "([+-]?(?:\\d+\\.?\\d*|\\.\\d+))";
    private static final Pattern SLID =
            Pattern.compile(NUMBER + "," + NUMBER + ">(?:(in|off)|" + NUMBER + "," + NUMBER + ")");

    private SlideText() {}

    /**
     * Reads slides.
     *
     * @param faults what is wrong is added here, a sentence each
     */
    public static List<SlideTest.Slid> read(String text, List<String> faults) {
        List<SlideTest.Slid> slides = new ArrayList<>();
        String[] all = text.isBlank() ? new String[0] : text.strip().split("\\s+");
        for (String each : all) {
            Matcher parts = SLID.matcher(each);
            if (!parts.matches()) {
                faults.add("\"" + each + "\" is no slide; write where the bag landed and where it stopped as x,y>x,y in"
                        + " inches, or x,y>in or x,y>off, with a space between slides, such as"
                        + " \"0,14>1,33 -2,11>-2,29 1,20>in\"");
                continue;
            }
            String gone = parts.group(3);
            Round.Point landing = point(parts.group(1), parts.group(2));
            slides.add(
                    gone == null
                            ? new SlideTest.Slid(Outcome.ON, landing, point(parts.group(4), parts.group(5)))
                            : new SlideTest.Slid(gone.equals("in") ? Outcome.IN : Outcome.OFF, landing, null));
        }
        return slides;
    }

    private static Round.Point point(String x, String y) {
        return new Round.Point(Double.parseDouble(x), Double.parseDouble(y));
    }

    /** Slides as {@link #read} reads them. */
    public static String of(List<SlideTest.Slid> slides) {
        return slides.stream().map(SlideText::of).collect(Collectors.joining(" "));
    }

    private static String of(SlideTest.Slid slid) {
        Round.Point rest = slid.rest();
        return of(slid.landing()) + ">" + (rest == null ? slid.outcome().word() : of(rest));
    }

    private static String of(Round.Point point) {
        return number(point.x()) + "," + number(point.y());
    }

    private static String number(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }
}
