package boardside.app.cli;

import java.io.InputStream;
import java.io.PrintStream;
import java.time.Clock;
import java.util.Map;

/**
 * What a command finds around it.
 *
 * @param out answers alone
 * @param err everything said to a person
 * @param in standard input
 * @param environment the process's environment variables
 * @param clock the time, in the zone of whoever asks
 * @param terminal whether a person watches
 */
public record Surroundings(
        PrintStream out,
        PrintStream err,
        InputStream in,
        Map<String, String> environment,
        Clock clock,
        boolean terminal) {}
