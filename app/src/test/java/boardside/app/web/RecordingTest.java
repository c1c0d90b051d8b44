package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import boardside.app.practice.BagSet;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.record.RunDetail;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Outcome;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Recording at the boards, as a player does it. */
class RecordingTest extends Browser {

    @Test
    void tenRoundsOfFourInTwelveTaps() {
        page.navigate(url("/"));
        picture("home");
        assertAccessible();
        page.locator("a.tile").first().click();
        picture("start");
        assertAccessible();
        page.locator("#start").click();
        finish("4-0-0").waitFor();
        picture("run-new");
        assertAccessible();
        for (int round = 0; round < 10; round++) {
            finish(round % 2 == 0 ? "3-1-0" : "1-2-1").click();
        }
        assertThat(page.locator("#score")).hasText("75");
        assertThat(page.locator("#done-said")).hasText("75 points in 10 rounds");
        assertSent();
        picture("run-done");
        assertAccessible();

        RunDetail stored = stored();
        assertThat(stored.run().finishedAt()).isNotNull();
        assertThat(stored.run().sum().points()).isEqualTo(75);
        assertThat(stored.rounds()).hasSize(10);
    }

    @Test
    void sameAgainIsOneTapAndShowsWhatIsNeeded() {
        start("total");
        tapRounds("3-1-0", 10);
        assertSent();
        page.navigate(url("/"));
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Same again"))
                .click();
        assertThat(page.locator("#needed")).hasText("10.1 a round over the last 10 beats your best (100).");
        assertThat(page.locator("#against")).hasText("best 100, usual 100");
        finish("0-0-4").click();
        assertThat(page.locator("#needed")).hasText("11.3 a round over the last 9 beats your best (100).");
        tapRounds("4-0-0", 8);
        assertThat(page.locator("#needed")).hasText("5 in the last round beats your best (100).");
        picture("run-needed");
        finish("1-2-1").click();
        assertThat(page.locator("#score")).hasText("101");
    }

    @Test
    void anEarlierRoundIsCorrectedInTwoTapsAndTheChangeUndone() {
        start("total");
        finish("4-0-0").click();
        finish("0-4-0").click();
        finish("2-1-1").click();
        assertThat(page.locator("#score")).hasText("23");
        page.locator("#rounds button").nth(1).click();
        assertThat(page.locator("#entry")).containsText("Correcting round 2");
        picture("run-correcting");
        assertAccessible();
        finish("1-3-0").click();
        assertThat(page.locator("#score")).hasText("25");
        assertSent();
        assertThat(counts(2)).containsExactly("1-3-0");

        page.locator("#undo").click();
        assertThat(page.locator("#score")).hasText("23");
        page.locator("#undo").click();
        assertThat(page.locator("#score")).hasText("16");
        assertSent();
        assertThat(counts(2)).containsExactly("0-4-0");
        assertThat(counts(3)).isEmpty();
    }

    @Test
    void undoAfterTheLastRoundOpensTheRunAgain() {
        start("total");
        tapRounds("2-2-0", 10);
        assertThat(page.locator("#done-said")).isVisible();
        page.locator("#undo").click();
        assertThat(page.locator("#where")).hasText("Round 10 of 10");
        assertSent();
        assertThat(stored().run().finishedAt()).isNull();
        finish("4-0-0").click();
        assertThat(page.locator("#score")).hasText("84");
        assertSent();
        assertThat(stored().run().finishedAt()).isNotNull();
    }

    @Test
    void aRaceWonAndOneLost() {
        page.navigate(url("/start/race"));
        page.getByLabel("8", new Page.GetByLabelOptions().setExact(true)).check();
        page.locator("#start").click();
        assertThat(page.locator("#where")).hasText("Round 1, ghost 8");
        finish("4-0-0").click();
        assertThat(page.locator("#score")).hasText("4–0");
        finish("2-1-1").click();
        assertThat(page.locator("#score")).hasText("4–1");
        assertThat(page.locator("#needed")).hasText("You need 17, the ghost 20.");
        picture("run-race");
        tapRounds("4-0-0", 5);
        assertThat(page.locator("#done-said")).hasText("Won 24–1 in 7 rounds");
        assertSent();
        assertThat(stored().run().finishedAt()).isNotNull();
        assertThat(stored().rounds().get(0).lines().get(0).ghost()).isEqualTo(8);

        start("race");
        tapRounds("0-0-4", 3);
        assertThat(page.locator("#done-said")).hasText("0–24 after 3 rounds. The ghost takes this one.");
        picture("run-lost");
        assertSent();
    }

