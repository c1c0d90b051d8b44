package boardside.app.account;

import boardside.app.practice.Player;
import boardside.app.store.Transaction;

/**
 * Told when a player leaves because their account is deleted, before anything of theirs is: what others share with them (a
 * league's fixtures) is kept here under a neutral name. Runs in the transaction that deletes; whatever of the player's own
 * rows it leaves behind is removed right after it.
 */
public interface Departure {
    /** The player is about to be removed. */
    void leaves(Transaction rows, Player player);
}
