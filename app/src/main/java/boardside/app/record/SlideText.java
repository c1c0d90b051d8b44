package boardside.app.record;

import boardside.engine.physics.Board;
import boardside.engine.physics.Tap.Place;
import boardside.engine.rules.BoardKind;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Slides as text, {@code x,y>x,y} in inches for each: where the bag landed and where it stopped. */
public final class SlideText {
    private static final int MOST = 100;
    private static final String NUMBER = "([+-]?(?:\\d+\\.?\\d*|\\.\\d+))";
    private static final Pattern SLID = Pattern.compile(NUMBER + "," + NUMBER + ">" + NUMBER + "," + NUMBER);

    private SlideText() {}

    /**
     * Reads slides.
     *
     * @param faults what is wrong is added here, a sentence each
     */
    public static List<Throws.Slid> read(String text, List<String> faults) {
        List<Throws.Slid> slides = new ArrayList<>();
        Board board = Board.of(BoardKind.REGULATION);
        String[] all = text.isBlank() ? new String[0] : text.strip().split("\\s+");
        if (all.length > MOST) {
            faults.add("a slide test has at most " + MOST + " slides, not " + all.length);
            return slides;
        }
        for (String each : all) {
            Matcher parts = SLID.matcher(each);
            if (!parts.matches()) {
                faults.add("\"" + each + "\" is no slide; write where the bag landed and where it stopped as x,y>x,y in"
                        + " inches, with a space between slides, such as \"0,14>1,33 -2,11>-2,29\"");
                continue;
            }
            Throws.Slid slid = new Throws.Slid(place(parts, 1), place(parts, 3));
            for (Place at : List.of(slid.landing(), slid.rest())) {
                if (!board.holds(at.x(), at.y())) {
                    faults.add("(" + at.x() + ", " + at.y()
                            + ") is not on the board, which is -12 to 12 in across and 0 to"
                            + " 48 in up; leave out bags that missed it");
                }
            }
            slides.add(slid);
        }
        return slides;
    }

    private static Place place(Matcher parts, int first) {
        return new Place(Double.parseDouble(parts.group(first)), Double.parseDouble(parts.group(first + 1)));
    }
}