    @Test
    void aCorrectionThatEndsTheGameTakesLaterRoundsBack() {
        start("race");
        finish("4-0-0").click();
        finish("2-2-0").click();
        finish("2-2-0").click();
        finish("0-0-4").click();
        assertThat(page.locator("#score")).hasText("13–5");
        page.locator("#rounds button").nth(1).click();
        finish("4-0-0").click();
        page.locator("#rounds button").nth(2).click();
        finish("4-0-0").click();
        assertThat(page.locator("#done-said")).hasText("Won 21–0 in 3 rounds");
        assertSent();
        assertThat(stored().run().sum().rounds()).isEqualTo(3);
        page.locator("#undo").click();
        page.locator("#undo").click();
        assertThat(page.locator("#score")).hasText("13–5");
        assertSent();
        assertThat(stored().run().sum().rounds()).isEqualTo(4);
    }

    @Test
    void volumeWithTwoBagSetsTakesOneTapASet() {
        int player = records.firstPlayer().id();
        BagSet slow = records.saveBag(player, BagSet.named(records.ids().next(), "Mill Pond"));
        BagSet fast = records.saveBag(player, BagSet.named(records.ids().next(), "Dry Ridge"));
        page.navigate(url("/start/volume"));
        page.getByLabel("Mill Pond").check();
        page.getByLabel("Dry Ridge").check();
        page.locator("#start").click();
        for (int round = 0; round < 5; round++) {
            count(slow, 3).click();
            count(fast, 1).click();
        }
        assertThat(page.locator("#done-said")).hasText("20 of 40 bags in");
        assertSent();
        RunDetail stored = stored();
        assertThat(stored.rounds()).hasSize(5);
        assertThat(stored.rounds().get(0).lines())
                .extracting(Line::bag, Line::thrown, Line::in, Line::on)
                .containsExactlyInAnyOrder(tuple(slow.id(), 4, 3, null), tuple(fast.id(), 4, 1, null));
        assertThat(stored.run().sum().points()).isNull();

        start("volume");
        count(slow, 2).click();
        picture("run-volume");
        assertAccessible();
        page.locator("#undo").click();
        assertThat(count(slow, 2)).hasAttribute("aria-pressed", "false");
    }

    @Test
    void casualThrowingNeedsNoCount() {
        start("casual");
        page.getByText("4 thrown, not counted").click();
        page.locator("[data-count=\"2\"]").click();
        assertSent();
        page.locator("#more").click();
        picture("run-more");
        assertAccessible();
        page.locator("#finish").click();
        RunDetail stored = records.run(records.firstPlayer().id(), lastRun()).orElseThrow();
        assertThat(stored.run().sum().thrown()).isEqualTo(8);
        assertThat(stored.rounds().get(0).lines().get(0).in()).isNull();
    }

    @Test
    void bagByBagWithKeysMissesAndABagPushedInLater() {
        start("total");
        page.locator("#mode").click();
        outcome("off").click();
        page.getByText("left", new Page.GetByTextOptions().setExact(true)).click();
        page.keyboard().press("ArrowRight");
        page.keyboard().press("PageUp");
        assertThat(page.locator("#earlier")).isEnabled();
        picture("run-bag-by-bag");
        assertAccessible();
        page.locator("#earlier").click();
        page.keyboard().press("3");
        assertThat(page.locator("#score")).hasText("6");
        assertSent();
        Round round = stored().rounds().get(0);
        assertThat(round.thrown())
                .extracting(Round.Thrown::outcome)
                .containsExactly(Outcome.OFF, Outcome.IN, Outcome.IN, Outcome.OFF);
        assertThat(round.lines().get(0).misses().left()).isEqualTo(1);

        page.keyboard().press("1");
        page.keyboard().press("Backspace");
        page.keyboard().press("u");
        assertThat(page.locator("#score")).hasText("0");
        assertSent();
        assertThat(counts(1)).isEmpty();
    }

