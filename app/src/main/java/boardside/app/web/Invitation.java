package boardside.app.web;

import java.time.Instant;

/**
 * How another device gets in.
 *
 * @param link leads to the pairing page with the code filled in
 * @param code to type there by hand
 * @param until when it stops to work
 */
public record Invitation(String link, String code, Instant until) {
    /** The code in two halves, easier to read across a room. */
    public String spaced() {
        int half = code.length() / 2;
        return code.substring(0, half) + " " + code.substring(half);
    }
}
