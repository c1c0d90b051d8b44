package boardside.app.web;

import boardside.app.practice.Account;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import org.jspecify.annotations.Nullable;

/**
 * What every page's frame needs.
 *
 * @param texts the wording
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

    /** "page" where a link leads to the page shown, else null: the value of aria-current. */
    public @Nullable String current(String link) {
        boolean here = link.equals("/") ? path.equals("/") : path.startsWith(link);
        return here ? "page" : null;
    }

    /** Whether whoever looks may run leagues; in a household everybody may. */
    public boolean organiser() {
        return !hosted || account != null && account.role().covers(Role.ORGANISER);
    }

    /** Whether whoever is signed in is a host. */
    public boolean host() {
        return account != null && account.role() == Role.HOST;
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
