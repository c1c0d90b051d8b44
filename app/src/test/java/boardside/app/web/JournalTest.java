package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Player;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

/** The journal: found, annotated, corrected, deleted, brought back. */
class JournalTest extends Browser {
    @Test
    void anEmptyJournalSaysSo() {
        page.navigate(url("/journal"));
        assertThat(page.locator("main")).containsText("Nothing thrown yet.");
        assertAccessible();
    }

    @Test
    void aRunIsAnnotatedSearchedDeletedAndBroughtBack() {
        throwTotal("2-1-1", 10);
        throwRace();
        page.navigate(url("/journal"));
        assertThat(page.locator(".entries li")).hasCount(2);
        assertThat(page.locator(".entries li").nth(0)).containsText("70 points in 10 rounds");
        assertThat(page.locator(".entries li").nth(1)).containsText("won 21–0 in 3 rounds");
        assertThat(page.locator("main h2:visible").first())
                .hasText(new Describe(Texts.in("en"))
                        .day(LocalDate.now(ZoneId.systemDefault()).toString()));
        picture("journal");
        assertAccessible();

        page.locator(".entries a").first().click();
        page.getByLabel("Note", new Page.GetByLabelOptions().setExact(true)).fill("Windy <b>evening</b>");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Keep"))
                .click();
        assertThat(page.getByRole(AriaRole.STATUS)).hasText("Kept.");
        picture("journal-run");
        assertAccessible();

        page.navigate(url("/journal?q=windy"));
        assertThat(page.locator("section.card")).hasCount(1);
        assertThat(page.locator(".entries .note")).hasText("Windy <b>evening</b>");
        page.navigate(url("/journal?q=thunder"));
        assertThat(page.locator("main")).containsText("Nothing found for \"thunder\".");

        page.navigate(url("/journal?q=windy"));
        page.locator(".entries a").first().click();
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Delete this run"))
                .click();
        assertThat(page.getByRole(AriaRole.STATUS)).hasText("Deleted.");
        assertThat(page.locator(".entries li")).hasCount(1);
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Bring it back"))
                .click();
        assertThat(page.locator(".entries li")).hasCount(2);
    }

    @Test
    void aCorrectionMadeAtTheBoardsIsListedAndUndone() {
        throwTotal("2-1-1", 10);
        String run = page.url().replaceFirst(".*/runs/", "");
        page.locator("#rounds button").nth(3).click();
        page.locator("[data-finish=\"4-0-0\"]").click();
        assertThat(page.locator("#sent")).hasText("all stored");
        page.navigate(url("/journal/runs/" + run));
        assertThat(page.locator("h1")).hasText("75 points in 10 rounds");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Undo"))
                .click();
        assertThat(page.locator("h1")).hasText("70 points in 10 rounds");
        picture("journal-changes");
        assertAccessible();
    }

    @Test
    void aNoteOnASessionIsKept() {
        throwTotal("2-1-1", 1);
        page.navigate(url("/journal?page=99"));
        page.getByText("Note on this session").first().click();
        page.locator("textarea").fill("New boards");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Keep"))
                .click();
        assertThat(page.locator("section .note")).hasText("New boards");
    }

    @Test
    void anotherPlayersRunIsNotFound() {
        throwTotal("2-1-1", 1);
        String run = page.url().replaceFirst(".*/runs/", "");
        Player other = records.addPlayer("Robin", Player.Hand.RIGHT, Player.Hand.LEFT);
        assertThat(records.run(other.id(), run)).isEmpty();
    }

    private void throwTotal(String finish, int rounds) {
        page.navigate(url("/start/total"));
        page.locator("#start").click();
        for (int i = 0; i < rounds; i++) {
            page.locator("[data-finish=\"" + finish + "\"]").click();
        }
        assertThat(page.locator("#sent")).hasText("all stored");
    }

    private void throwRace() {
        page.navigate(url("/start/race"));
        page.locator("#start").click();
        for (int i = 0; i < 3; i++) {
            page.locator("[data-finish=\"4-0-0\"]").click();
        }
        assertThat(page.locator("#sent")).hasText("all stored");
    }
}
