package boardside.app.cli;

import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.TieBreak;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.rules.Word;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How a season is thrown and counted; what is not said stays as it was, or is as usual. */
final class SeasonRulesOptions {
    @Option(names = "--games", paramLabel = "N", description = "Games a match; 3 unless said.")
    private @Nullable Integer games;

    @Option(names = "--rounds", paramLabel = "N", description = "Rounds a game; 10 unless said.")
    private @Nullable Integer rounds;

    @Option(names = "--win", paramLabel = "POINTS", description = "League points of a game won; 2 unless said.")
    private @Nullable Integer win;

    @Option(names = "--tie", paramLabel = "POINTS", description = "League points of a tie; 1 unless said.")
    private @Nullable Integer tie;

    @Option(names = "--loss", paramLabel = "POINTS", description = "League points of a game lost; 0 unless said.")
    private @Nullable Integer loss;

    @Option(
            names = "--tie-breaks",
            paramLabel = "A,B,…",
            description = "What tells equal points apart, in this order: head-to-head, match-wins, wins, difference,"
                    + " thrown, forfeits; then the lot. \"\" for the lot alone.")
    private @Nullable String tieBreaks;

    @Option(
            names = "--qualifiers",
            paramLabel = "N",
            description = "Players of each division who go to the play-off; 4 unless said, 0 for none.")
    private @Nullable Integer qualifiers;

    @Option(names = "--handicap", negatable = true, description = "Whether matches may have a head start.")
    private @Nullable Boolean handicap;

    /** The rules, from those before. */
    SeasonRules from(SeasonRules before, Meetings meetings) {
        return OddsInputs.checked(
                "--games, --rounds, --win, --tie, --loss, --tie-breaks, --qualifiers",
                () -> new SeasonRules(
                        Objects.requireNonNullElse(games, before.games()),
                        Objects.requireNonNullElse(rounds, before.rounds()),
                        new LeaguePoints(
                                Objects.requireNonNullElse(win, before.points().win()),
                                Objects.requireNonNullElse(tie, before.points().tie()),
                                Objects.requireNonNullElse(loss, before.points().loss())),
                        tieBreaks == null ? before.tieBreaks() : tieBreaks(tieBreaks),
                        meetings,
                        Objects.requireNonNullElse(qualifiers, before.qualifiers()),
                        Objects.requireNonNullElse(handicap, before.handicap())));
    }

    private static List<TieBreak> tieBreaks(String words) {
        return Arrays.stream(words.split(",", -1))
                .map(String::strip)
                .filter(word -> !word.isEmpty())
                .map(word -> Word.of(TieBreak.class, word))
                .toList();
    }
}
