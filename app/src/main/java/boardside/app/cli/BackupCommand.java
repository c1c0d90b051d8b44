package boardside.app.cli;

import boardside.app.transfer.Backups;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Writes a backup. */
@Command(
        name = "backup",
        description = "Write all players' records to one file, also while the server runs, and read it back.")
final class BackupCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(index = "0", paramLabel = "FILE", description = "The backup; an earlier backup there is replaced.")
    private Path file = Path.of("");

    BackupCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Backups.Contents contents;
        try (Bar bar = new Bar(context)) {
            contents = Backups.write(context.records(), file, bar);
        }
        context.answer(contents, context.quiet() ? "" : "Backed up and read back: " + told(contents));
        return Cli.DONE;
    }

    /** What a backup holds, in words. */
    static String told(Backups.Contents contents) {
        return Words.count(contents.players(), "player") + ", " + Words.count(contents.bags(), "bag set") + ", "
                + Words.count(contents.runs(), "run") + ", " + Words.count(contents.rounds(), "round") + ", "
                + Words.count(contents.bagsThrown(), "bag") + " thrown";
    }
}
