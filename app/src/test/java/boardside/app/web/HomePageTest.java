package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.time.LocalDate;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The first page: what a newcomer sees, and what there is to do on a later day. */
class HomePageTest extends Browser {
    private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(30);

    private boolean inSight(String selector) {
        var box = page.locator(selector).boundingBox();
        double bar = page.locator("nav.bottom").boundingBox().y;
        return box.y >= 0 && box.y + box.height <= bar;
    }

    @Test
    void aNewcomerThrowsWithOneTap() {
        page.navigate(url("/"));
        assertThat(page.locator("#lately")).hasCount(0);
        assertThat(inSight("#first button")).isTrue();
        assertThat(inSight("#plan .minutes")).isTrue();
        picture("home-new");
        assertAccessible();
        page.locator("#first button").tap();
        page.waitForURL("**/runs/*");
        page.locator("[data-finish='1-2-1']").tap();
        assertThat(page.locator("#score")).hasText("5");
        assertThat(page.locator("#where")).hasText("Round 2 of 10");
        page.navigate(url("/"));
        assertThat(page.locator("#first")).hasCount(0);
        assertThat(page.locator("#open-run")).hasText("You are in the middle of a run");
        assertThat(inSight(".lead .main")).isTrue();
    }

    @Test
    @Timeout(60)
    void theLastDayIsSummedUpHonestly() {
        int me = records.firstPlayer().id();
        for (int day = 9; day > 0; day--) {
            Thrown.total(records, me, random, day, 10, 0.3, 0.4);
        }
        page.navigate(url("/"));
        Locator lately = page.locator("#lately");
        assertThat(lately).containsText("Yesterday: 40 bags.");
        assertThat(lately).containsText("points a round, which by these bags alone speaks for");
        // How unusual the total was is worked out beside the requests, and is there on one of the next visits.
        while (!lately.textContent().contains("in 10 rounds is")) {
            page.waitForTimeout(300);
            page.reload();
        }
        assertThat(inSight(".lead .main")).isTrue();
        assertThat(inSight("#plan .minutes")).isTrue();
        picture("home-later");
        assertAccessible();
        page.locator("#lately a[href^='/reports']").tap();
        page.waitForURL("**/reports/session?day=" + LocalDate.now().minusDays(1));
        assertThat(page.locator("h1")).isVisible();
    }

    @Test
    void everyPlaceIsOneTapAwayForEitherHand() {
        page.navigate(url("/"));
        List<String> places = page.locator("nav.bottom a").allInnerTexts();
        assertThat(places).containsExactly("Throw", "Form", "Journal", "Bags", "More");
        double right = page.locator("nav.bottom a").last().boundingBox().x;
        page.navigate(url("/more"));
        page.locator(".choice", new com.microsoft.playwright.Page.LocatorOptions().setHasText("left hand"))
                .tap();
        page.locator("form[action='/look'] button").tap();
        page.waitForURL("**/more?said=look");
        assertThat(page.locator("nav.bottom a").last().boundingBox().x).isLessThan(right);
        for (Locator place : page.locator("nav.bottom a").all()) {
            assertThat(place.boundingBox().height).isGreaterThanOrEqualTo(44);
            assertThat(place.boundingBox().width).isGreaterThanOrEqualTo(44);
        }
    }

    @Test
    void whatWasRefusedIsSaidOnTheFirstPageUntilItIsRead() {
        page.navigate(url("/"));
        page.evaluate("""
                localStorage.setItem('boardside.refused.x', JSON.stringify({
                  operation: { type: 'undo', op: 'x', player: 1 }, message: 'There is no such run.' }))""");
        page.reload();
        assertThat(page.locator("#not-stored-list li")).hasText("There is no such run.");
        page.locator("#not-stored-read").tap();
        assertThat(page.locator("#not-stored")).isHidden();
        page.reload();
        assertThat(page.locator("#not-stored")).isHidden();
    }
}
