package boardside;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The launcher, in a house of its own, with a Java and a Maven that only tell what they were asked. */
class LauncherTest {
    private static final Instant BUILT = Instant.parse("2026-06-01T18:00:00Z");

    @TempDir
    Path folder;

    private Path home;
    private Path tools;
    private Path jar;
    private Path archive;
    private String atExit = "echo classes >\"${asked#*=}\"";

    private record Ran(int status, String out, String err) {}

    @BeforeEach
    void lay() throws Exception {
        home = Files.createDirectories(folder.resolve("a house"));
        tools = Files.createDirectories(folder.resolve("bin"));
        jar = home.resolve("app/target/boardside.jar");
        archive = home.resolve("app/target/boardside.jsa");
        Files.copy(Path.of("..", "boardside"), home.resolve("boardside"));
        script(
                home.resolve("mvnw"),
                "echo maven \"$@\"; mkdir -p engine/target/classes; touch app/target/boardside.jar");
        for (String source :
                List.of("pom.xml", "app/pom.xml", "engine/pom.xml", "app/src/main/A", "engine/src/main/B")) {
            Files.createDirectories(home.resolve(source).getParent());
            Files.writeString(home.resolve(source), "");
        }
        for (String tool :
                List.of("dirname", "readlink", "sed", "head", "tail", "find", "mkdir", "touch", "rm", "mv")) {
            Path found = Stream.of("/usr/bin", "/bin")
                    .map(bin -> Path.of(bin, tool))
                    .filter(Files::exists)
                    .findFirst()
                    .orElseThrow();
            script(tools.resolve(tool), "exec " + found + " \"$@\"");
        }
    }

    private void java(String version) throws IOException {
        script(
                tools.resolve("java"),
                "if [ \"$1\" = -version ]; then echo 'openjdk version \"" + version
                        + "\" 2026-01-01' >&2; else echo java \"$@\"; fi\n"
                        + "for asked; do case $asked in -XX:ArchiveClassesAtExit=*|-XX:AOTCacheOutput=*) " + atExit
                        + ";; esac; done");
        script(folder.resolve("bin/javac"), "exit 1");
    }

    private static void script(Path file, String body) throws IOException {
        Files.deleteIfExists(file);
        Files.writeString(file, "#!/bin/sh\n" + body + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private void built() throws IOException {
        Files.createDirectories(jar.getParent());
        Files.writeString(jar, "");
        Files.writeString(archive, "classes");
        try (Stream<Path> all = Files.walk(home)) {
            for (Path path : all.toList()) {
                Files.setLastModifiedTime(path, FileTime.from(BUILT.minusSeconds(60)));
            }
        }
        Files.setLastModifiedTime(jar, FileTime.from(BUILT));
        Files.setLastModifiedTime(archive, FileTime.from(BUILT));
    }

    private Ran run(String... arguments) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(
                Stream.concat(Stream.of(home.resolve("boardside").toString()), Stream.of(arguments))
                        .toList());
        builder.environment().clear();
        builder.environment().put("PATH", tools.toString());
        Path out = folder.resolve("out");
        Path err = folder.resolve("err");
        builder.redirectOutput(out.toFile()).redirectError(err.toFile());
        Process process = builder.start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return new Ran(process.exitValue(), Files.readString(out), Files.readString(err));
    }

    @Test
    void withoutJavaItSaysWhatToInstall() throws Exception {
        built();
        Ran none = run("--version");
        assertThat(none.status()).isEqualTo(2);
        assertThat(none.out()).isEmpty();
        assertThat(none.err()).contains("needs Java 17 or later.").contains("openjdk-17-jdk");
        java("11.0.2");
        assertThat(run("--version").err()).contains("needs Java 17 or later, and found only Java 11.");
        java("1.8.0_301");
        assertThat(run("--version").status()).isEqualTo(2);
    }

    @Test
    void builtHouseJustRuns() throws Exception {
        built();
        java("17.0.15");
        Ran ran = run("record", "two words");
        assertThat(ran.status()).isZero();
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).startsWith("java ").endsWith("-jar " + jar + " record two words\n");
    }

    @Test
    void buildsOnFirstUseAndWhenASourceIsNewer() throws Exception {
        java("17.0.15");
        Ran first = run("--version");
        assertThat(first.err()).contains("Building Boardside");
        assertThat(first.out()).startsWith("java ");
        assertThat(Files.readString(home.resolve("app/target/build.log"))).startsWith("maven -B");
        assertThat(home.resolve("engine/target/classes"))
                .as("what no checker looked at, which Maven would take for up to date")
                .doesNotExist();
        built();
        assertThat(run("--version").err()).isEmpty();
        Files.setLastModifiedTime(home.resolve("engine/src/main/B"), FileTime.from(BUILT.plusSeconds(1)));
        assertThat(run("--version").err()).contains("Building Boardside");
        assertThat(run("--version").err()).isEmpty();
    }

