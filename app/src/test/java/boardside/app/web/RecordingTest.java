package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import org.junit.jupiter.api.Test;

/** Recording at the boards, as a player does it. */
class RecordingTest extends Browser {
    @Test
    void tenRoundsOfFour() {
        page.navigate(url("/"));
        picture("home");
        assertAccessible();
        page.locator("a.tile").first().click();
        picture("start");
        assertAccessible();
        page.locator("#start").click();
        page.locator("[data-finish=\"4-0-0\"]").waitFor();
        picture("run-new");
        assertAccessible();
        for (int round = 0; round < 10; round++) {
            tapFinish(round % 2 == 0 ? "3-1-0" : "1-2-1");
        }
        assertThat(page.locator("#score")).hasText("75");
        assertThat(page.locator("#sent")).hasText("all stored");
        picture("run-done");
    }

    void tapFinish(String finish) {
        Locator cell = page.locator("[data-finish=\"" + finish + "\"]");
        cell.click();
    }
}
