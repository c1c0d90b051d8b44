package boardside.app.cli;

import boardside.app.practice.League;
import boardside.app.practice.Player;
import boardside.engine.odds.LeaguePoints;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A new league that somebody else runs. */
@Command(name = "new", description = "Add a league that somebody else runs.")
final class LeagueNewCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "NAME", description = "What it is called.")
    private String name = "";

    @Option(names = "--me", paramLabel = "NAME", description = "Your name in its fixtures; the player's unless said.")
    private @Nullable String me;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "Time zone of its deadlines, such as America/Chicago; the one here unless said.")
    private @Nullable String zone;

    @Option(names = "--games", paramLabel = "N", description = "Games a match; 3 unless said.")
    private int games = League.USUAL_GAMES;

    @Option(names = "--rounds", paramLabel = "N", description = "Rounds a game; 10 unless said.")
    private int rounds = League.USUAL_ROUNDS;

    @Option(names = "--win", paramLabel = "POINTS", description = "League points of a win; 2 unless said.")
    private int win = LeaguePoints.STANDARD.win();

    @Option(names = "--tie", paramLabel = "POINTS", description = "League points of a tie; 1 unless said.")
    private int tie = LeaguePoints.STANDARD.tie();

    @Option(names = "--loss", paramLabel = "POINTS", description = "League points of a loss; 0 unless said.")
    private int loss = LeaguePoints.STANDARD.loss();

    LeagueNewCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        LeaguePoints points = OddsInputs.checked("--win, --tie, --loss", () -> new LeaguePoints(win, tie, loss));
        Player player = context.writingPlayer();
        String here = context.surroundings().clock().getZone().getId();
        League league = OddsInputs.checked(
                "--zone, --games, --rounds",
                () -> new League(
                        "",
                        name,
                        Objects.requireNonNullElse(me, player.name()),
                        Objects.requireNonNullElse(zone, here),
                        games,
                        rounds,
                        points,
                        "",
                        false));
        League saved = context.records().leagues().save(player.id(), league);
        context.answer(saved, "New league: " + saved.name());
        return Cli.DONE;
    }
}
