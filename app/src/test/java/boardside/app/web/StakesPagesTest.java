package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.BagSet;
import boardside.app.practice.Line;
import boardside.app.practice.Stakes;
import boardside.engine.rules.BoardKind;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Mixed speeds in random order, stakes, and the narrow board, from the start page to the summary. */
class StakesPagesTest extends Recorder {
    @Test
    void mixedSpeedsAreCalledBagByBag() {
        BagSet slow = bag("Mill Pond");
        BagSet fast = bag("Dry Ridge");
        Map<String, String> names = Map.of("Mill Pond", slow.id(), "Dry Ridge", fast.id());
        page.navigate(url("/start/volume"));
        choose("bag", slow.id());
        choose("bag", fast.id());
        choose("order", "mixed");
        page.locator("[name=rounds-other]").fill("2");
        picture("mixed-start");
        assertAccessible();
        go();
        picture("mixed-new");
        assertAccessible();
        phone.setOffline(true);
        for (int round = 0; round < 2; round++) {
            Map<String, Integer> called = new java.util.HashMap<>();
            for (int bag = 0; bag < 8; bag++) {
                String name = page.locator("#call b").textContent();
                called.merge(name, 1, Integer::sum);
                outcome(fast.id().equals(names.get(name)) ? "in" : "missed").click();
                if (round == 0 && bag == 3) {
                    // A reload in the middle loses nothing, and the order stays.
                    assertThat(page.locator("#call")).containsText("Bag 5 of 8");
                    String next = page.locator("#call b").textContent();
                    phone.setOffline(false);
                    page.reload();
                    phone.setOffline(true);
                    assertThat(page.locator("#call b")).hasText(next);
                    page.locator("#undo").click();
                    assertThat(page.locator("#call")).containsText("Bag 4 of 8");
                    outcome(fast.id().equals(names.get(name)) ? "in" : "missed").click();
                }
            }
            assertThat(called).isEqualTo(Map.of("Mill Pond", 4, "Dry Ridge", 4));
        }
        assertThat(page.locator("#done-said")).hasText("8 of 16 bags in");
        phone.setOffline(false);
        assertSent();
        Map<String, Integer> in = stored().rounds().stream()
                .flatMap(round -> round.lines().stream())
                .collect(Collectors.toMap(Line::bag, Line::in, Integer::sum));
        assertThat(in).isEqualTo(Map.of(slow.id(), 0, fast.id(), 8));
        assertThat(stored().rounds()).allSatisfy(round -> {
            assertThat(round.lines()).extracting(Line::thrown).containsExactly(4, 4);
            assertThat(round.thrown()).isEmpty();
        });
        page.locator("#summary").click();
        assertThat(page.locator("p.quiet").first()).containsText("called in random order");
        picture("mixed-summary");
    }

    @Test
    void mixedSpeedsCanBeCountedInOnAndOff() {
        BagSet slow = bag("Mill Pond");
        page.navigate(url("/start/volume"));
        choose("bag", slow.id());
        choose("order", "mixed");
        choose("count", "all");
        page.locator("[name=rounds-other]").fill("1");
        open("Put something at stake");
        choose("last-bag", "yes");
        go();
        page.keyboard().press("1");
        page.keyboard().press("2");
        page.keyboard().press("3");
        assertThat(page.locator("#call")).containsText("This one must go in");
        picture("mixed-counted");
        page.keyboard().press("1");
        assertSent();
        assertThat(stored().rounds().get(0).lines().get(0).on()).isEqualTo(1);
        assertThat(stored().rounds().get(0).thrown()).hasSize(4);
        page.locator("#summary").click();
        assertThat(page.locator(".more")).hasText("The last bag had to go in, and did in 1 of 1 rounds.");
    }

    @Test
    void suddenDeathEndsTheRunAndIsKeptWithIt() {
        page.navigate(url("/start/total"));
        open("Put something at stake");
        choose("sudden-death", "5");
        picture("stakes-start");
        assertAccessible();
        go();
        assertThat(page.locator("#stakes")).hasText("below 5 points the run ends");
        tap("2-1-1", "1-2-1", "1-1-2");
        assertThat(page.locator("#done-said")).hasText("16 points in 3 rounds");
        assertSent();
        assertThat(stored().run().setup().stakes()).isEqualTo(new Stakes(false, 5, null, null, false));
        assertThat(stored().run().finishedAt()).isNotNull();
        page.locator("#undo").click();
        tap("2-0-2");
        assertThat(page.locator("#where")).hasText("Round 4 of 10");
        tap("0-0-4");
        summary();
        assertThat(page.locator("#said")).containsText("A low round would have ended this run at once");
        picture("stakes-summary");
        page.navigate(url("/journal"));
        assertThat(page.locator("main")).containsText("below 5 points the run ends");
    }

    @Test
    void aRaceIsLostBySuddenDeath() {
        page.navigate(url("/start/race"));
        open("Put something at stake");
        choose("sudden-death", "3");
        go();
        tap("4-0-0", "0-1-3");
        assertThat(page.locator("#done-said")).containsText("The ghost takes this one");
        assertSent();
        page.locator("#summary").click();
        assertThat(page.locator("#result")).hasText("7\u20134 after 2 rounds");
    }

    @Test
    void theLastBagMustGoInAndAClockRunsAloud() {
        page.addInitScript("""
                window.said = [];
                Object.defineProperty(window, 'speechSynthesis', {
                  value: { cancel() {}, speak(words) { window.said.push(words.text); } },
                });
                window.SpeechSynthesisUtterance = function (text) { this.text = text; };
                """);
        page.clock().install();
        page.navigate(url("/start/total"));
        choose("board", "narrow", "Face, approach");
        open("Put something at stake");
        choose("last-bag", "yes");
        choose("shot-clock", "8");
        choose("count-down", "yes");
        page.locator("[name=rounds-other]").fill("2");
        go();
        assertThat(page.locator("#clock")).hasText("Start the clock: 8 s");
        page.locator("#clock").click();
        page.clock().runFor(4_000);
        assertThat(page.locator("#clock")).hasText("4 s");
        picture("stakes-clock");
        assertAccessible();
        outcome("in").click();
        assertThat(page.locator("#clock")).hasText("8 s");
        outcome("on").click();
        outcome("off").click();
        assertThat(page.locator("#call")).hasText("This one must go in");
        page.clock().runFor(9_000);
        assertThat(page.locator("#clock")).hasText("Time");
        assertThat(page.evaluate("window.said").toString()).contains("5, 4, 3, 2, 1, Time");
        picture("stakes-must");
        outcome("in").click();
        // The bags are fetched first.
        assertThat(page.locator("#clock")).hasText("Start the clock: 8 s");
        for (int bag = 0; bag < 4; bag++) {
            outcome("off").click();
        }
        summary();
        assertThat(page.locator(".more")).hasText("The last bag had to go in, and did in 1 of 2 rounds.");
        assertThat(stored().run().setup().stakes()).isEqualTo(new Stakes(true, null, null, 8, true));
        assertThat(stored().rounds().get(0).lines().get(0).board()).isEqualTo(BoardKind.NARROW);
    }

    private void choose(String name, String value, String within) {
        open(within);
        choose(name, value);
    }
}
