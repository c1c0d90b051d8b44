package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.cli.Answers;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.Operation;
import boardside.app.practice.Run;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Placement and situations in a browser, from start to summary. */
class TriesPageTest extends Browser {
    private int me() {
        return records.firstPlayer().id();
    }

    private List<Try.Played> played(Drill drill) {
        Run run = records.lastRun(me(), drill).orElseThrow();
        return records.tries(me(), run.id()).stream()
                .map(tried -> Objects.requireNonNull(tried.played()))
                .toList();
    }

    private void tapAt(double x, double y) {
        BoundingBox box = page.locator(".board svg").boundingBox();
        page.mouse().click(box.x + (x / 24 + 0.5) * box.width, box.y + (1 - y / 48) * box.height);
    }

    private void allStored() {
        assertThat(page.locator("#sent")).hasText("all stored");
    }

    private void startPlacement(String... targets) {
        page.navigate(url("/start/placement"));
        Locator checked = page.locator("input[name=target]:checked");
        while (checked.count() > 0) {
            checked.first().uncheck();
        }
        for (String target : targets) {
            page.locator("input[name=target][value='" + target + "']").check();
        }
        page.locator("input[name=call][value=order]").check();
        page.locator("input[name=tries-other]").fill("4");
    }

    @Test
    void aPlacementIsThrownOfflineCorrectedAndSummedUp() {
        startPlacement("2-left", "back-middle");
        picture("placement-start");
        assertAccessible();
        page.locator("#start").click();
        assertThat(page.locator("#call")).containsText("Depth 2, left");
        tapAt(-8, 27);
        assertThat(page.locator("#said")).hasText("There: on, Depth 2, left.");
        assertThat(page.locator("#call")).containsText("Behind the hole, middle");
        allStored();
        picture("placement-run");
        assertAccessible();
        phone.setOffline(true);
        page.locator("[data-off=long]").click();
        // By keys alone: from the middle of the board one part to the left and one down.
        page.locator(".cells button[tabindex='0']").focus();
        page.keyboard().press("ArrowLeft");
        page.keyboard().press("ArrowDown");
        assertThat(page.locator(":focus")).hasAttribute("aria-label", "Depth 3, left");
        page.keyboard().press("Enter");
        assertThat(page.locator("#score")).hasText("1/3");
        page.locator("#undo").click();
        assertThat(page.locator("#score")).hasText("1/2");
        tapAt(0, 39);
        assertThat(page.locator("#said")).hasText("Not there: in the hole.");
        // The second one was tapped wrongly: it came back and lay behind the hole after all.
        page.locator("#rounds button").nth(1).click();
        assertThat(page.locator(".correcting-head")).containsText("Try 2");
        tapAt(1, 45);
        assertThat(page.locator("#score")).hasText("2/3");
        assertThat(page.locator("#sent")).containsText("not yet sent");
        tapAt(0, 45);
        assertThat(page.locator("#done-said")).hasText("3 of 4 worked");
        phone.setOffline(false);
        allStored();
        page.locator("#summary").click();
        assertThat(page.locator("#result")).hasText("3 of 4 worked");
        picture("placement-summary");
        assertAccessible();

        List<Try.Played> tries = played(Drill.PLACEMENT);
        assertThat(tries)
                .extracting(Try.Played::target)
                .containsExactly(
                        Target.parse("2-left"),
                        Target.parse("back-middle"),
                        Target.parse("2-left"),
                        Target.parse("back-middle"));
        assertThat(tries).extracting(Try.Played::worked).containsExactly(true, true, false, true);
        assertThat(tries.get(1).shot()).isEqualTo(Shot.BACK_BLOCK);
        assertThat(Objects.requireNonNull(tries.get(2).rest()).outcome()).isEqualTo(Outcome.IN);
        assertThat(records.lastRun(me(), Drill.PLACEMENT).orElseThrow().open()).isFalse();

        page.navigate(url("/rates/placement"));
        assertThat(page.locator("#rates")).containsText("Depth 2, left");
        picture("placement-rates");
        assertAccessible();
        page.navigate(url("/journal"));
        assertThat(page.locator("main")).containsText("3 of 4 worked");
    }