    @Test
    void howOneThrowsMayChangeBetweenRounds() {
        start("total");
        finish("2-0-2").click();
        page.locator("#setup button").first().click();
        page.locator("#setup-sheet #new-bag").fill("Harbour Nine");
        page.locator("#setup-sheet").getByLabel("aggressive").check();
        page.locator("#setup-sheet").getByLabel("narrow board").check();
        picture("run-setup");
        assertAccessible();
        page.locator("#setup-sheet button.main").click();
        assertThat(page.locator("#setup")).containsText("Harbour Nine");
        finish("1-1-2").click();
        assertSent();
        List<Round> rounds = stored().rounds();
        Line first = rounds.get(0).lines().get(0);
        Line second = rounds.get(1).lines().get(0);
        assertThat(first.bag()).isEmpty();
        assertThat(first.board()).isEqualTo(BoardKind.REGULATION);
        assertThat(second.approach()).isEqualTo(Approach.AGGRESSIVE);
        assertThat(second.board()).isEqualTo(BoardKind.NARROW);
        assertThat(records.bags(records.firstPlayer().id()))
                .extracting(BagSet::name)
                .containsExactly("Harbour Nine");

        start("total");
        assertThat(page.locator("#setup")).containsText("narrow board");
    }

    @Test
    void theKeyboardAloneRecordsARound() {
        start("total");
        finish("4-0-0").focus();
        page.keyboard().press("Enter");
        assertThat(page.locator("#score")).hasText("12");
        assertThat(finish("4-0-0")).isFocused();
        page.keyboard().press("Enter");
        assertThat(page.locator("#score")).hasText("24");
    }

    @Test
    void aWholeRunWithoutNetworkIsSentWhenItReturns() {
        start("total");
        finish("4-0-0").waitFor();
        assertSent();
        phone.setOffline(true);
        tapRounds("3-0-1", 10);
        assertThat(page.locator("#done-said")).hasText("90 points in 10 rounds");
        assertThat(page.locator("#sent")).hasText("11 not yet sent");
        picture("run-offline");
        assertThat(stored().rounds()).isEmpty();
        phone.setOffline(false);
        assertSent();
        assertThat(stored().run().sum().points()).isEqualTo(90);
        assertThat(stored().run().finishedAt()).isNotNull();
    }

    @Test
    void aReloadWithAFullOutboxLosesNothing() {
        start("total");
        finish("4-0-0").waitFor();
        assertSent();
        page.route("**/api/outbox", route -> route.abort());
        finish("4-0-0").click();
        finish("2-1-1").click();
        page.locator("#mode").click();
        outcome("in").click();
        page.reload();
        assertThat(page.locator("#score")).hasText("19");
        assertThat(page.locator("#sent")).hasText("3 not yet sent");
        assertThat(page.locator(".slots .bag-in")).hasCount(1);
        assertThat(stored().rounds()).isEmpty();
        page.unroute("**/api/outbox");
        outcome("in").click();
        assertSent();
        assertThat(stored().run().sum().points()).isEqualTo(19);
        page.locator("#undo").click();
        page.locator("#undo").click();
        page.locator("#undo").click();
        page.locator("#undo").click();
        assertThat(page.locator("#score")).hasText("12");
    }

    @Test
    void whatARunLeftOnThePhoneIsSentFromAnyPage() {
        start("total");
        finish("4-0-0").waitFor();
        assertSent();
        String run = runId();
        page.route("**/api/outbox", route -> route.abort());
        tapRounds("3-1-0", 10);
        page.locator("#summary").click();
        assertThat(page.locator("#unsent")).containsText("still on this device");
        picture("summary-unsent");
        page.unroute("**/api/outbox");
        assertThat(page.locator("h1")).hasText("100 points in 10 rounds");
        assertThat(page.locator("#unsent")).isHidden();
        assertThat(records.run(records.firstPlayer().id(), run)
                        .orElseThrow()
                        .run()
                        .finishedAt())
                .isNotNull();
    }

