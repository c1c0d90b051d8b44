package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import boardside.app.practice.Player;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.Media;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
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

    private static final String GATE = "{\"x\":0,\"y\":33,\"side\":\"versus\"}";

    private void ask(String bags, String rest) {
        page.navigate(url("/advise?bags=" + URLEncoder.encode(bags, StandardCharsets.UTF_8) + "&" + rest));
    }

    /** Each fault in a sentence that names the bag or the field and says what to do, with what was entered kept. */
    @Test
    void tooManyBagsAreNamedWithWhoseTheyAreAndHowManyToTakeAway() {
        ask("[" + GATE + "]", "in-me=0&in-versus=3&left-me=2&left-versus=2&score-me=0&score-versus=0");
        assertThat(page.locator("#faults li"))
                .hasText("They have four bags, but these are 6: 1 on the board, 3 in the hole, 2 still to throw."
                        + " Take 2 away.");
        assertThat(page.locator("#in-versus")).hasValue("3");
        assertThat(page.locator("#in-versus")).hasAttribute("aria-invalid", "true");
        assertThat(page.locator("#in-versus")).hasAttribute("aria-describedby", "faults");
        assertThat(page.locator("#score-me[aria-invalid]")).hasCount(0);
        assertThat(page.locator(".lying")).hasCount(1);
        assertThat(page.locator("#shots")).hasCount(0);
        assertAccessible();
    }

    @Test
    void overlappingBagsAreNamedMarkedAndCanBeMoved() {
        ask(
                "[" + GATE + ",{\"x\":7.5,\"y\":20,\"side\":\"me\"},{\"x\":2,\"y\":31,\"side\":\"me\"}]",
                "in-me=0&in-versus=0&left-me=2&left-versus=2&score-me=0&score-versus=0");
        assertThat(page.locator("#faults li"))
                .hasText("Theirs at Depth 1, middle and mine at Depth 1, middle lie over each other."
                        + " Move one of them a bag’s width away, or take it away.");
        assertThat(page.locator(".lying")).hasCount(3);
        assertThat(page.locator(".lying.wrong")).hasCount(2);
        picture("advise-overlap");
        assertAccessible();
        page.locator(".lying").nth(2).click();
        page.keyboard().press("Delete");
        assertThat(page.locator(".lying.wrong")).hasCount(0);
        page.locator("form button.main").click();
        assertThat(page.locator("#faults")).hasCount(0);
        assertThat(page.locator("#shots")).isVisible();
    }

    @Test
    void scoresAndCountsThatCannotBeAreNamedByTheirField() {
        ask("[]", "in-me=0&in-versus=0&left-me=2&left-versus=4&score-me=25&score-versus=0");
        assertThat(page.locator("#faults li")).hasText(new String[] {
            "Score before this round, Mine: 0 to 20, as a game is over at 21; not “25”. Choose one of these.",
            "Sides take turns and you are next, so you have as many bags to throw as they have, or one more;"
                    + " not 2 against 4. Change one of the two under “Still to throw”."
        });
        assertThat(page.locator("#score-me")).hasAttribute("aria-invalid", "true");
        assertThat(page.locator("#left-versus")).hasAttribute("aria-invalid", "true");
        ask("[]", "in-me=0&in-versus=7&left-me=0&left-versus=0&score-me=0&score-versus=0");
        assertThat(page.locator("#faults li"))
                .hasText("In the hole, Theirs: there are 0 to 4, not “7”. Choose one of these.");
        ask("[]", "in-me=0&in-versus=0&left-me=0&left-versus=0&score-me=0&score-versus=0");
        assertThat(page.locator("#faults li"))
                .hasText(
                        "You have no bag to throw, so there is nothing to advise. Choose 1 to 4 under “Still to throw”.");
        ask("[", "in-me=0&in-versus=0&left-me=1&left-versus=1&score-me=0&score-versus=0&versus-in=90&versus-on=90");
        assertThat(page.locator("#faults li")).hasText(new String[] {
            "The bags could not be read. Lay them on the board again.",
            "“Their bags in the hole, in %” and “Their bags on the board, in %” are 0 to 100, and 100 together at"
                    + " most. Change them, or leave both empty."
        });
        assertThat(page.locator("#versus-in")).isVisible();
        assertThat(page.locator("#versus-in")).hasValue("90");
    }

    @Test
    void thePlaybookSaysWhatToPlayAndWhatToPractise() {
        page.navigate(url("/playbook"));
        assertThat(page.locator("#brief li").first())
                .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE));
        assertThat(page.locator("#brief")).containsText("Most worth practising: the ");
        assertThat(page.locator("#brief"))
                .containsText(Pattern.compile("\\d\\.\\d \\(\\d+\\.\\d–\\d+\\.\\d\\) more of 100 games"));
        // An overview first: every situation in a line, closed; a key opens it.
        assertThat(page.locator(".play-of")).hasCount(11);
        Locator gate = page.locator("#gate");
        assertThat(gate.locator("summary"))
                .containsText(Pattern.compile("Gate.*Ahead: .+\\. Even: .+\\. Behind: .+\\."));
        assertThat(gate.locator("dd").first()).not().isVisible();
        picture("playbook");
        assertAccessible();
        gate.locator("summary").focus();
        page.keyboard().press("Enter");
        assertThat(gate.locator("dd").first()).isVisible();
        assertThat(gate.locator("dd").first()).containsText("Play the ");
        picture("playbook-open");
        assertAccessible();
        page.locator("summary", new Page.LocatorOptions().setHasText("Safe or after every bag?"))
                .click();
        assertThat(page.locator("#approaches li").first()).containsText("conservative wins");
        // On paper everything is open.
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        assertThat(page.locator("#wall dd").first()).isVisible();
        assertThat(page.locator("#worths li").first()).isVisible();
    }

    /** Who throws from the right sees the boards mirrored, here and where they are played. */
    @Test
    void forTheRightSideThePlaybookIsMirrored() {
        records.addPlayer("Ida", Player.Hand.LEFT, Player.Hand.RIGHT);
        page.navigate(url("/playbook"));
        Locator bag = page.locator("#shoulder .mini rect.b-versus");
        assertThat(bag).hasAttribute("x", "5.3", new LocatorAssertions.HasAttributeOptions().setTimeout(PATIENCE));
        assertThat(page.locator("main")).containsText("Boards are drawn for the right side");
        page.navigate(url("/advise?situation=shoulder"));
        assertThat(page.locator(".lying")).hasAttribute("aria-label", Pattern.compile("theirs at Depth 1, right"));
    }
}