    @Test
    void aReloadInTheMiddleOffersTheSameCallAndKeepsWhatWasNotSent() {
        page.navigate(url("/start/placement"));
        page.locator("input[name=call][value=random]").check();
        page.locator("#start").click();
        tapAt(0, 3);
        allStored();
        page.route("**/api/outbox", route -> route.abort());
        page.locator("[data-off=left]").click();
        String called = page.locator("#call").textContent();
        page.reload();
        assertThat(page.locator("#score")).hasText("0/2");
        assertThat(page.locator("#call")).hasText(called);
        page.unroute("**/api/outbox");
        page.evaluate("window.dispatchEvent(new Event('online'))");
        allStored();
        assertThat(played(Drill.PLACEMENT)).hasSize(2);
    }

    @Test
    void aSetUpIsDrawnKeptPlayedAndShared() {
        page.navigate(url("/situations/new"));
        tapAt(0, 33);
        page.locator("#side-me").click();
        // What was chosen changes sides; the next one lies over it and is refused.
        assertThat(page.locator(".lying")).hasAttribute("aria-label", "mine at Depth 1, middle");
        page.locator("#side-versus").click();
        page.locator(".lying").click();
        page.locator("#side-me").click();
        tapAt(-8, 27);
        assertThat(page.locator(".lying")).hasCount(2);
        page.locator("#snap").click();
        tapAt(-3, 30);
        assertThat(page.locator("#draw-said")).containsText("Another bag lies there");
        page.locator(".lying").nth(1).focus();
        page.keyboard().press("ArrowUp");
        assertThat(page.locator("#draw-said")).containsText("Moved");
        page.locator("#draw-undo").click();
        page.locator("#name").fill("Doorway");
        picture("situation-draw");
        assertAccessible();
        page.locator("#keep").click();
        page.waitForURL("**/situations?said=saved");
        picture("situations");
        assertAccessible();
        KeptSituation kept = records.situations(me()).get(0);
        assertThat(kept.position())
                .isEqualTo(new Position(List.of(new Lying(0, 33, Side.VERSUS), new Lying(-8, 27, Side.ME))));

        page.locator("a.tile", new com.microsoft.playwright.Page.LocatorOptions().setHasText("Doorway"))
                .click();
        picture("situation-share");
        assertAccessible();
        String share = page.locator("pre.share").textContent();
        page.navigate(url("/situations"));
        page.locator("#text").fill(share.replace("Doorway", "From a friend"));
        page.locator("form button").click();
        assertThat(page.locator("main")).containsText("From a friend");
        page.locator("#text").fill("hello");
        page.locator("form button").click();
        assertThat(page.locator("main [role=alert]")).containsText("no set-up");
    }

    @Test
    void aSituationIsPlayedWithTwoShotsAndARateComesOut() {
        page.navigate(url("/start/situation"));
        page.locator("input[name=situation][value=gate]").check();
        page.locator("input[name=call][value=mine]").check();
        page.locator("input[name=tries-other]").fill("3");
        picture("situation-start");
        assertAccessible();
        page.locator("#start").click();
        assertThat(page.locator("#call")).containsText("Cut left");
        assertThat(page.locator("#by-hand")).hasAttribute("aria-pressed", "true");
        picture("situation-run");
        assertAccessible();
        page.locator("#worked").click();
        assertThat(page.locator("#said")).containsText("tap where bag 1 ended");
        tapAt(0, 39);
        assertThat(page.locator("#said")).hasText("Bag 1: in the hole.");
        page.locator("[data-part=call-cut-right]").click();
        page.keyboard().press("3");
        page.keyboard().press("Backspace");
        page.keyboard().press("3");
        page.locator("#worked").click();
        assertThat(page.locator("#done-said")).hasText("2 of 3 worked");
        allStored();
        page.locator("#summary").click();
        assertThat(page.locator("#result")).hasText("2 of 3 worked");
        assertThat(page.locator("main")).containsText("it may be luck");
        picture("situation-summary");
        assertAccessible();
        List<Try.Played> tries = played(Drill.SITUATION);
        assertThat(tries).extracting(Try.Played::shot).containsExactly(Shot.CUT_LEFT, Shot.CUT_RIGHT, Shot.CUT_RIGHT);
        assertThat(tries).allMatch(Try.Played::byHand);
        page.navigate(url("/rates/situation?by=bag"));
        assertThat(page.locator("#rates")).containsText("Gate: Cut left");
        picture("situation-rates");
        assertAccessible();
        // The command says the same digits.
        JsonNode rates = Answers.json(folder.resolve("store.db"), "rates", "situation", "--by", "bag")
                .get("rates");
        assertThat(page.locator("#rates tbody tr")).hasCount(rates.size());
        for (JsonNode rate : rates) {
            JsonNode range = rate.get("rate");
            assertThat(page.locator("#rates"))
                    .containsText("%.0f %% (%.0f\u2013%.0f)"
                            .formatted(
                                    100 * range.get("estimate").asDouble(),
                                    100 * range.get("low").asDouble(),
                                    100 * range.get("high").asDouble()));
        }
    }

