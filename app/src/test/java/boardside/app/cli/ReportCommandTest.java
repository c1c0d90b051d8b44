package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.demo.Demo;
import boardside.app.json.Json;
import boardside.app.record.Records;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reports of the invented player of the demo, held against the commands that answer the same one by one. */
class ReportCommandTest {
    @TempDir
    static Path folder;

    @BeforeAll
    static void fill() {
        try (Records records = Records.open(folder.resolve("s.db").toString())) {
            Demo.fill(records, LocalDate.of(2026, 5, 31));
        }
    }

    private Ran run(String... args) {
        List<String> all =
                new ArrayList<>(List.of("--data", folder.resolve("s.db").toString(), "--player", "Wren Tallow"));
        all.addAll(List.of(args));
        return Ran.of(all.toArray(String[]::new));
    }

    private JsonNode json(String... args) throws IOException {
        List<String> all = new ArrayList<>(List.of("--json"));
        all.addAll(List.of(args));
        Ran ran = run(all.toArray(String[]::new));
        assertThat(ran.err()).isEmpty();
        return Json.MAPPER.readTree(ran.out());
    }

    private static List<String> sentences(JsonNode report) {
        List<String> sentences = new ArrayList<>();
        report.get("sections")
                .forEach(section -> section.get("sentences").forEach(sentence -> sentences.add(sentence.asText())));
        return sentences;
    }

    @Test
    void saysWhatTheOtherCommandsSay() throws IOException {
        String form = json("form").get("sentence").asText();
        String ways = json("compare", "--by", "bag,approach").get("sentence").asText();
        String bags = json("compare", "--by", "bag").get("sentence").asText();
        assertThat(sentences(json("report", "card"))).contains(form, ways);
        assertThat(sentences(json("report", "bags"))).contains(bags, ways);
        assertThat(sentences(json("report", "season")))
                .contains(json("form", "--days", "365").get("sentence").asText(), bags);
    }

    @Test
    void aSessionIsTheLastUnlessOneIsNamed() throws IOException {
        JsonNode last = json("report", "session");
        assertThat(last.get("about").asText()).startsWith("Wren Tallow, ").endsWith(" May 2026");
        assertThat(last.get("sections").get(0).get("rows")).isNotEmpty();
        assertThat(sentences(last))
                .contains(json("form", "--as-of", "2026-05-31").get("sentence").asText());
        Ran none = run("report", "session", "--day", "1999-01-01");
        assertThat(none.status()).isEqualTo(1);
        assertThat(none.err()).isEqualToIgnoringNewLines("Nothing was thrown on 1999-01-01.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a4", "letter"})
    void theMatchCardIsOnePage(String paper) throws IOException {
        Path out = folder.resolve("card-" + paper + ".pdf");
        assertThat(run("report", "card", "--paper", paper, "--out", out.toString())
                        .status())
                .isZero();
        try (PDDocument pdf = Loader.loadPDF(out.toFile())) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertThat(text).contains(json("form").get("sentence").asText());
        }
    }

    @Test
    void keepsAFileThatIsThere() throws IOException {
        Path out = folder.resolve("mine.pdf");
        Files.writeString(out, "mine");
        Ran ran = run("report", "season", "--out", out.toString());
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains("there is a file").contains("name another, or remove it");
        assertThat(out).hasContent("mine");
    }

    @Test
    void refusesWhatItDoesNotKnow() {
        assertThat(run("report", "diary").err())
                .contains("no report \"diary\"")
                .contains("card, bags, season, session");
        assertThat(run("report", "card", "--paper", "a5").err()).contains("a4 or letter");
        assertThat(run("report", "card", "--units", "feet").err()).contains("in or cm");
        assertThat(run("report", "card", "--paper", "a5").status()).isEqualTo(2);
    }

    @Test
    void withoutRecordsThereIsNothingToReport() {
        Ran ran = Ran.of("--data", folder.resolve("empty.db").toString(), "report", "card");
        assertThat(ran.status()).isEqualTo(1);
        assertThat(ran.err()).contains("no counted records");
    }
}
