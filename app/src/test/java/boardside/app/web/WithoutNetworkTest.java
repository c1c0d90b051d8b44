package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Account;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.record.RunDetail;
import boardside.engine.rules.Drill;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.options.ServiceWorkerPolicy;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Throwing where there is no network, or a slow one: with the service worker, on a cable that can be pulled. */
class WithoutNetworkTest extends Browser {
    Cable cable;

    @Override
    ServiceWorkerPolicy serviceWorkers() {
        return ServiceWorkerPolicy.ALLOW;
    }

    @BeforeEach
    void lay() {
        cable = new Cable(server.port());
    }

    @AfterEach
    void unplug() {
        cable.close();
    }

    @Override
    String url(String path) {
        return "http://127.0.0.1:" + cable.port() + path;
    }

    /** Until the first page has been seen and what is wanted at the boards is kept. */
    void keep() {
        page.navigate(url("/"));
        until("caches.match(\'/throw\').then(Boolean)");
        until("caches.match(\'/\').then(Boolean)");
    }

    /** Waits until what is asked in the page resolves to true. */
    void until(String asked) {
        long end = System.nanoTime() + PATIENCE * 1_000_000L;
        while (!Boolean.TRUE.equals(page.evaluate(asked))) {
            assertThat(System.nanoTime()).as(asked).isLessThan(end);
            page.waitForTimeout(50);
        }
    }

    private RunDetail stored() {
        int me = records.firstPlayer().id();
        return records.run(me, records.lastRun(me, null).orElseThrow().id()).orElseThrow();
    }

    private void tap(String finish) {
        page.locator("[data-finish='" + finish + "']").tap();
    }

    @Test
    void aRunIsBegunAndRecordedWithoutTheNetworkAndSentLaterWithoutLoss() {
        keep();
        cable.pull();
        page.navigate(url("/"));
        assertThat(page.locator("#kept")).containsText("No network: this page is from");
        picture("without-home");
        page.locator("#first button").tap();
        page.waitForURL("**/throw");
        assertThat(page.locator("#entry h2")).hasText("What to throw");
        assertAccessible();
        picture("without-throw");
        page.locator("[data-drill=total]").tap();
        tap("3-1-0");
        tap("0-4-0");
        assertThat(page.locator("#sent")).hasText("3 not yet sent");
        page.reload();
        assertThat(page.locator("#where")).hasText("Round 3 of 10");
        tap("1-1-2");
        assertThat(page.locator("#score")).hasText("18");
        assertThat(records.lastRun(records.firstPlayer().id(), null)).isEmpty();

        cable.plug();
        assertThat(page.locator("#sent")).hasText("all stored");
        assertThat(stored().rounds()).extracting(Round::points).containsExactly(10, 4, 4);
        // From then on it is a run like any other, under an address of its own.
        page.waitForURL("**/runs/" + stored().run().id());
        page.reload();
        assertThat(page.locator("#where")).hasText("Round 4 of 10");
        assertThat(page.locator("#kept")).isHidden();
        tap("4-0-0");
        assertThat(page.locator("#sent")).hasText("all stored");
        assertThat(stored().rounds()).hasSize(4);
    }

    @Test
    void triesAreBegunWithoutTheNetworkToo() {
        keep();
        cable.pull();
        page.navigate(url("/throw"));
        page.locator("[data-drill=placement]").tap();
        assertThat(page.locator("#call")).isVisible();
        page.locator("[data-off=long]").tap();
        page.locator("[data-off=short]").tap();
        assertThat(page.locator("#sent")).hasText("3 not yet sent");
        page.reload();
        assertThat(page.locator("#score")).hasText("0/2");
        assertAccessible();
        picture("without-placement");

        page.navigate(url("/throw"));
        page.locator("[data-drill=situation]").tap();
        page.locator("#worked").tap();
        page.locator("#redraw").tap();
        assertThat(page.locator("#drawing-sheet")).isVisible();
        page.locator("#drawing-sheet [data-close]").tap();
        assertThat(page.locator("#sent")).hasText("5 not yet sent");

        cable.plug();
        assertThat(page.locator("#sent")).hasText("all stored");
        page.waitForURL("**/runs/" + stored().run().id());
        page.reload();
        assertThat(page.locator("#score")).hasText("1/1");
        int me = records.firstPlayer().id();
        assertThat(records.tries(me, stored().run().id())).hasSize(1);
        Run placed = records.lastRun(me, Drill.PLACEMENT).orElseThrow();
        assertThat(records.tries(me, placed.id())).hasSize(2);
    }

    @Test
    void aPageThatWasKeptBeforeMoreWasSentShowsThatToo() {
        keep();
        page.locator("#first button").tap();
        page.waitForURL("**/runs/*");
        tap("1-3-0");
        tap("2-0-2");
        assertThat(page.locator("#sent")).hasText("all stored");
        cable.pull();
        page.reload();
        assertThat(page.locator("#kept")).isVisible();
        assertThat(page.locator("#where")).hasText("Round 3 of 10");
        tap("0-0-4");
        cable.plug();
        assertThat(page.locator("#sent")).hasText("all stored");
        assertThat(stored().rounds()).extracting(Round::points).containsExactly(6, 6, 0);
        // The server's page holds all of it, so nothing of it has to be remembered here.
        page.reload();
        assertThat(page.locator("#where")).hasText("Round 4 of 10");
        assertThat(page.evaluate("Object.keys(localStorage).filter((key) => key.startsWith('boardside.sent.')).length"))
                .isEqualTo(0);
    }

