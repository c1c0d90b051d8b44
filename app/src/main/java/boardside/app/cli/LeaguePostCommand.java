package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.LeagueState;
import boardside.app.record.Leagues;
import boardside.app.transfer.PastedFixtures;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Fixtures and results as somebody wrote them. */
@Command(
        name = "post",
        description = {
            "Take fixtures and results, a match a line: \"Ash v Bea\", or with totals by game: \"Ash v Bea 88-92, 75-?\".",
            "A line \"Week 3, due 29 Nov 9 pm\" holds for those after it. What is known already is not added twice."
        })
final class LeaguePostCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(index = "0", paramLabel = "LEAGUE", description = "Name of the league.")
    private String league = "";

    @Parameters(index = "1", paramLabel = "FILE", description = "A text file, or - for standard input.")
    private String file = "";

    LeaguePostCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        LeagueState state = LeagueCommand.named(context, player.id(), league);
        Leagues.Taken taken = context.records()
                .leagues()
                .post(
                        player.id(),
                        state.league().id(),
                        PastedFixtures.read(
                                text(context, file),
                                LocalDate.now(context.surroundings().clock())));
        context.answer(
                taken, taken.added() + " added, " + taken.changed() + " changed, " + taken.same() + " known already");
        return Cli.DONE;
    }

    /** The text of a file, or of standard input for -. */
    static String text(Context context, String file) {
        try {
            byte[] bytes =
                    file.equals("-") ? context.surroundings().in().readAllBytes() : Files.readAllBytes(Path.of(file));
            return new String(bytes, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new Failure.BadInput(file + " cannot be read (" + e + "); give the path of a text file, or -");
        }
    }
}
