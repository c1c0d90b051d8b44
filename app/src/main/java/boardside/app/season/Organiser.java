package boardside.app.season;

/**
 * Who runs a season.
 *
 * @param account id of the account
 * @param name of the account
 * @param owner whether it is the one that made the season, or was given it
 */
public record Organiser(String account, String name, boolean owner) {}
