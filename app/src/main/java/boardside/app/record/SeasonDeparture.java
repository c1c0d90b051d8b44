package boardside.app.record;

import boardside.app.account.Departure;
import boardside.app.json.Json;
import boardside.app.practice.Player;
import boardside.app.season.SeasonParts;
import boardside.app.season.StoredSeasonChange;
import boardside.app.store.SeasonRows;
import boardside.app.store.Transaction;

/**
 * What becomes of seasons when a player leaves for good: the others' results stand, so their matches stay, under a neutral
 * name that says nothing of them, also in what was changed. Substitutes are told by a name alone and stay.
 */
final class SeasonDeparture implements Departure {
    /** Characters at the end of an id that are as good as unique in a season. */
    private static final int TELLING = 6;

    @Override
    public void leaves(Transaction rows, Player player) {
        for (SeasonRows.Linked entrant : rows.seasons().of(player.id())) {
            rows.seasons().changed(entrant.season());
            String id = entrant.entrant();
            String name = "Former player " + id.substring(Math.max(0, id.length() - TELLING));
            rows.seasons().forget(entrant, name);
            rows.matches().forgetStreams(entrant.season(), id);
            rows.matches().allChanged(entrant.season());
            for (StoredSeasonChange change : rows.seasons().changes(entrant.season())) {
                rows.seasons()
                        .rewrite(new StoredSeasonChange(
                                change.season(),
                                change.id(),
                                change.at(),
                                change.what(),
                                renamed(change.earlier(), id, name),
                                renamed(change.later(), id, name),
                                change.undoneAt()));
            }
        }
    }

    private static String renamed(String parts, String entrant, String name) {
        return Json.write(Json.read(parts, SeasonParts.class).renamed(entrant, name));
    }
}