    @Test
    void aSituationIsPlayedByKeysAlone() {
        page.navigate(url("/start/situation"));
        page.locator("[name=tries-other]").fill("2");
        page.locator("#start").focus();
        page.keyboard().press("Enter");
        page.waitForURL("**/runs/*");
        page.keyboard().press("1");
        assertThat(page.locator("#score")).hasText("1/1");
        // Where the bag ended: onto the board, and from part to part.
        page.locator(".cells button[tabindex='0']").focus();
        page.keyboard().press("ArrowUp");
        page.keyboard().press("ArrowUp");
        page.keyboard().press("Enter");
        assertThat(page.locator("#said")).hasText("Bag 1: in the hole.");
        page.keyboard().press("u");
        page.keyboard().press("u");
        assertThat(page.locator("#score")).hasText("0/0");
        page.locator("#redraw").focus();
        page.keyboard().press("Enter");
        page.locator("#drawing-sheet .lying").focus();
        page.keyboard().press("ArrowRight");
        assertThat(page.locator("#draw-said")).containsText("Moved: theirs at Depth 1, right");
        page.keyboard().press("Escape");
        assertThat(page.locator("#drawing-sheet")).isHidden();
        page.keyboard().press("3");
        page.keyboard().press("1");
        assertThat(page.locator("#done-said")).hasText("1 of 2 worked");
        assertThat(page.locator("#summary")).isVisible();
        allStored();
        assertThat(played(Drill.SITUATION))
                .extracting(Try.Played::position)
                .allMatch(position -> position.equals(new Position(List.of(new Lying(0, 33, Side.VERSUS)))));
    }

    @Test
    void twoTakeTurnsAtAChain() {
        page.navigate(url("/start/situation"));
        page.locator("input[name=situation][value=gate]").check();
        page.locator("summary", new com.microsoft.playwright.Page.LocatorOptions().setHasText("chain"))
                .click();
        page.locator("input[name=chain][value=yes]").check();
        page.locator("#partner").fill("Kim");
        page.locator("input[name=tries-other]").fill("1");
        page.locator("select[name=chain-target]").first().selectOption("1-middle");
        picture("chain-start");
        page.locator("#start").click();
        assertThat(page.locator("main [role=alert]"))
                .containsText("Shot 1 puts its block at Depth 1, middle, where a bag lies");
        page.locator("input[name=situation][value=open]").check();
        page.locator("#start").click();
        assertThat(page.locator("#call")).containsText("Block: Depth 1, middle");
        page.locator("#worked").click();
        assertThat(page.locator("#call")).containsText("Cut left");
        assertThat(page.locator("#by-hand")).hasAttribute("aria-pressed", "false");
        page.locator("#worked").click();
        page.locator("#worked").click();
        assertThat(page.locator("#call")).containsText("turn: Kim");
        picture("chain-run");
        page.locator("#failed").click();
        // The block missed: it is laid by hand, and the chain goes on.
        assertThat(page.locator("#by-hand")).hasAttribute("aria-pressed", "true");
        page.locator("#worked").click();
        page.locator("#worked").click();
        assertThat(page.locator("#done-said")).hasText("1 of 1 worked");
        assertThat(page.locator("#against")).hasText("Kim: 0 of 1");
        allStored();
        page.locator("#summary").click();
        assertThat(page.locator("#result")).hasText("1 of 1 chains worked");
        assertThat(page.locator("main")).containsText("Kim: 0 of 1");
        page.navigate(url("/rates/situation"));
        assertThat(page.locator("main")).containsText("The whole chain");
        List<Try.Played> tries = played(Drill.SITUATION);
        assertThat(tries).hasSize(6);
        assertThat(tries.get(1).position()).isEqualTo(new Position(List.of(new Lying(0, 33, Side.ME))));
    }

