package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.BagSet;
import boardside.app.record.Throws;
import boardside.engine.physics.Range;
import java.time.LocalDate;
import java.time.ZoneId;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** How the player throws: from belief alone, and from records, with the figures that the command line gives. */
class ThrowsPageTest extends Browser {
    private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(6);

    @Test
    void withoutRecordsItSaysWhatIsUsual() {
        page.navigate(url("/more"));
        page.getByText("How I throw").click();
        assertThat(page.locator("#throws-said")).containsText("what is usual among players");
        assertThat(page.locator("svg.picture")).hasCount(1);
        assertAccessible();
    }

    @Test
    void recordsAndPrintedSpeedsMakeASpeedSheet() {
        int me = records.firstPlayer().id();
        records.saveBag(me, new BagSet("", "Barley", 3, 7, null, "", "", false));
        Thrown.total(records, me, random, 3, 60, 0.35, 0.45);
        page.navigate(url("/throws"));
        assertThat(page.locator("#throws-said")).containsText("From 240 bags");
        assertThat(page.locator(".sheet")).hasCount(3);
        Throws all = Throws.of(records, me, LocalDate.now(ZoneId.systemDefault()));
        Range in = Throws.advice(all.usual()).in();
        assertThat(page.locator("#throws-worth"))
                .containsText(Numbers.percent(in.estimate()) + " (" + Math.round(100 * in.low()) + "\u2013"
                        + Math.round(100 * in.high()) + ")");
        assertThat(page.locator("#throws-open")).containsText("narrow board");
        page.screenshot(new com.microsoft.playwright.Page.ScreenshotOptions()
                .setPath(java.nio.file.Path.of("target", "pictures", "throws.png"))
                .setFullPage(true));
        assertAccessible();

        page.locator("#bag").selectOption("2");
        page.getByText("Show", new com.microsoft.playwright.Page.GetByTextOptions().setExact(true))
                .click();
        assertThat(page.locator("#throws-said")).containsText("No counted throws of this bag");
        assertThat(page.url()).contains("bag=2");
    }

    @Test
    void aSlideTestIsTappedOnTheBoard() {
        page.navigate(url("/slides"));
        assertAccessible();
        double[][] taps = {{0.5, 0.7}, {0.5, 0.4}, {0.4, 0.65}, {0.45, 0.37}, {0.6, 0.72}, {0.6, 0.5}};
        for (double[] tap : taps) {
            var box = page.locator("#tap-board").boundingBox();
            page.locator("#tap-board")
                    .click(new com.microsoft.playwright.Locator.ClickOptions()
                            .setPosition(tap[0] * box.width, tap[1] * box.height));
        }
        page.locator("#tap-undo").click();
        assertThat(page.locator("#tap-marks .stopped")).hasCount(2);
        assertThat(page.locator("#slides")).hasValue(java.util.regex.Pattern.compile("^0(\\.\\d)?,14\\.\\d>.+ .+>.+$"));
        assertThat(page.locator("#tap-away")).isHidden();
        // At the boards the network may be away: the slides stay where they are, and are there when the page is opened
        // again.
        page.context().setOffline(true);
        page.getByText("Measure the boards").click();
        assertThat(page.locator("#tap-away")).isVisible();
        assertThat(page.locator("#tap-marks .stopped")).hasCount(2);
        page.context().setOffline(false);
        page.navigate(url("/slides"));
        assertThat(page.locator("#tap-marks .stopped")).hasCount(2);
        page.getByText("Measure the boards").click();
        assertThat(page.locator(".said").first()).containsText("From 2 slides");
        assertThat(page.locator("main")).containsText("usual ones");
        page.screenshot(new com.microsoft.playwright.Page.ScreenshotOptions()
                .setPath(java.nio.file.Path.of("target", "pictures", "slides.png"))
                .setFullPage(true));
        assertAccessible();
        page.locator("#slides").fill("0,20");
        page.getByText("Measure the boards").click();
        assertThat(page.locator("#slides-fault")).containsText("is no slide");
        assertAccessible();
    }
}
