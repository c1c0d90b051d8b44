package boardside.app.practice;

import org.jspecify.annotations.Nullable;

/**
 * Four matching bags a player throws.
 *
 * @param id made by whoever first named it, UUIDv7
 * @param name unique for the player, not blank
 * @param slowSpeed speed of the slow face, 1..10 on the scale that sellers print, or null
 * @param fastSpeed speed of the fast face, 1..10, or null
 * @param weight ounces, above 0, or null
 * @param fill what is inside, or empty
 * @param note free text, or empty
 * @param retired no longer offered for new runs
 */
public record BagSet(
        String id,
        String name,
        @Nullable Integer slowSpeed,
        @Nullable Integer fastSpeed,
        @Nullable Double weight,
        String fill,
        String note,
        boolean retired) {
    /** A bag set of which only the name is known. */
    public static BagSet named(String id, String name) {
        return new BagSet(id, name, null, null, null, "", "", false);
    }
}