    @Test
    void makesTheArchiveOfClassesOnceAfterABuildOfAnybodys() throws Exception {
        built();
        java("17.0.15");
        assertThat(run("--version").out()).contains("-XX:SharedArchiveFile=" + archive);
        // Maven alone has built it anew.
        Files.setLastModifiedTime(jar, FileTime.from(BUILT.plusSeconds(1)));
        Ran ran = run("--version");
        assertThat(ran.err()).contains("later starts faster").doesNotContain("Building");
        assertThat(ran.out()).contains("-XX:SharedArchiveFile=" + archive).doesNotContain("warm-up");
        assertThat(Files.readString(home.resolve("app/target/build.log"))).contains("-jar " + jar + " warm-up");
        assertThat(Files.readString(archive)).isEqualTo("classes\n");
        assertThat(run("--version").err()).isEmpty();
        assertThat(folder(archive)).containsExactlyInAnyOrder("boardside.jar", "boardside.jsa", "build.log");
    }

    @Test
    void anotherJavaGetsAnArchiveOfItsOwn() throws Exception {
        built();
        atExit = "echo cache >\"${asked#*=}\"; echo half >\"${asked#*=}.config\"";
        java("25.0.3");
        Path cache = archive.resolveSibling("boardside.aot");
        Ran first = run("--version");
        assertThat(first.err()).contains("later starts faster");
        assertThat(first.out()).contains("-XX:AOTCache=" + cache).doesNotContain("SharedArchiveFile");
        assertThat(cache).hasContent("cache");
        assertThat(archive).hasContent("classes");
        assertThat(folder(cache))
                .containsExactlyInAnyOrder("boardside.jar", "boardside.jsa", "boardside.aot", "build.log");
        assertThat(run("--version").err()).isEmpty();
        java("24.0.1");
        assertThat(run("--version").out())
                .contains("-XX:SharedArchiveFile=" + archive)
                .doesNotContain("AOT");
    }

    @Test
    void whereNoArchiveCanBeMadeItRunsWithoutAndDoesNotTryAgain() throws Exception {
        for (String fault : List.of("exit 1", "exit 0", "echo half >\"${asked#*=}\"; exit 1")) {
            built();
            atExit = fault;
            java("17.0.15");
            Files.delete(archive);
            assertThat(run("--version").err()).as(fault).contains("later starts faster");
            Ran again = run("--version");
            assertThat(again.err()).isEmpty();
            assertThat(again.out()).startsWith("java ").doesNotContain("SharedArchiveFile");
            assertThat(folder(archive)).contains("boardside.jsa").allMatch(name -> !name.startsWith("boardside.jsa."));
        }
    }

    @Test
    void whereTheArchiveCannotBeKeptItStartsAllTheSame() throws Exception {
        built();
        java("17.0.15");
        Files.delete(archive);
        script(tools.resolve("mv"), "echo 'no room' >&2; exit 1");
        Ran ran = run("record");
        assertThat(ran.status()).isZero();
        assertThat(ran.err()).contains("no room", "tried again at the next start");
        assertThat(ran.out()).startsWith("java ").endsWith("-jar " + jar + " record\n");
    }

    /** What the launcher tells Java beside where things lie. */
    private List<String> options() throws Exception {
        built();
        Files.delete(archive);
        atExit = "exit 1";
        java("17.0.15");
        run("--version");
        List<String> told = List.of(run("--version").out().strip().split(" "));
        return told.subList(1, told.indexOf("-jar"));
    }

    @Test
    void thePackageStartsWithTheSameOptions() throws Exception {
        Path script = Path.of("..", "packaging", "deb", "boardside");
        String last = Files.readString(script).replace("\\\n", "");
        List<String> told =
                List.of(last.substring(last.indexOf("exec ")).strip().split("\\s+"));
        assertThat(told.subList(2, told.indexOf("${BOARDSIDE_JAVA_OPTIONS:-}"))).isEqualTo(options());
    }

    @Test
    void aStartWakesNothingThatItsOptionsSendToSleep() throws Exception {
        Path classes = folder.resolve("classes");
        List<String> command = new ArrayList<>(options());
        command.add(0, Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of(
                "-Xlog:class+load:file=" + classes,
                "-cp",
                System.getProperty("java.class.path"),
                "boardside.app.cli.Main",
                "warm-up"));
        Process process = new ProcessBuilder(command).inheritIO().start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        assertThat(Files.readString(classes))
                .contains(" boardside.app.web.Server ")
                .as("-Djfr.unsupported.vm")
                .doesNotContain(" jdk.jfr.internal.MetadataRepository ")
                .as("-Dorg.eclipse.jetty.util.referencesPerCacheLine")
                .doesNotContain(" javax.management.");
        if (Runtime.version().feature() < 23) {
            // Since then there are no older data to leave out.
            assertThat(Files.readString(classes))
                    .as("-Djava.locale.providers")
                    .doesNotContain(" sun.util.resources.provider.NonBaseLocaleDataMetaInfo ");
        }
    }

    private static List<String> folder(Path file) throws IOException {
        try (Stream<Path> all = Files.list(file.getParent())) {
            return all.map(path -> path.getFileName().toString()).toList();
        }
    }

    @Test
    void failedBuildSaysWhy() throws Exception {
        java("17.0.15");
        script(home.resolve("mvnw"), "echo 'line 3 is wrong'; exit 1");
        Ran ran = run("--version");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains("line 3 is wrong").contains("build.log");
    }
}
