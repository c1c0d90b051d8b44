package boardside.app.web;

import boardside.app.practice.Account;
import boardside.app.practice.Player;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What every page's frame needs.
 *
 * @param texts the wording
 * @param files scripts and styles
 * @param title of the page, already worded
 * @param path the path asked for, to mark where one is
 * @param token goes with every form, against requests forged by other sites
 * @param look how this device shows pages
 * @param demo whether the store is the example
 * @param hosted whether accounts are required
 * @param account that is signed in, or null
 * @param player whose records are shown, or null before anybody is known
 * @param notice something to say once, already worded, or null
 */
public record Page(
        Texts texts,
        StaticFiles files,
        String title,
        String path,
        String token,
        Look look,
        boolean demo,
        boolean hosted,
        @Nullable Account account,
        @Nullable Player player,
        @Nullable String notice) {
    /** A text with its values filled in. */
    public String t(String key, Object... values) {
        return texts.of(key, values);
    }

    /** Where a script or style is. */
    public String file(String name) {
        return files.address(name);
    }

    /** The places that are one tap away from everywhere, in the bar at the bottom. */
    public List<String> places() {
        return List.of("throw", "form", "journal", "bags", "more");
    }

    /** Where a place is. */
    public String address(String place) {
        return place.equals("throw") ? "/" : "/" + place;
    }

    /** "page" where a link leads to the page shown, else null: the value of aria-current. */
    public @Nullable String current(String link) {
        boolean here = link.equals("/") ? path.equals("/") : path.startsWith(link);
        return here ? "page" : null;
    }

    public String theme() {
        return look.theme();
    }

    public String hand() {
        return look.hand();
    }

    public String units() {
        return look.units();
    }
}
