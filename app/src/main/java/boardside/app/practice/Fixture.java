package boardside.app.practice;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A match of a league, with the totals posted so far.
 *
 * @param id any non-blank text, unique for the player
 * @param league id of the league
 * @param week number of the week, 1 or more, or 0 where none was said
 * @param first name of the side named first
 * @param second name of the other side
 * @param deadline when it has to be thrown, as the league's clocks show it (yyyy-mm-ddThh:mm), or empty
 * @param games totals by game, game 1 first; shorter where the later ones are not known
 * @param deleted whether it was deleted (and can be brought back)
 */
public record Fixture(
        String id,
        String league,
        int week,
        String first,
        String second,
        String deadline,
        List<Totals> games,
        boolean deleted) {
    /** Checked; games after the last known total are left out. */
    public Fixture {
        if (first.isBlank() || second.isBlank() || first.equals(second)) {
            throw new IllegalArgumentException(
                    "a fixture is between two players, not \"" + first + "\" and \"" + second + "\"");
        }
        if (!(week >= 0 && week <= 999)) {
            throw new IllegalArgumentException("a week is 1 to 999, not " + week);
        }
        int known = games.size();
        while (known > 0 && games.get(known - 1).equals(Totals.NONE)) {
            known--;
        }
        games = List.copyOf(games.subList(0, known));
    }

    /**
     * What was posted of one game; null where nothing was.
     *
     * @param first total of the side named first
     * @param second total of the other side
     */
    public record Totals(@Nullable Integer first, @Nullable Integer second) {
        /** Nothing posted. */
        public static final Totals NONE = new Totals(null, null);

        /** Whether both sides posted. */
        public boolean complete() {
            return first != null && second != null;
        }

        /** Seen from the other side. */
        public Totals turned() {
            return new Totals(second, first);
        }
    }

    /** What was posted of a game, numbered from 1. */
    public Totals game(int number) {
        return number <= games.size() ? games.get(number - 1) : Totals.NONE;
    }

    /** Whether a name is one of the two. */
    public boolean has(String name) {
        return first.equals(name) || second.equals(name);
    }

    /** Who is on the other side of a name. */
    public String against(String name) {
        return first.equals(name) ? second : first;
    }

    /** The same with other totals. */
    public Fixture withGames(List<Totals> others) {
        return new Fixture(id, league, week, first, second, deadline, others, deleted);
    }

    /** The same with one game's totals. */
    public Fixture withGame(int number, Totals totals) {
        List<Totals> all = new ArrayList<>(games);
        while (all.size() < number) {
            all.add(Totals.NONE);
        }
        all.set(number - 1, totals);
        return withGames(all);
    }

    /** The same, deleted or brought back. */
    public Fixture deleted(boolean gone) {
        return new Fixture(id, league, week, first, second, deadline, games, gone);
    }
}
