package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Options in the environment and in the settings file. Where a command would go on to serve, its port is refused first. */
class SettingsTest {
    @TempDir
    private Path folder;

    private Ran run(Map<String, String> environment, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = new Cli(new Surroundings(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        new ByteArrayInputStream(new byte[0]),
                        environment,
                        Clock.fixed(Ran.NOW, ZoneOffset.UTC),
                        false))
                .run(args);
        return new Ran(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private Path settings(String text) throws Exception {
        Path file = folder.resolve("boardside").resolve("settings.properties");
        Files.createDirectories(folder.resolve("boardside"));
        Files.writeString(file, text);
        return file;
    }

    @Test
    void anOptionWinsOverTheEnvironmentAndThatOverTheFile() throws Exception {
        settings("port = 70003\n");
        Map<String, String> both = Map.of("XDG_CONFIG_HOME", folder.toString(), "BOARDSIDE_PORT", "70002");
        assertThat(run(both, "serve", "--port", "70001").err()).contains("not 70001");
        assertThat(run(both, "serve").err()).contains("not 70002");
        assertThat(run(Map.of("XDG_CONFIG_HOME", folder.toString()), "serve").err())
                .contains("not 70003");
        assertThat(run(Map.of("HOME", "/nowhere"), "serve", "--port", "70004").err())
                .contains("not 70004");
        // Another command's option of that name is its own.
        assertThat(run(both, "demo", "--port", "70005").err()).contains("not 70005");
    }

    @Test
    void theStoreAndThePlayerAreSetForEveryCommand() throws Exception {
        Path store = folder.resolve("set.db");
        Map<String, String> set = Map.of("BOARDSIDE_DATA", store.toString(), "BOARDSIDE_PLAYER", "Bo");
        assertThat(run(set, "record", "total", "3-1-0").status()).isZero();
        assertThat(store).exists();
        assertThat(run(set, "export", "--quiet").out()).contains("total");
        assertThat(run(set, "export", "--player", "Kim").err()).contains("there is no player \"Kim\"");
        assertThat(run(set, "check", "--data", folder.resolve("other.db").toString())
                        .out())
                .contains("other.db is sound");
        Path file = settings("data = " + store + "\nplayer = Bo\n");
        assertThat(run(Map.of("BOARDSIDE_SETTINGS", file.toString()), "export").out())
                .contains("total");
    }

    @Test
    void aSwitchIsYesOrNoAndCanBeUndone() {
        Map<String, String> behind = Map.of("BOARDSIDE_BEHIND_PROXY", "yes", "BOARDSIDE_PORT", "70000");
        // --behind-proxy without --hosted is told after the port.
        Map<String, String> only = Map.of("BOARDSIDE_BEHIND_PROXY", "yes", "BOARDSIDE_PORT", "0");
        assertThat(run(behind, "serve").err()).contains("not 70000");
        assertThat(run(only, "serve").err()).contains("add --hosted");
        assertThat(run(only, "serve", "--behind-proxy").err()).contains("add --hosted");
        assertThat(run(only, "serve", "--no-behind-proxy", "--certificate", "x.pem")
                        .err())
                .contains("add --tls");
        assertThat(run(Map.of("BOARDSIDE_BEHIND_PROXY", "perhaps"), "serve").err())
                .isEqualTo("BOARDSIDE_BEHIND_PROXY: yes or no, not \"perhaps\"\n");
    }

    @Test
    void whatIsNoSettingIsNamed() throws Exception {
        Path file = settings("prot = 8030\njson = yes\n");
        Ran ran = run(Map.of("XDG_CONFIG_HOME", folder.toString()), "serve");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err())
                .startsWith("the settings file " + file + ": \"json\" is no setting; there are ")
                .contains("\"prot\" is no setting", "behind-proxy, ", ", port, ");
        assertThat(run(Map.of("BOARDSIDE_SETTINGS", "/nowhere/settings"), "serve")
                        .err())
                .isEqualTo("BOARDSIDE_SETTINGS: there is no file /nowhere/settings; make it, or unset"
                        + " BOARDSIDE_SETTINGS\n");
    }

    @Test
    void helpNamesThem() {
        assertThat(run(Map.of(), "serve", "--help").out())
                .contains("BOARDSIDE_BEHIND_PROXY=yes", "boardside/settings.properties", "port = 8030", "--[no-]lan");
    }
}