    @Test
    void onASlowNetworkWhatIsKeptIsShownAndTapsWaitForNothing() {
        keep();
        page.locator("#first button").tap();
        page.waitForURL("**/runs/*");
        page.reload();
        cable.delay(15_000);
        page.navigate(url("/"));
        assertThat(page.locator("#kept")).isVisible();
        page.goBack();
        tap("2-2-0");
        tap("2-2-0");
        assertThat(page.locator("#where")).hasText("Round 3 of 10");
        assertThat(page.locator("#sent")).containsText("not yet sent");
        cable.delay(0);
        assertThat(page.locator("#sent")).hasText("all stored");
        assertThat(stored().rounds()).hasSize(2);
    }

    @Test
    void whatWasNotSeenSaysWhatWorksAndScriptsAreNeverAnsweredFromWhatIsKept() {
        keep();
        cable.pull();
        assertThat(page.navigate(url("/odds")).status()).isEqualTo(503);
        assertThat(page.locator("h1")).hasText("No network here");
        assertThat(page.locator("li").first()).containsText("Beginning and recording runs");
        assertAccessible();
        assertThatThrownBy(() -> page.evaluate("fetch('/api/token').then((answer) => answer.status)"))
                .isInstanceOf(PlaywrightException.class)
                .hasMessageContaining("Failed to fetch");
        picture("without-offline");
        page.locator("a[href='/throw']").tap();
        assertThat(page.locator("[data-drill=race]")).isVisible();
    }

    @Test
    void pagesOfAPlayerAreGoneOnceAnotherIsChosen() {
        Player ann = records.firstPlayer();
        records.editPlayer(new Player(ann.id(), "Rosalind", ann.hand(), ann.throwsFrom(), ann.version()));
        Player bob = records.addPlayer("Orlando", ann.hand(), ann.throwsFrom());
        keep();
        assertThat(keptTexts()).contains("Rosalind");
        page.navigate(url("/players"));
        page.locator("form[action='/players/" + bob.id() + "/choose'] button").tap();
        page.waitForURL("**said=player.chosen");
        page.navigate(url("/"));
        until("caches.match(\'/\').then(Boolean)");
        assertThat(keptTexts()).contains("Orlando").doesNotContain("Rosalind</a>");
    }

    /** All that is kept on the device, as one text. */
    String keptTexts() {
        return (String) page.evaluate("""
                async () => {
                  const texts = [];
                  for (const name of await caches.keys()) {
                    const cache = await caches.open(name);
                    for (const request of await cache.keys()) {
                      const answer = await cache.match(request);
                      if ((answer.headers.get("Content-Type") || "").startsWith("text/html")) texts.push(await answer.text());
                    }
                  }
                  return texts.join("");
                }""");
    }

    @Test
    void anUpgradeReplacesAllThatIsKept() {
        keep();
        String version = new StaticFiles().version();
        String next = "v-" + new StringBuilder(version.substring(2)).reverse();
        cable.answers(piece -> piece.replace(version, next));
        page.navigate(url("/more"));
        until("caches.keys().then((names) => names.every((name) => name.endsWith('" + next + "')))");
        until("caches.match(\'/throw\').then(Boolean)");
        page.navigate(url("/"));
        until("caches.match(\'/\').then(Boolean)");
        cable.pull();
        page.navigate(url("/"));
        assertThat(page.locator("#kept")).isVisible();
        assertThat(page.locator("link[rel=stylesheet]").first())
                .hasAttribute("href", "/static/" + next + "/boardside.css");
        assertThat(page.evaluate("getComputedStyle(document.querySelector('nav.bottom')).position"))
                .isEqualTo("fixed");
    }

    @Test
    void theWorkerMayServeTheWholeSiteAndIsAskedForEachTime() {
        Wire worker = Wire.get(Wire.HERE, server.port(), "/worker.js");
        assertThat(worker.header("content-type")).startsWith("text/javascript");
        assertThat(worker.header("cache-control")).isEqualTo("no-cache");
        assertThat(worker.header("content-security-policy")).contains("worker-src 'self'");
        StaticFiles files = new StaticFiles();
        assertThat(worker.body())
                .contains("const VERSION = \"" + files.version() + "\"")
                .contains("\"" + files.address("js/run.js") + "\"", "\"/offline\"");
        Wire run = Wire.get(Wire.HERE, server.port(), files.address("js/run.js"));
        assertThat(run.header("cache-control")).isEqualTo("public, max-age=31536000, immutable");
        assertThat(Wire.get(Wire.HERE, server.port(), "/static/v-0123/js/run.js")
                        .header("cache-control"))
                .isEqualTo("no-cache");
    }

    @Test
    void signingOutThrowsAwayWhatWasKept() {
        server.close();
        server = Club.serve(records);
        cable.close();
        cable = new Cable(server.port());
        Account ann = Club.account(records, "ann", Role.PLAYER);
        assertThat(ann.name()).isEqualTo("ann");
        page.navigate(url("/sign-in"));
        page.locator("#name").fill("ann");
        page.locator("#password").fill(Club.PASSWORD);
        page.locator("#sign-in").tap();
        page.waitForURL(url("/"));
        keep();
        assertThat(keptTexts()).contains("The one called ann");
        page.navigate(url("/account"));
        assertThat(keptTexts()).doesNotContain("id=\"logins\"");
        page.locator("#sign-out").tap();
        page.waitForURL("**/sign-in**");
        assertThat(keptTexts()).doesNotContain("The one called ann");
        cable.pull();
        page.navigate(url("/"));
        assertThat(page.locator("h1")).hasText("No network here");
    }
}
