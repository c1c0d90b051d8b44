package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import boardside.app.web.Certificate;
import boardside.app.web.Hosting;
import boardside.app.web.Network;
import boardside.app.web.ServerOptions;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Serves the pages. */
@Command(name = "serve", description = "Serve the pages, to this machine alone unless told otherwise.")
final class ServeCommand implements Callable<Integer> {
    /** Where the pages are unless told otherwise. */
    static final int PORT = 8027;

    private final Context context;

    @Option(names = "--port", paramLabel = "N", description = "Port to serve on; " + PORT + " unless said, 0 for any.")
    private int port = PORT;

    @Option(names = "--lan", description = "Serve the phones of the house network too, once they are let in.")
    private boolean lan;

    @Option(
            names = "--tls",
            description = "HTTPS, with a certificate made on first use and kept beside the store, or a given one.")
    private boolean tls;

    @Option(
            names = "--certificate",
            paramLabel = "FILE",
            description = "The certificate with its key for --tls: PKCS12, or PEM, also in several files.")
    private List<Path> certificate = List.of();

    @Option(
            names = "--hosted",
            description =
                    "For a club or an organiser: everybody signs in to an account and sees their own practice alone."
                            + " Without --lan it listens to this machine only, for a proxy on it.")
    private boolean hosted;

    @Option(
            names = "--public",
            paramLabel = "URL",
            description = "With --hosted: the address people use, such as https://boards.example.org; may be repeated."
                    + " Requests under other names are refused.")
    private List<String> addresses = List.of();

    @Option(
            names = "--behind-proxy",
            description =
                    "With --hosted: a reverse proxy stands before it; its X-Forwarded-For and X-Forwarded-Proto are"
                            + " believed.")
    private boolean proxied;

    ServeCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        checkedPort(port);
        Hosting hosting = hosting();
        ServerOptions options = new ServerOptions(port, lan, certificate(), false, hosting);
        return Serving.untilStopped(context, context.records(), options);
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
