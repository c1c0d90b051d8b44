package boardside.app.cli;

import boardside.app.transfer.Backups;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Brings a backup back. */
@Command(name = "restore", description = "Bring back a backup, whole or not at all.")
final class RestoreCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(index = "0", paramLabel = "FILE", description = "The backup.")
    private Path file = Path.of("");

    @Option(names = "--force", description = "Replace what the store holds.")
    private boolean force;

    RestoreCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Backups.Contents contents;
        try (Bar bar = new Bar(context)) {
            contents = Backups.restore(context.records(), file, force, bar);
        }
        context.answer(contents, context.quiet() ? "" : "Restored: " + BackupCommand.told(contents));
        return Cli.DONE;
    }
}