    @Test
    void aSetUpChangedOnTheWayHoldsFromTheNextTryOn() {
        page.navigate(url("/start/situation"));
        page.locator("input[name=situation][value=gate]").check();
        page.locator("input[name=shot][value=cut-right]").uncheck();
        page.locator("input[name=tries-other]").fill("3");
        page.locator("#start").click();
        page.locator("#worked").click();
        page.locator("#redraw").click();
        picture("situation-redraw");
        assertAccessible();
        page.locator("#drawing-sheet .lying").focus();
        page.keyboard().press("ArrowDown");
        assertThat(page.locator("#draw-said")).containsText("Moved: theirs at Depth 2, middle");
        phone.setOffline(true);
        page.locator("#redrawn").click();
        page.locator("#failed").click();
        // What was changed is the last step but one; undone, the first set-up is played again.
        page.locator("#undo").click();
        page.locator("#undo").click();
        page.locator("#failed").click();
        page.locator("#redraw").click();
        page.locator("#drawing-sheet .lying").click();
        page.locator("#remove").click();
        page.locator("#redrawn").click();
        assertThat(page.locator("#by-hand")).hasCount(0);
        page.locator("#worked").click();
        phone.setOffline(false);
        allStored();
        Position gate = new Position(List.of(new Lying(0, 33, Side.VERSUS)));
        assertThat(played(Drill.SITUATION))
                .extracting(Try.Played::position)
                .containsExactly(gate, gate, Position.EMPTY);
        assertThat(played(Drill.SITUATION)).extracting(Try.Played::situation).containsExactly("gate", "gate", "");
        page.locator("#summary").click();
        assertThat(page.locator("#rates tbody tr")).hasCount(2);
        assertThat(page.locator("#rates")).containsText("Gate: Cut left");
        assertThat(page.locator("#rates")).containsText("Open board: Cut left");
        picture("situation-redrawn-summary");
        page.navigate(url("/journal/runs/"
                + records.lastRun(me(), Drill.SITUATION).orElseThrow().id()));
        assertThat(page.locator("main tbody tr").nth(1)).containsText("Gate: Cut left");
        assertThat(page.locator("main tbody tr").nth(2)).containsText("Open board: Cut left");
    }

    @Test
    void aMissEndsTriesUnderSuddenDeathAndACorrectionTakesLaterOnesBack() {
        startPlacement("1-middle");
        page.locator("input[name=tries-other]").fill("");
        page.locator("input[name=tries][value='']").check();
        page.locator("summary", new com.microsoft.playwright.Page.LocatorOptions().setHasText("at stake"))
                .click();
        page.locator("input[name=last-bag][value=yes]").check();
        page.locator("#start").click();
        assertThat(page.locator("main [role=alert]")).containsText("say after how many tries the run is over");
        page.locator("input[name=tries-other]").fill("5");
        page.locator("summary", new com.microsoft.playwright.Page.LocatorOptions().setHasText("at stake"))
                .click();
        page.locator("input[name=last-bag][value=no]").check();
        page.locator("input[name=misses][value='1']").check();
        picture("tries-stakes-start");
        assertAccessible();
        page.locator("#start").click();
        assertThat(page.locator("#stakes")).hasText("the first miss ends it");
        tapAt(0, 33);
        tapAt(0, 33);
        tapAt(0, 33);
        phone.setOffline(true);
        page.locator("#rounds button").nth(1).click();
        page.locator("[data-off=left]").click();
        assertThat(page.locator("#done-said")).hasText("1 of 2 worked. That miss ends it");
        page.locator("#undo").click();
        assertThat(page.locator("#score")).hasText("3/3");
        page.locator("[data-off=left]").click();
        assertThat(page.locator("#done-said")).hasText("3 of 4 worked. That miss ends it");
        picture("tries-sudden-death");
        phone.setOffline(false);
        allStored();
        page.locator("#summary").click();
        assertThat(page.locator("main")).containsText("Sudden death ended this run.");
        assertThat(page.locator("main")).containsText("the first miss ends it");
        assertThat(played(Drill.PLACEMENT)).extracting(Try.Played::worked).containsExactly(true, true, true, false);
        Run run = records.lastRun(me(), Drill.PLACEMENT).orElseThrow();
        assertThat(run.setup().stakes()).isEqualTo(new Stakes(false, null, 1, null, false));
        assertThat(run.open()).isFalse();
    }

