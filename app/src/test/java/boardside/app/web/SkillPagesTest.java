package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.demo.Demo;
import boardside.app.record.Skills;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.Skill;
import boardside.engine.skill.Trait;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the skill model answers, as a player reads it, of the invented player of the demo. */
class SkillPagesTest extends Browser {
    private static final LocatorAssertions.ContainsTextOptions SOON =
            new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

    private Skill demo() {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        int player = Demo.fill(records, today).id();
        return Skills.of(records, player, today);
    }

    private void full(String name) {
        if (System.getenv("BOARDSIDE_PICTURES") != null) {
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of("target", "pictures", name + ".png"))
                    .setFullPage(true));
        }
    }

    private void show(String address, String sentence) {
        page.navigate(url(address));
        assertThat(page.locator("main")).containsText(sentence, SOON);
        assertAccessible();
        assertThat((Boolean) page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"))
                .isTrue();
    }

    @Test
    void everyAnswerHasItsPage() {
        Skill skill = demo();
        show("/form", skill.form(30).sentence());
        assertThat(page.locator("main")).containsText(skill.usual(10).sentence());
        assertThat(page.locator("#swing")).hasText(skill.swing().sentence());
        assertThat(page.locator("main")).containsText("Your latest total");
        assertThat(page.locator("svg.picture")).hasCount(3);
        full("form-demo");
        page.locator("#trends a").nth(2).click();
        assertThat(page.locator("#sentence")).hasText(skill.form(90).sentence());

        show("/compare", skill.compare(List.of(Trait.BAG)).sentence());
        Comparison bags = (Comparison) skill.compare(List.of(Trait.BAG));
        assertThat(page.locator(".facts dt"))
                .hasText(bags.groups().stream().map(group -> group.key().get(0)).toArray(String[]::new));
        full("compare-bag");
        show(
                "/compare?by=bag,approach",
                skill.compare(List.of(Trait.BAG, Trait.APPROACH)).sentence());
        assertThat(page.locator("svg.picture title")).hasText("Bag set and approach");
        full("compare-bag-approach");
        show("/compare?by=setting", skill.stakes().sentence());
        full("compare-setting");
        show("/compare?by=board", skill.narrow().sentence());
        full("compare-board");

        show("/form/forecasts", skill.forecasts().sentence());
        assertThat(page.locator("svg.picture")).hasCount(1);
        full("forecasts");

        show("/spread", "of them tapped");
        assertThat(page.locator("main")).containsText("left of the hole");
        assertThat(page.locator("main")).containsText("An airmail drops in");
        assertThat(page.locator("svg.picture")).hasCount(2);
        full("spread");
    }

    @Test
    void withoutRecordsEveryPageSaysSo() {
        show("/compare", "No counted throws up to");
        show("/compare?by=setting", "No counted throws up to");
        show("/spread", "Nothing was recorded of where bags go");
        assertThat(page.navigate(url("/compare?by=moon")).status()).isEqualTo(404);
    }
}
