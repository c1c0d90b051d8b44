package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Form and summary, as a player reads them. */
class ReadingTest extends Browser {
    private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(12);

    private String run(int daysAgo, int rounds, double in, double on) {
        return Thrown.total(records, records.firstPlayer().id(), random, daysAgo, rounds, in, on);
    }

    private Locator button(String name) {
        return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name));
    }

    @Test
    void withoutRecordsFormSaysSo() {
        page.navigate(url("/form"));
        assertThat(page.locator("#sentence")).containsText("No counted throws up to");
        assertAccessible();
    }

    @Test
    void formShowsASentenceAPictureAndItsNumbers() {
        for (int day = 80; day >= 0; day -= 3) {
            run(day, 10, 0.32, 0.42);
        }
        page.navigate(url("/form"));
        assertThat(page.locator("#sentence")).containsText("points a round");
        assertThat(page.locator("svg[aria-labelledby^='over-time'] circle")).hasCount(27);
        assertThat(page.locator("#over-time-t")).hasText("Points a round over time");
        picture("form");
        assertAccessible();
        page.locator(".figure summary").first().click();
        assertThat(page.locator(".figure:has(#over-time-t) tbody tr")).hasCount(27);
        assertThat(page.locator(".facts")).containsText("a ghost of about");
        assertAccessible();
        page.getByRole(
                        AriaRole.LINK,
                        new Page.GetByRoleOptions().setName("a year").setExact(true))
                .click();
        assertThat(page.locator("nav[aria-label='How far back'] a[href='/form?days=365&trend=30']"))
                .hasAttribute("aria-current", "true");
        assertNoSidewaysScroll();
    }

    @Test
    void aRunIsSummedUpAndThrownAgainInOneTap() {
        for (int day = 9; day > 0; day--) {
            run(day, 10, 0.3, 0.4);
        }
        String run = run(0, 10, 0.3, 0.4);
        page.navigate(url("/runs/" + run + "/summary"));
        assertThat(page.locator("#result")).containsText("points in 10 rounds");
        assertThat(page.locator("#said")).containsText("nine in ten");
        assertThat(page.locator("#rate")).containsText("points a round. Going by these bags alone");
        assertThat(page.locator("#standing")).containsText("In 10 rounds: best before");
        assertThat(page.locator("svg[aria-labelledby^='strip'] text")).hasCount(10);
        picture("summary");
        assertAccessible();
        assertNoSidewaysScroll();
        button("Throw again").click();
        page.waitForURL(address -> address.contains("/runs/") && !address.endsWith("/summary"));
        assertThat(records.openRun(records.firstPlayer().id())).isPresent();
    }

    @Test
    void theFirstRunHasNothingToBeHeldAgainst() {
        String run = run(0, 5, 0.3, 0.4);
        page.navigate(url("/runs/" + run + "/summary"));
        assertThat(page.locator("#said")).containsText("Nothing earlier to hold this against yet");
        assertThat(page.locator("#standing")).hasCount(0);
        assertAccessible();
    }

    private void assertNoSidewaysScroll() {
        assertThat((Boolean) page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"))
                .isTrue();
    }
}
