package boardside.app.cli;

import boardside.app.json.Json;
import boardside.app.practice.Failure;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;

/** What the program is made of, from the bill of materials (CycloneDX) that the build put into it. */
@Command(
        name = "licences",
        description =
                "The libraries inside this program with their licences; with --json the bill of materials (CycloneDX).")
final class LicencesCommand implements Callable<Integer> {
    private static final String BILL = "/META-INF/sbom/boardside.cdx.json";

    private final Context context;

    LicencesCommand(Context context) {
        this.context = context;
    }

    /**
     * A library inside the program.
     *
     * @param name group and artifact
     * @param licences as its makers name them, by SPDX id where they have one; one of them is to be followed
     */
    record Library(String name, String version, List<String> licences) {}

    /**
     * The bill of materials.
     *
     * @throws Failure.NotFound if the program was not built by the project's build
     */
    static JsonNode bill() {
        try (InputStream in = LicencesCommand.class.getResourceAsStream(BILL)) {
            if (in == null) {
                throw new Failure.NotFound("this program holds no bill of materials, as Maven makes none offline;"
                        + " build it online with ./mvnw package");
            }
            return Json.read(new String(in.readAllBytes(), StandardCharsets.UTF_8), JsonNode.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The libraries it names, but for our own parts. */
    static List<Library> libraries(JsonNode bill) {
        List<Library> libraries = new ArrayList<>();
        for (JsonNode component : bill.path("components")) {
            String group = component.path("group").asText();
            if (group.equals("boardside")) {
                continue;
            }
            List<String> licences = new ArrayList<>();
            for (JsonNode one : component.path("licenses")) {
                JsonNode licence = one.path("license");
                licences.add(one.path("expression")
                        .asText(licence.path("id").asText(licence.path("name").asText())));
            }
            libraries.add(new Library(
                    group + ":" + component.path("name").asText(),
                    component.path("version").asText(),
                    licences));
        }
        return libraries;
    }

    @Override
    public Integer call() {
        JsonNode bill = bill();
        context.answer(
                bill,
                libraries(bill).stream()
                                .map(library -> library.name() + " " + library.version() + ": "
                                        + String.join(" or ", library.licences()))
                                .collect(Collectors.joining("\n"))
                        + "\nDejaVu fonts: Bitstream Vera and Arev licences (net/sf/jasperreports/fonts/dejavu/LICENSE inside)");
        return Cli.DONE;
    }
}
