package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Account;
import boardside.app.practice.Role;
import com.microsoft.playwright.Page;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Hosted mode in a phone's browser: invited, signed in, recorded, looked after, left. */
class HostedPagesTest extends Browser {
    @Override
    Server serve() {
        return Club.serve(records);
    }

    private void signIn(String name) {
        page.navigate(url("/sign-in"));
        page.locator("#name").fill(name);
        page.locator("#password").fill(Club.PASSWORD);
        page.locator("#sign-in").click();
    }

    @Test
    void aHostInvitesSomebodyWhoRecordsAndLeaves() {
        Club.account(records, "hal", Role.HOST);
        page.navigate(url("/journal"));
        assertThat(page).hasURL(url("/sign-in?next=%2Fjournal"));
        page.locator("#name").fill("hal");
        page.locator("#password").fill("not the password");
        page.locator("#sign-in").click();
        assertThat(page.locator("#refused")).containsText("do not go together");
        assertThat(page.locator("#name")).hasValue("hal");
        assertThat(page.locator("#password")).hasValue("");
        page.locator("#password").fill(Club.PASSWORD);
        page.keyboard().press("Enter");
        assertThat(page).hasURL(url("/journal"));

        page.navigate(url("/more"));
        page.locator("a[href='/accounts']").click();
        page.locator("#note").fill("Ben of the Tuesday group");
        page.locator("#invite button").click();
        String link = page.locator("#link").inputValue();
        assertThat(link).startsWith(url("/invitation/"));
        page.locator("[data-copy=link]").click();
        assertThat(page.locator("#copied")).hasText("Copied.");
        picture("accounts-link");
        assertThat(page.locator("#invitations")).containsText("Ben of the Tuesday group");
        page.navigate(url("/accounts"));
        assertThat(page.locator("#link")).hasCount(0);

        Page host = page;
        page = newPage(newPhone());
        page.navigate(link);
        page.locator("#name").fill("ben");
        page.locator("#player").fill("Ben");
        page.locator("#password").fill("password123");
        page.locator("#again").fill("password123");
        page.locator("#take").click();
        assertThat(page.locator("#password-fault")).containsText("first that would be guessed");
        assertThat(page.locator("#player")).hasValue("Ben");
        assertAccessible();
        picture("invitation-fault");
        page.locator("#password").fill("seven bags of barley");
        page.locator("#again").fill("seven bags of barley");
        page.locator("#take").click();
        assertThat(page.locator("p.notice")).hasText("Welcome. This browser is signed in.");
        assertThat(page.locator(".top a[href='/players']")).hasText("Ben");
        page.locator("a.tile").first().click();
        page.locator("#start").click();
        page.locator("[data-finish=\"4-0-0\"]").click();
        assertThat(page.locator("#sent")).hasText("all stored");

        // Signed out elsewhere while at the boards: what is tapped stays, and is sent once signed in again.
        Account ben = records.accounts().named("ben").orElseThrow();
        records.signIns().signOutEverywhere(ben);
        page.locator("[data-finish=\"3-1-0\"]").click();
        assertThat(page.locator("#sent")).containsText("not let in any more");
        page.navigate(url("/"));
        page.locator("#name").fill("ben");
        page.locator("#password").fill("seven bags of barley");
        page.locator("#sign-in").click();
        assertRounds(ben, 2);
        // It shows itself anew then, which would call off going elsewhere.
        page.waitForFunction("() => performance.getEntriesByType('navigation')[0].type === 'reload'");
        assertThat(page.locator("#unsent")).isHidden();

        page.navigate(url("/account"));
        assertThat(page.locator("#logins .card")).hasCount(1);
        page.locator("a[href='/account/delete']").click();
        page.locator("#password").fill("seven bags of barley");
        page.locator("#delete").click();
        assertThat(page.locator("#sure-fault")).hasText("Tick this if you are sure.");
        assertAccessible();
        picture("account-delete-fault");
        page.locator("input[name=sure]").check();
        page.locator("#password").fill("seven bags of barley");
        page.locator("#delete").click();
        assertThat(page.locator("p.notice")).hasText("The account and all its records are deleted.");
        assertThat(records.players(ben.id())).isEmpty();
        page.context().close();
        page = host;
        page.navigate(url("/accounts"));
        assertThat(page.locator("#accounts")).not().containsText("ben");
    }

