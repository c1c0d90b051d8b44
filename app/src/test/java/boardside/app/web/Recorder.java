package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import boardside.app.practice.BagSet;
import boardside.app.record.RunDetail;
import com.microsoft.playwright.Locator;
import java.util.List;

/** What tests at the boards share: starting a run, tapping, and what came of it. */
abstract class Recorder extends Browser {
    int me() {
        return records.firstPlayer().id();
    }

    BagSet bag(String name) {
        return records.saveBag(me(), BagSet.named(records.ids().next(), name));
    }

    /** Starts as the form stands. */
    void go() {
        page.locator("#start").click();
        page.waitForURL("**/runs/*");
    }

    void start(String drill) {
        page.navigate(url("/start/" + drill));
        go();
    }

    void choose(String name, String value) {
        page.locator("input[name=\"" + name + "\"][value=\"" + value + "\"]").check();
    }

    void open(String summary) {
        page.locator("summary", new com.microsoft.playwright.Page.LocatorOptions().setHasText(summary))
                .click();
    }

    Locator finish(String finish) {
        return page.locator("[data-finish=\"" + finish + "\"]");
    }

    Locator outcome(String outcome) {
        return page.locator("[data-outcome=\"" + outcome + "\"]");
    }

    void tap(String... finishes) {
        for (String finish : finishes) {
            finish(finish).click();
        }
    }

    void tapTimes(int times, String... finishes) {
        for (int i = 0; i < times; i++) {
            tap(finishes);
        }
    }

    void assertSent() {
        assertThat(page.locator("#sent")).hasText("all stored");
    }

    void summary() {
        assertSent();
        page.locator("#summary").click();
        page.waitForURL("**/summary");
    }

    String runId() {
        return page.url().replaceFirst(".*/runs/", "").replaceFirst("/.*", "");
    }

    RunDetail stored() {
        return records.run(me(), runId()).orElseThrow();
    }

    List<String> counts(boardside.engine.rules.Side side) {
        return stored().rounds().stream()
                .filter(round -> round.side() == side)
                .flatMap(round -> round.lines().stream())
                .map(line -> line.in() + "-" + line.on() + "-" + line.off())
                .toList();
    }
}
