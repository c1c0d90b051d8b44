package boardside.app.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How this device shows pages; kept in a cookie, since a phone in the sun and a desk differ.
 *
 * @param theme auto, light, dark or sun
 * @param units in or cm
 * @param hand the hand that holds the phone, right or left
 */
record Look(String theme, String units, String hand) {
    static final List<String> THEMES = List.of("auto", "light", "dark", "sun");
    static final List<String> UNITS = List.of("in", "cm");
    static final List<String> HANDS = List.of("right", "left");
    static final Look USUAL = new Look("auto", "in", "right");

    /** Reads the cookie; whatever it does not know becomes the usual. */
    static Look of(@Nullable String cookie) {
        String[] parts = cookie == null ? new String[0] : cookie.split("\\.", -1);
        return parts.length == 3
                ? new Look(known(THEMES, parts[0]), known(UNITS, parts[1]), known(HANDS, parts[2]))
                : USUAL;
    }

    private static String known(List<String> values, String value) {
        return values.contains(value) ? value : values.get(0);
    }

    String cookie() {
        return theme + "." + units + "." + hand;
    }
}
