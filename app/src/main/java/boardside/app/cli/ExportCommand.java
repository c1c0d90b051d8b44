package boardside.app.cli;

import boardside.app.practice.Player;
import boardside.app.transfer.Backups;
import boardside.app.transfer.LogFiles;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes the records out. */
@Command(name = "export", description = "Write the records to standard output, as CSV or all as JSON Lines.")
final class ExportCommand implements Callable<Integer> {
    private final Context context;

    @Option(
            names = "--all",
            description = "Everything, also single throws, taps, notes, bag sets, and seasons run here, as JSON Lines.")
    private boolean all;

    ExportCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        if (all) {
            Backups.exportWithSeasons(context.records(), player.id(), context.out());
        } else {
            LogFiles.write(context.records(), player.id(), context.out());
        }
        return Cli.DONE;
    }
}
