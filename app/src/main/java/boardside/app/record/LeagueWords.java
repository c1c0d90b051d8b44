package boardside.app.record;

import boardside.app.practice.Fixture;
import boardside.app.practice.League;
import java.util.ArrayList;
import java.util.List;

/** Changes of leagues and fixtures in plain words. */
final class LeagueWords {
    private static final int MOST_TOLD = 3;

    private LeagueWords() {}

    static String told(League earlier, League later) {
        List<String> parts = new ArrayList<>();
        Corrections.part(parts, "name", earlier.name(), later.name());
        Corrections.part(parts, "your name there", earlier.me(), later.me());
        Corrections.part(parts, "time zone", earlier.zone(), later.zone());
        Corrections.part(parts, "games a match", earlier.games(), later.games());
        Corrections.part(parts, "rounds a game", earlier.rounds(), later.rounds());
        Corrections.part(parts, "win, tie, loss", points(earlier), points(later));
        Corrections.part(parts, "note", earlier.note(), later.note());
        if (earlier.deleted() != later.deleted()) {
            parts.add(later.deleted() ? "deleted" : "brought back");
        }
        return String.join("; ", parts);
    }

    private static String points(League league) {
        return league.points().win() + ", " + league.points().tie() + ", "
                + league.points().loss();
    }

    static String told(List<Fixture> earlier, List<Fixture> later) {
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < later.size() && i < MOST_TOLD; i++) {
            parts.add(told(earlier.get(i), later.get(i)));
        }
        if (later.size() > MOST_TOLD) {
            parts.add("and " + (later.size() - MOST_TOLD) + " more");
        }
        return String.join("; ", parts);
    }

    private static String told(Fixture earlier, Fixture later) {
        String what = later.first() + " v " + later.second() + (later.week() == 0 ? "" : " in week " + later.week());
        if (earlier.deleted() != later.deleted()) {
            return what + (later.deleted() ? " deleted" : " added");
        }
        List<String> parts = new ArrayList<>();
        Corrections.part(
                parts, "names", earlier.first() + " v " + earlier.second(), later.first() + " v " + later.second());
        Corrections.part(parts, "week", earlier.week(), later.week());
        Corrections.part(parts, "deadline", earlier.deadline(), later.deadline());
        Corrections.part(parts, "totals", totals(earlier), totals(later));
        return what + ", " + String.join(", ", parts);
    }

    private static String totals(Fixture fixture) {
        return String.join(
                " ",
                fixture.games().stream()
                        .map(game -> shown(game.first()) + "-" + shown(game.second()))
                        .toList());
    }

    private static String shown(@org.jspecify.annotations.Nullable Integer total) {
        return total == null ? "?" : total.toString();
    }
}
