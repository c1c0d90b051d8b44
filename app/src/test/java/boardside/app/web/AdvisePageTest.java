package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.assertions.LocatorAssertions;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Which shot to throw, asked on a drawn board, and the playbook. */
class AdvisePageTest extends Browser {
    private static final double PATIENCE = 180_000;

    @Test
    void aDrawnBoardIsAnsweredAndTheRankingSharpens() {
        page.navigate(url("/situations"));
        page.locator("main a[href='/advise']").click();
        assertAccessible();
        page.navigate(url("/advise?situation=gate"));
        assertThat(page.locator(".lying")).hasCount(1);
        assertThat(page.locator("#left-me")).hasValue("3");
        // With keys alone: the block is moved a bag down and back.
        page.locator(".lying").first().focus();
        page.keyboard().press("ArrowDown");
        assertThat(page.locator(".lying").first()).hasAttribute("aria-label", Pattern.compile(".*Depth 2.*"));
        page.keyboard().press("ArrowUp");
        page.locator("#left-me").selectOption("1");
        page.locator("#left-versus").selectOption("1");
        page.locator("#score-me").selectOption("12");
        page.locator("form button.main").click();
        assertThat(page.locator("#shots[data-done=yes]"))
                .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE));
        assertThat(page.locator("#advised")).containsText("Throw the ");
        assertThat(page.locator("#advised")).containsText("you make");
        assertThat(page.locator(".shots > li").nth(4)).containsText("You win");
        assertThat(page.locator("#shots")).containsText("rests of the round played out");
        assertThat(page.locator("#score-me")).hasValue("12");
        picture("advise");
        assertAccessible();
    }

    @Test
    void whatCannotBeIsNamed() {
        page.navigate(url("/advise?bags=%5B%7B%22x%22%3A0%2C%22y%22%3A33%2C%22side%22%3A%22versus%22%7D%5D"
                + "&in-me=0&in-versus=3&left-me=2&left-versus=2&score-me=0&score-versus=0"));
        assertThat(page.locator("[role=alert]")).containsText("a side has four bags, but versus has 1 on the board");
        assertThat(page.locator("#in-versus")).hasValue("3");
        assertAccessible();
    }

    @Test
    void thePlaybookSaysWhatToPlayAndWhatToPractise() {
        page.navigate(url("/playbook"));
        assertThat(page.locator("#worths li").first())
                .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE));
        assertThat(page.locator(".play-of")).hasCount(11);
        assertThat(page.locator(".play-of dd").first()).containsText("Play the ");
        assertThat(page.locator("#approaches li").first()).containsText("conservative wins");
        picture("playbook");
        assertAccessible();
    }
}
