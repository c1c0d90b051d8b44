package boardside.bench.fault;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;

/** The program as it was just built, for short lives: with what starts soonest, whatever that costs later. */
public final class Built {
    private Built() {}

    /** What starts it with this Java. */
    public static List<String> command() {
        Path jar = Path.of("..", "app", "target", "boardside.jar");
        assertThat(jar).as("built by mvn package, before this module").exists();
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Djfr.unsupported.vm=true",
                "-jar",
                jar.toString());
    }
}
