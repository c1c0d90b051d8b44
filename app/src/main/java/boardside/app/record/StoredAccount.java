package boardside.app.record;

import boardside.app.practice.Account;

/**
 * An account as it lies in the store.
 *
 * @param signIn the name as it is looked up
 * @param password Argon2id, encoded with its parameters
 */
public record StoredAccount(Account account, String signIn, String password) {
    /**
     * The name by which a player differs from all others of the store.
     *
     * @param player what its account or household calls it
     * @param signIn of the account; empty for a household without accounts
     */
    public static String uniqueName(String player, String signIn) {
        return signIn.isEmpty() ? player : player + " (" + signIn + ")";
    }
}
