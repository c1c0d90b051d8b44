package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
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
            contents = Backups.restore(store(bar), file, force, bar);
        }
        context.answer(contents, context.quiet() ? "" : "Restored: " + BackupCommand.told(contents));
        return Cli.DONE;
    }

    /** The store; a damaged one is set aside if it may be replaced and the backup is good. */
    private Records store(Bar bar) {
        try {
            return context.soundRecords();
        } catch (Failure.StoreUnusable e) {
            if (!e.damaged() || !force) {
                throw e;
            }
            Backups.read(file, bar);
            Path aside = Records.setAside(
                    context.location(), context.surroundings().clock().instant());
            context.say("The damaged store was set aside as " + aside);
            return context.records();
        }
    }
}
