package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.web.ServerOptions;
import java.util.concurrent.Callable;
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

    ServeCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        ServerOptions options = new ServerOptions(checkedPort(port), lan, null, false);
        return Serving.untilStopped(context, context.records(), options);
    }

    /** The port, if it can be one. */
    static int checkedPort(int port) {
        if (!(port >= 0 && port <= 65_535)) {
            throw new Failure.BadInput("--port: a port is 0 to 65535, not " + port);
        }
        return port;
    }
}
