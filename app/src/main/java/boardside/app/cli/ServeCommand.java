package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import boardside.app.transfer.DailyBackups;
import boardside.app.watch.Logs;
import boardside.app.web.Certificate;
import boardside.app.web.Hosting;
import boardside.app.web.Network;
import boardside.app.web.ServerOptions;
import boardside.engine.rules.Word;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Serves the pages. */
@Command(
        name = "serve",
        description = "Serve the pages, to this machine alone unless told otherwise.",
        footer = {
            "%nEach of these options, and --data and --player of every command, may also be set once and for all:"
                    + " in the environment as BOARDSIDE_ and its name (BOARDSIDE_BEHIND_PROXY=yes), or in the file"
                    + " boardside/settings.properties of your configuration folder (~/.config, or $XDG_CONFIG_HOME; another"
                    + " file: BOARDSIDE_SETTINGS) as a line such as%n    port = 8030%nAn option wins over the environment, the"
                    + " environment over the file. What is repeated is separated by commas there, and a switch is yes or no;"
                    + " --no-lan and its like undo one.",
            "%nExit status: 0 done, 2 wrong usage or bad input."
        })
final class ServeCommand implements Callable<Integer> {
    /** Where the pages are unless told otherwise. */
    static final int PORT = 8027;

    private final Context context;

    @Option(names = "--port", paramLabel = "N", description = "Port to serve on; " + PORT + " unless said, 0 for any.")
    private int port = PORT;

    @Option(
            names = "--lan",
            negatable = true,
            fallbackValue = "true",
            description = "Serve the phones of the house network too, once they are let in.")
    private boolean lan;

    @Option(
            names = "--tls",
            negatable = true,
            fallbackValue = "true",
            description = "HTTPS, with a certificate made on first use and kept beside the store, or a given one.")
    private boolean tls;

    @Option(
            names = "--certificate",
            split = ",",
            paramLabel = "FILE",
            description = "The certificate with its key for --tls: PKCS12, or PEM, also in several files.")
    private List<Path> certificate = List.of();

    @Option(
            names = "--hosted",
            negatable = true,
            fallbackValue = "true",
            description =
                    "For a club or an organiser: everybody signs in to an account and sees their own practice alone."
                            + " Without --lan it listens to this machine only, for a proxy on it.")
    private boolean hosted;

    @Option(
            names = "--public",
            split = ",",
            paramLabel = "URL",
            description = "With --hosted: the address people use, such as https://boards.example.org; may be repeated."
                    + " Requests under other names are refused.")
    private List<String> addresses = List.of();

    @Option(
            names = "--behind-proxy",
            negatable = true,
            fallbackValue = "true",
            description =
                    "With --hosted: a reverse proxy stands before it; its X-Forwarded-For and X-Forwarded-Proto are"
                            + " believed.")
    private boolean proxied;

    @Option(
            names = "--open-metrics",
            negatable = true,
            fallbackValue = "true",
            description =
                    "Show the figures at /metrics to everybody who can reach the server, not to this machine alone.")
    private boolean openMetrics;

    @Option(
            names = "--backups",
            paramLabel = "FOLDER|off",
            description = "Where a backup a day goes: unless said, the folder backups beside the store, and nowhere for"
                    + " PostgreSQL. The last " + DailyBackups.DAYS + " and the last of each of " + DailyBackups.WEEKS
                    + " weeks are kept.")
    private String backups = "";

    @Option(
            names = "--log",
            paramLabel = "text|json",
            description = "How lines of the log on standard error look; text unless said.")
    private String log = "text";

    @Option(
            names = "--log-level",
            paramLabel = "LEVEL",
            description =
                    "What is logged: error, warn (the default), info (start, stop, backups) or debug (each request).")
    private String level = "warn";

    ServeCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        checkedPort(port);
        Logs.set(
                OddsInputs.checked("--log", () -> Word.of(Logs.Format.class, log)),
                OddsInputs.checked("--log-level", () -> Word.of(Logs.Detail.class, level)));
        Hosting hosting = hosting();
        ServerOptions options = new ServerOptions(port, lan, certificate(), false, openMetrics, hosting);
        Records records = context.soundRecords();
        Path kept = backups();
        if (kept != null && records.isEmpty()) {
            DailyBackups.newest(kept)
                    .ifPresent(newest -> context.say("This store is empty, but there is a backup: " + newest
                            + ". To bring it back: stop this and run boardside restore " + newest + " --data "
                            + context.location()));
        }
        return Serving.untilStopped(context, records, options, kept);
    }

    /** Where automatic backups go, or null for none. */
    private @Nullable Path backups() {
        if (backups.equals("off")) {
            return null;
        }
        if (!backups.isBlank()) {
            return Path.of(backups).toAbsolutePath();
        }
        // A database on a server is backed up there, unless told otherwise.
        return context.location().startsWith("jdbc:") ? null : folder().resolve("backups");
    }

    private @Nullable Hosting hosting() {
        if (hosted) {
            return Hosting.of(addresses, proxied, tls);
        }
        if (!addresses.isEmpty() || proxied) {
            throw new Failure.BadInput("--public and --behind-proxy are for hosted mode; add --hosted");
        }
        return null;
    }

    private @Nullable Certificate certificate() {
        if (!certificate.isEmpty()) {
            if (!tls) {
                throw new Failure.BadInput("--certificate: a certificate is for HTTPS; add --tls");
            }
            return Certificate.given(
                    certificate,
                    context.surroundings().environment().getOrDefault("BOARDSIDE_CERTIFICATE_PASSWORD", ""));
        }
        return tls
                ? Certificate.homeMade(
                        folder(), Network.here(), context.surroundings().clock().instant())
                : null;
    }

    /** The store's folder; for a store on a server, the one a store of this user's own would lie in. */
    private Path folder() {
        String location = context.location();
        String file = location.startsWith("jdbc:")
                ? Records.defaultLocation(context.surroundings().environment())
                : location;
        return Objects.requireNonNull(Path.of(file).toAbsolutePath().getParent());
    }

    /** The port, if it can be one. */
    static int checkedPort(int port) {
        if (!(port >= 0 && port <= 65_535)) {
            throw new Failure.BadInput("--port: a port is 0 to 65535, not " + port);
        }
        return port;
    }
}
