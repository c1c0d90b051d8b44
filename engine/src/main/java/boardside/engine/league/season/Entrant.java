package boardside.engine.league.season;

import boardside.engine.rules.Word;
import org.jspecify.annotations.Nullable;

/**
 * Somebody who plays in a season.
 *
 * @param id unique in the season
 * @param name unique in the season, capitals aside
 * @param division index of the division, 0 or more
 * @param number in the division's schedule, 1 or more
 * @param standing whether they are still in it
 * @param seed in the play-off, 1 for the best; 0 before there is one, or for those who are not in it
 * @param player number of the player whose records are kept here, or null
 */
public record Entrant(
        String id,
        String name,
        int division,
        int number,
        Standing standing,
        int seed,
        @Nullable Integer player) {
    /** Checked. */
    public Entrant {
        if (id.isBlank() || name.isBlank()) {
            throw new IllegalArgumentException("an entrant has an id and a name");
        }
        if (!(division >= 0 && number >= 1 && seed >= 0)) {
            throw new IllegalArgumentException("an entrant is in a division from 0 on with a number from 1 on, not "
                    + division + " and " + number);
        }
    }

    /** Whether somebody is in the season, or how they left it. */
    public enum Standing implements Word {
        IN,
        /** Left after half their matches: what they threw counts, the rest is forfeited. */
        LEFT,
        /** Left before half their matches: nothing of theirs counts, for nobody. */
        STRUCK
    }

    /** Whether they are still in the season. */
    public boolean in() {
        return standing == Standing.IN;
    }

    /** The same person under another name. */
    public Entrant named(String other) {
        return new Entrant(id, other, division, number, standing, seed, player);
    }

    /** The same, out of the season. */
    public Entrant leaving(Standing how) {
        return new Entrant(id, name, division, number, how, seed, player);
    }

    /** The same, as a player whose records are kept here, or as none. */
    public Entrant playedBy(@Nullable Integer whose) {
        return new Entrant(id, name, division, number, standing, seed, whose);
    }

    /** The same with a seed. */
    public Entrant seeded(int place) {
        return new Entrant(id, name, division, number, standing, place, player);
    }
}