    @Test
    void theScoreIsSpokenWhereThePlayerWantsIt() {
        page.addInitScript(
                "window.said = [];" + "window.speechSynthesis.speak = (words) => window.said.push(words.text);");
        start("total");
        finish("4-0-0").click();
        page.locator("#more").click();
        page.locator("#spoken").check();
        page.locator("[data-close]").click();
        finish("2-1-1").click();
        assertThat((Object) page.evaluate("window.said")).isEqualTo(List.of("I will say the score.", "7. Total 19."));
    }

    @Test
    void anAnswerLostOnTheWayDoublesNothing() {
        start("total");
        finish("4-0-0").waitFor();
        int[] lost = {0};
        page.route("**/api/outbox", route -> {
            route.fetch();
            if (lost[0]++ < 2) {
                route.abort();
            } else {
                route.resume();
            }
        });
        finish("4-0-0").click();
        finish("3-1-0").click();
        assertSent();
        page.unroute("**/api/outbox");
        assertThat(stored().run().sum().points()).isEqualTo(22);
        assertThat(stored().rounds()).hasSize(2);
        assertThat(lost[0]).isGreaterThan(2);
    }

    @Test
    void whatIsRefusedIsSaidAndKept() {
        start("total");
        finish("4-0-0").waitFor();
        records.deleteRun(records.firstPlayer().id(), runId(), Instant.now());
        finish("4-0-0").click();
        assertThat(page.locator("#sent")).hasText("1 not stored: see More");
        page.locator("#more").click();
        assertThat(page.locator("#refused-list li")).hasCount(1);
        assertAccessible();
        page.locator("#forget").click();
        assertThat(page.locator("#sent")).hasText("all stored");
    }

    @Test
    void roundsAndBagsOfASetAreFree() {
        page.navigate(url("/start/volume"));
        page.locator("[name=rounds-other]").fill("3");
        page.locator("[name=per-set-other]").fill("7");
        page.locator("#start").click();
        for (int round = 0; round < 3; round++) {
            page.locator("[data-count=\"6\"]").click();
        }
        assertThat(page.locator("#done-said")).hasText("18 of 21 bags in");
        page.navigate(url("/start/volume"));
        assertThat(page.getByLabel("7", new Page.GetByLabelOptions().setExact(true)))
                .isChecked();
    }

    @Test
    void aFaultyFormIsShownAgainAsFilledIn() {
        page.navigate(url("/start/volume"));
        page.evaluate("() => document.querySelector('input[name=\"per-set\"]').value = 'many'");
        page.evaluate("() => document.querySelector('input[name=\"per-set\"]').checked = true");
        page.locator("#new-bag").fill("Tin Roof");
        page.locator("#start").click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("\"many\"");
        assertThat(page.locator("#new-bag")).hasValue("Tin Roof");
        assertAccessible();
    }

    private void start(String drill) {
        page.navigate(url("/start/" + drill));
        page.locator("#start").click();
        page.waitForURL("**/runs/*");
    }

    private Locator finish(String finish) {
        return page.locator("[data-finish=\"" + finish + "\"]");
    }

    private Locator outcome(String outcome) {
        return page.locator("[data-outcome=\"" + outcome + "\"]");
    }

    private Locator count(BagSet bag, int in) {
        return page.locator("[data-set=\"" + bag.id() + "\"] [data-count=\"" + in + "\"]");
    }

    private void tapRounds(String finish, int rounds) {
        for (int i = 0; i < rounds; i++) {
            finish(finish).click();
        }
    }

    private void assertSent() {
        assertThat(page.locator("#sent")).hasText("all stored");
    }

    private String runId() {
        return page.url().replaceFirst(".*/runs/", "");
    }

    private String lastRun() {
        return records.lastRun(records.firstPlayer().id(), null).orElseThrow().id();
    }

    private RunDetail stored() {
        return records.run(records.firstPlayer().id(), runId()).orElseThrow();
    }

    private List<String> counts(int round) {
        return stored().rounds().stream()
                .filter(stored -> stored.number() == round)
                .flatMap(stored -> stored.lines().stream())
                .map(line -> line.in() + "-" + line.on() + "-" + line.off())
                .toList();
    }
}
