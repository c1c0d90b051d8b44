package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Player;
import boardside.app.record.Skills;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.regex.Pattern;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Odds from the player's own records. */
class OddsPageTest extends Browser {
    private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(5);

    @Test
    void withoutRecordsItSaysSo() {
        page.navigate(url("/odds"));
        assertThat(page.locator("#odds-said")).containsText("nothing to work out chances from yet");
        assertAccessible();
    }

    @Test
    void aGhostAPastMonthAndAnotherPlayerAreOpponents() {
        int me = records.firstPlayer().id();
        for (int day = 40; day >= 0; day -= 4) {
            Thrown.total(records, me, random, day, 10, 0.5, 0.3);
        }
        Player kid = records.addPlayer("Robin", Player.Hand.LEFT, Player.Hand.RIGHT);
        Thrown.total(records, kid.id(), random, 3, 20, 0.15, 0.35);

        page.navigate(url("/odds?versus=ghost-7"));
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        ChanceRange mine = Skills.of(records, me, today).chances().orElseThrow();
        Interval win = mine.of(
                chances -> Race.solve(GameRules.STANDARD, RoundDistribution.of(chances), RoundDistribution.ghost(7))
                        .winOrHalf(0, 0, true));
        assertThat(win.high() - win.low()).isGreaterThan(0.05);
        assertThat(page.locator("#odds-said")).containsText(Numbers.percent(win));
        assertThat(page.locator("#odds-said")).containsText("Against ghost 7");
        assertThat(page.locator("svg.picture")).hasCount(3);
        assertThat(page.locator("main"))
                .containsText(Pattern.compile("for ghost 7; what your records leave open: .+ to \\d+ for ghost 7\\."));
        page.screenshot(new com.microsoft.playwright.Page.ScreenshotOptions()
                .setPath(java.nio.file.Path.of("target", "pictures", "odds.png"))
                .setFullPage(true));
        assertAccessible();

        page.locator("#versus").selectOption("player-" + kid.id());
        page.getByText("Show", new com.microsoft.playwright.Page.GetByTextOptions().setExact(true))
                .click();
        assertThat(page.locator("#odds-said")).containsText("Against Robin");
        assertThat(page.locator("main")).containsText(Pattern.compile("head start of \\d+ for Robin"));

        page.navigate(url("/odds?versus=month-" + YearMonth.from(today)));
        assertThat(page.locator("#odds-said")).containsText("Against myself in");
    }

    @Test
    void anOpponentThatIsNoneIsRefused() {
        Thrown.total(records, records.firstPlayer().id(), random, 0, 10, 0.5, 0.3);
        // Once the records are worked through, every answer is there at once.
        page.navigate(url("/odds"));
        assertThat(page.locator("#odds-said")).containsText("Against ghost");
        for (String none : new String[] {"ghost-13", "month-2020-13", "month-1999-01", "player-99", "x"}) {
            page.navigate(url("/odds?versus=" + none));
            assertThat(page.locator("main")).containsText(Pattern.compile("There is no|There are no|is no month"));
            assertThat(page.navigate(url("/odds?versus=" + none)).status())
                    .as(none)
                    .isEqualTo(404);
        }
    }
}