    @Test
    void tapsOfWhoeverWasSignedInBeforeWaitForThemAndHoldUpNobody() {
        Account ann = Club.account(records, "ann", Role.PLAYER);
        Club.account(records, "bob", Role.PLAYER);
        signIn("ann");
        page.locator("a.tile").first().click();
        page.locator("#start").click();
        page.locator("[data-finish=\"4-0-0\"]").click();
        assertThat(page.locator("#sent")).hasText("all stored");
        records.signIns().signOutEverywhere(ann);
        page.locator("[data-finish=\"3-1-0\"]").click();
        assertThat(page.locator("#sent")).containsText("not let in any more");
        signIn("bob");
        assertThat(page.locator("#unsent")).isVisible();
        page.locator("a.tile").first().click();
        page.locator("#start").click();
        page.locator("[data-finish=\"2-2-0\"]").click();
        assertRounds(records.accounts().named("bob").orElseThrow(), 1);
        page.navigate(url("/account"));
        page.locator("#sign-out").click();
        signIn("ann");
        assertRounds(ann, 2);
        assertThat(page.locator("#unsent")).isHidden();
    }

    /** Waits until so many rounds of an account's last run are stored. */
    private void assertRounds(Account account, int rounds) {
        int player = records.players(account.id()).get(0).id();
        page.waitForCondition(() -> records.lastRun(player, null)
                .flatMap(run -> records.run(player, run.id()))
                .filter(run -> run.rounds().size() == rounds)
                .isPresent());
    }

    @Test
    void everyPageOfHostedModeIsAccessibleInEveryTheme() {
        Account hal = Club.account(records, "hal", Role.HOST);
        Account ann = Club.account(records, "ann.a-name-much-longer-than-usual@example", Role.PLAYER);
        records.accounts().close(Club.account(records, "closed", Role.ORGANISER).id());
        records.accounts().invite(Role.PLAYER, "Somebody from the other side of the river, met in May");
        String invitation = records.accounts().invite(Role.PLAYER, "").token();
        String reset = records.accounts().reset(ann.id()).token();
        records.signIns().signIn(hal, "iPhone");
        look("light");
        for (String path : List.of("/sign-in", "/invitation/" + invitation, "/reset/" + reset, "/invitation/none")) {
            assertShownWell(path);
        }
        signIn("hal");
        for (String path : List.of("/account", "/account/delete", "/accounts", "/more", "/players", "/coach")) {
            assertShownWell(path);
        }
        page.navigate(url("/accounts"));
        page.locator("summary").first().click();
        picture("light-accounts-open");
        assertAccessible();
        assertContrastIn("dark");
        assertContrastIn("sun");
    }

    private void assertShownWell(String path) {
        page.navigate(url(path));
        assertThat(page.locator("html")).hasAttribute("data-theme", "light");
        picture("light" + path.replaceAll("[0-9a-f]{64}", "x").replaceAll("\\W", "-"));
        assertAccessible();
        assertFitsThePhone(path);
        for (String theme : List.of("dark", "sun")) {
            assertContrastIn(theme);
            assertFitsThePhone(path);
        }
    }

    private void assertFitsThePhone(String path) {
        assertNoWiderThanThePhone();
        for (var target : page.locator("button, a.button, .choice, summary, main input:not([type=hidden])")
                .all()) {
            if (target.isVisible()) {
                assertThat(target.boundingBox().height)
                        .as(path + ": " + target.textContent())
                        .isGreaterThanOrEqualTo(24);
            }
        }
    }
}
