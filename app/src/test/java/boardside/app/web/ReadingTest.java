package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Ids;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Form and summary, as a player reads them. */
class ReadingTest extends Browser {
    private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(12);

    /** Ten rounds so many days ago; returns the run's id. */
    private String run(int daysAgo, int rounds, double in, double on) {
        int player = records.firstPlayer().id();
        Ids ids = records.ids();
        String start = OffsetDateTime.now()
                .minusDays(daysAgo)
                .truncatedTo(ChronoUnit.SECONDS)
                .toString();
        String run = ids.next();
        List<Operation> operations = new ArrayList<>();
        operations.add(new Operation.StartRun(
                ids.next(), run, ids.next(), Drill.TOTAL, start, false, "", null, null, setup(rounds)));
        for (int round = 1; round <= rounds; round++) {
            operations.add(put(run, round, in, on));
        }
        operations.add(new Operation.FinishRun(ids.next(), run, start));
        records.applyAll(player, operations, Instant.now());
        return run;
    }

    private Operation put(String run, int round, double in, double on) {
        int i = 0;
        int o = 0;
        for (int bag = 0; bag < 4; bag++) {
            double u = random.nextDouble();
            i += u < in ? 1 : 0;
            o += u >= in && u < in + on ? 1 : 0;
        }
        Line line = new Line(
                "",
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                4,
                i,
                o,
                4 - i - o,
                Line.Misses.NONE,
                "",
                "");
        return new Operation.PutRound(
                run, new Round(round, Side.ME, records.ids().next(), List.of(line), List.of()));
    }

    private static Setup setup(int rounds) {
        return new Setup(
                List.of(),
                4,
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                rounds,
                null,
                null,
                false,
                null,
                null,
                false,
                false);
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
        assertThat(page.locator("#sentence")).containsText("too early to say whether that is you or luck");
        assertThat(page.locator("svg.picture circle")).hasCount(27);
        assertThat(page.locator("svg.picture title")).hasText("Points a round over time");
        picture("form");
        assertAccessible();
        page.locator(".figure summary").click();
        assertThat(page.locator(".figure tbody tr")).hasCount(27);
        assertThat(page.locator(".facts")).containsText("a ghost of about");
        assertAccessible();
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("a year"))
                .click();
        assertThat(page.locator("a[href='/form?days=365']")).hasAttribute("aria-current", "true");
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
