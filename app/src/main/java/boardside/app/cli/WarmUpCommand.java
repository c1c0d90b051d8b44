package boardside.app.cli;

import boardside.app.record.Records;
import boardside.app.web.Server;
import boardside.app.web.ServerOptions;
import java.io.IOException;
import java.net.URI;
import java.net.URLConnection;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/**
 * Serves a few pages of an empty store to itself and ends. The launcher runs it once after a build, so that the Java
 * runtime can keep an archive of the classes a start needs (JEP 350), which later starts read instead of the jar.
 */
@Command(name = "warm-up", hidden = true, description = "Serve a few pages to itself and end.")
final class WarmUpCommand implements Callable<Integer> {
    private static final List<String> PAGES = List.of("", "start/total");

    private final Context context;

    @Parameters(
            arity = "0..1",
            paramLabel = "FOLDER",
            description = "Where to put SQLite's library for this machine, so that starts need not unpack it.")
    private @Nullable Path driver;

    WarmUpCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() throws IOException {
        if (driver != null) {
            Records.unpackDriver(driver);
        }
        Path folder = Files.createTempDirectory("boardside");
        try {
            // Opened twice: the second time as an existing store, the way most starts find it.
            Records.open(folder.resolve("empty.db").toString()).close();
            try (Records records = Records.open(folder.resolve("empty.db").toString());
                    Server server = Server.start(
                            records,
                            ServerOptions.local(0),
                            context.surroundings().clock())) {
                for (String page : PAGES) {
                    URLConnection asked =
                            URI.create(server.address() + page).toURL().openConnection();
                    asked.getInputStream().readAllBytes();
                }
            }
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
        return Cli.DONE;
    }
}
