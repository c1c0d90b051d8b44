package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.demo.Demo;
import boardside.app.record.Skills;
import boardside.engine.skill.Skill;
import boardside.engine.skill.Trait;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Reports as a player reads them, and the same on paper. */
class ReportPagesTest extends Browser {
    private static final LocatorAssertions.ContainsTextOptions SOON =
            new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

    private void show(String name, String sentence) {
        page.navigate(url("/reports"));
        page.locator("main a", new com.microsoft.playwright.Page.LocatorOptions().setHasText(name))
                .click();
        assertThat(page.locator("main")).containsText(sentence, SOON);
        assertAccessible();
        assertThat((Boolean) page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"))
                .isTrue();
        picture("report-" + name.toLowerCase(java.util.Locale.ROOT).replace(' ', '-'));
    }

    @Test
    void everyReportIsReadOnTheScreenAndOnPaper() throws IOException {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        Skill skill = Skills.of(records, Demo.fill(records, today).id(), today);
        show("Bag report", skill.compare(List.of(Trait.BAG)).sentence());
        show("The season", skill.form(365).sentence());
        show("A session", "What was thrown");
        show("Match card", skill.form(30).sentence());
        APIResponse paper =
                page.request().get(url(page.locator("a[href$='size=letter']").getAttribute("href")));
        assertThat(paper.headers()).containsEntry("content-type", "application/pdf");
        try (PDDocument pdf = Loader.loadPDF(paper.body())) {
            assertThat(new PDFTextStripper().getText(pdf).replaceAll("\\s+", " "))
                    .contains(skill.form(30).sentence());
        }
    }

    @Test
    void withoutRecordsItSaysSo() {
        page.navigate(url("/reports/card"));
        assertThat(page.locator("main")).containsText("no counted records", SOON);
        page.navigate(url("/reports/session?day=2020-02-02"));
        assertThat(page.locator("main")).containsText("Nothing was thrown on 2 Feb 2020.");
        assertThat(page.request().get(url("/reports/diary")).status()).isEqualTo(404);
        assertThat(page.request().get(url("/reports/card?day=soon")).status()).isEqualTo(404);
    }
}
