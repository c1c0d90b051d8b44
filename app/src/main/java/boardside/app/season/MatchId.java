package boardside.app.season;

/** Which match of which season. */
public record MatchId(String season, String match) {}
