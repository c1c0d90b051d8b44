package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.record.Challenges;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.regex.Pattern;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Reasons to go out: challenges, bests, the calendar, the card; and a word where much more is thrown than usual. */
class ReasonsTest extends Browser {
    private int me;

    private void practise(int days, int runsADay) {
        me = records.firstPlayer().id();
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(7_700);
        for (int day = days; day > 0; day--) {
            for (int run = 0; run < runsADay; run++) {
                Thrown.total(records, me, random, day, 10, 0.45, 0.35);
            }
        }
    }

    @Test
    void aChallengeFromDealToDone() {
        practise(12, 1);
        page.navigate(url("/"));
        page.locator("#reasons a[href='/challenge']").click();
        String dealt = page.locator("#dealt").textContent();
        assertThat(page.locator("#chance"))
                .hasText(Pattern.compile("Going by your records up to yesterday, you make it"
                        + " [3-6]\\d % \\(\\d+–\\d+\\) of the time\\."));
        picture("challenge");
        assertAccessible();
        page.reload();
        assertThat(page.locator("#dealt")).hasText(dealt);
        page.locator("#again").click();
        assertThat(page.locator("#dealt")).not().hasText(dealt);
        String taken = page.locator("#dealt").textContent();
        page.locator("#take").click();

        assertThat(page.locator("#entry")).isVisible();
        picture("challenge-run");
        Locator done = page.locator("#done-said");
        for (int round = 0; round < 12 && !done.isVisible(); round++) {
            page.locator("[data-finish='4-0-0']").click();
        }
        assertThat(page.locator("#sent")).hasText("all stored");
        page.locator("#summary").click();
        assertThat(page.locator("#achieved")).containsText(taken + ": done!");
        picture("challenge-summary");
        assertAccessible();
        assertThat(records.challenges().latest(me, 5))
                .singleElement()
                .satisfies(told -> assertThat(told.outcome()).isEqualTo(Challenges.Outcome.DONE));
        complete();
        page.navigate(url("/challenge"));
        assertThat(page.locator("#past")).containsText("done!");
        // What was thrown today does not change today's deal.
        assertThat(page.locator("#dealt")).hasText(dealt);
        assertThat(records.check()).isEmpty();
    }

    @Test
    void theCalendarSaysHowMuchAndLeadsToTheDay() {
        practise(3, 2);
        Thrown.total(records, me, RandomSource.XO_RO_SHI_RO_128_PP.create(1), 0, 10, 0.5, 0.3);
        page.navigate(url("/calendar"));
        LocalDate today = LocalDate.now();
        Locator cell = page.locator("#calendar td.today a");
        assertThat(cell).containsText("40");
        assertThat(cell).hasAttribute("aria-label", Texts.in("en").day(today) + ": 40 bags in a run");
        assertThat(page.locator("#load"))
                .hasText("Today 40 bags, in the last seven days 280. Over the four weeks before: 0 a week.");
        assertThat(page.locator("#caution")).containsText("280 bags in seven days, after weeks with few or none.");
        picture("calendar");
        assertAccessible();
        cell.click();
        assertThat(page.locator("main")).containsText("points in 10 rounds");
        page.navigate(url("/calendar?month=" + today.minusMonths(2).toString().substring(0, 7)));
        assertThat(page.locator("#sum")).hasText("No bags this month.");
        page.locator("a[rel='next']").click();
        assertThat(page.locator("caption"))
                .hasText(Texts.in("en").month(java.time.YearMonth.from(today.minusMonths(1))));
        page.navigate(url("/"));
        assertThat(page.locator("#caution")).isVisible();
        picture("home-reasons");
        assertAccessible();
    }

    @Test
    void bestsAndTheCardOfARun() throws Exception {
        practise(12, 1);
        page.navigate(url("/bests"));
        assertThat(page.locator("#bests")).containsText("Total of 10 rounds");
        assertThat(page.locator("#milestones")).containsText("10 days at the boards");
        assertThat(page.locator("#bags")).hasText("480 bags thrown in all; 520 more make 1000.");
        picture("bests");
        assertAccessible();

        page.navigate(url("/start/total"));
        page.locator("#start").click();
        for (int round = 0; round < 10; round++) {
            page.locator("[data-finish='4-0-0']").click();
        }
        assertThat(page.locator("#sent")).hasText("all stored");
        page.locator("#summary").click();
        assertThat(page.locator("#achieved")).containsText("New best. Total of 10 rounds: 120 points");
        assertThat(page.locator("#achieved")).containsText("New best. Four-baggers in a row: 10 rounds");
        page.locator("#card").click();
        assertThat(page.locator("svg.picture desc")).containsText("120 points in 10 rounds");
        picture("card");
        assertAccessible();

        APIResponse svg = phone.request().get(url(page.locator("#svg").getAttribute("href")));
        assertThat(svg.status()).isEqualTo(200);
        assertThat(svg.headers().get("content-type")).startsWith("image/svg+xml");
        assertThat(svg.text()).contains("120 points in 10 rounds").doesNotContain("http://127", "href");
        Download download = page.waitForDownload(() -> page.locator("#png").click());
        byte[] png = Files.readAllBytes(download.path());
        assertThat(download.suggestedFilename()).endsWith(".png");
        assertThat(png).startsWith(0x89, 'P', 'N', 'G');
        assertThat(png.length).isGreaterThan(10_000);

        page.locator("#day").click();
        assertThat(page.locator("svg.picture desc"))
                .containsText("40 bags", new LocatorAssertions.ContainsTextOptions().setTimeout(5_000));
        picture("card-day");
        assertAccessible();
    }
}
