package boardside.app.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;

/** Entry point of the process. */
public final class Main {
    private Main() {}

    /** Runs one command and exits with its status. */
    public static void main(String[] args) {
        PrintStream out = new PrintStream(
                new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)), false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        // The launcher knows whether standard error is a terminal; Java itself, up to 21, cannot tell it of one stream.
        boolean terminal = Boolean.getBoolean("boardside.terminal");
        int status = new Cli(
                        new Surroundings(out, err, System.in, System.getenv(), Clock.systemDefaultZone(), terminal))
                .run(args);
        out.flush();
        System.exit(status);
    }
}