    @Test
    void theLastTryMustWorkAndAClockCountsDownAloud() {
        page.addInitScript("""
                window.said = [];
                Object.defineProperty(window, 'speechSynthesis', {
                  value: { cancel() {}, speak(words) { window.said.push(words.text); } },
                });
                window.SpeechSynthesisUtterance = function (text) { this.text = text; };
                """);
        page.clock().install();
        page.navigate(url("/start/situation"));
        page.locator("input[name=situation][value=open]").check();
        page.locator("input[name=tries-other]").fill("2");
        page.locator("summary", new com.microsoft.playwright.Page.LocatorOptions().setHasText("at stake"))
                .click();
        page.locator("input[name=last-bag][value=yes]").check();
        page.locator("input[name=shot-clock][value='8']").check();
        page.locator("input[name=count-down][value=yes]").check();
        page.locator("#start").click();
        assertThat(page.locator("#call")).not().containsText("must work");
        page.locator("#clock").click();
        page.clock().runFor(9_000);
        assertThat(page.locator("#clock")).hasText("Time");
        assertThat(page.evaluate("window.said").toString()).contains("5, 4, 3, 2, 1, Time");
        page.locator("#worked").click();
        // Nothing lies on the board, so the next bag follows at once.
        assertThat(page.locator("#clock")).hasText("8 s");
        assertThat(page.locator("#call")).containsText("This one must work");
        picture("tries-must-work");
        assertAccessible();
        page.locator("#failed").click();
        assertThat(page.locator("#done-said")).hasText("1 of 2 worked. The last one had to work, and did not");
        assertThat(page.locator("#clock")).isHidden();
        allStored();
        page.locator("#summary").click();
        assertThat(page.locator("main")).containsText("The last one had to work, and did not this time.");
        page.navigate(url("/journal"));
        assertThat(page.locator("main")).containsText("last try must work, 8 s a bag");
    }

    @Test
    void aNarrowBoardHasNarrowLanes() {
        startPlacement("3-right");
        page.locator("summary", new com.microsoft.playwright.Page.LocatorOptions().setHasText("board"))
                .click();
        page.locator("input[name=board][value=narrow]").check();
        page.locator("#start").click();
        BoundingBox box = page.locator(".board svg").boundingBox();
        // Twelve inches wide: the right lane begins two inches from the middle.
        page.mouse().click(box.x + (2.5 / 12 + 0.5) * box.width, box.y + (1 - 21.0 / 48) * box.height);
        assertThat(page.locator("#score")).hasText("1/1");
        picture("placement-narrow");
        allStored();
        assertThat(played(Drill.PLACEMENT).get(0).worked()).isTrue();
    }

    @Test
    void whatWasCorrectedStandsInTheJournalAndCanBeUndone() {
        startPlacement("1-middle");
        page.locator("#start").click();
        tapAt(0, 33);
        allStored();
        Run run = records.lastRun(me(), Drill.PLACEMENT).orElseThrow();
        Try tried = records.tries(me(), run.id()).get(0);
        records.apply(
                me(),
                List.of(new Operation.PutTry(records.ids().next(), run.id(), tried.number(), null)),
                Instant.now());
        page.navigate(url("/journal/runs/" + run.id()));
        assertThat(page.locator("main")).containsText("before block worked, after nothing");
        page.locator("ul.entries button").click();
        assertThat(page.locator("main")).containsText("1 of 1 worked");
        picture("tries-journal");
        assertAccessible();
    }

    /** The script has the board's parts of its own; they are the engine's at every quarter of an inch that matters. */
    @Test
    void thePagesBoardHasTheEnginesParts() {
        page.navigate(url("/situations/new"));
        for (int width : List.of(24, 12)) {
            Object told = page.evaluate("""
                    async (width) => {
                      const board = await import("/static/js/board.js");
                      const parts = [];
                      for (let y = 0; y <= 48; y += 0.75) {
                        for (let x = -width / 2; x <= width / 2; x += 0.5) {
                          const spot = { x, y };
                          const part = board.targetAt(spot, width);
                          const centre = board.centreOf(part, width);
                          parts.push([board.textOf(part), board.inHole(spot), centre.x.toFixed(3), centre.y].join(" "));
                        }
                      }
                      return parts.join(";");
                    }
                    """, width);
            List<String> parts = new java.util.ArrayList<>();
            for (double y = 0; y <= 48; y += 0.75) {
                for (double x = -width / 2.0; x <= width / 2.0; x += 0.5) {
                    Spot spot = new Spot(x, y);
                    Target part = Target.at(spot, width);
                    Spot centre = part.centre(width);
                    parts.add("%s %s %.3f %.0f"
                            .formatted(part.text(), spot.inHole(), centre.x(), centre.y())
                            .replace("-0.000", "0.000"));
                }
            }
            assertThat(String.valueOf(told).replace("-0.000", "0.000")).isEqualTo(String.join(";", parts));
        }
    }
}
