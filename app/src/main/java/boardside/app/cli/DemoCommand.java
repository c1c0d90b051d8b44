package boardside.app.cli;

import boardside.app.demo.Demo;
import boardside.app.record.Records;
import boardside.app.web.ServerOptions;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Serves the example store; touches no other. */
@Command(name = "demo", description = "Serve eighteen months of an invented player's practice; touches no real data.")
final class DemoCommand implements Callable<Integer> {
    private final Context context;

    @Option(
            names = "--port",
            paramLabel = "N",
            description = "Port to serve on; " + ServeCommand.PORT + " unless said, 0 for any.")
    private int port = ServeCommand.PORT;

    DemoCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        ServerOptions options = new ServerOptions(ServeCommand.checkedPort(port), false, null, true);
        Path folder = folder();
        try {
            Records records = Records.open(folder.resolve("demo.db").toString());
            Demo.fill(records, LocalDate.now(context.surroundings().clock()).minusDays(1));
            return Serving.untilStopped(context, records, options, () -> remove(folder));
        } finally {
            remove(folder);
        }
    }

    private static Path folder() {
        try {
            return Files.createTempDirectory("boardside-demo");
        } catch (IOException e) {
            throw new UncheckedIOException("no room for the example in the folder for temporary files", e);
        }
    }

    private static void remove(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
            for (Path file : deepestFirst) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the example was left behind in " + folder, e);
        }
    }
}
