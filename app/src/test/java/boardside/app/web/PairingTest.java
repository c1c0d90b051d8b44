package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import org.junit.jupiter.api.Test;

/** A second device: refused without a code, let in by one, and shut out again. */
class PairingTest extends Browser {
    @Override
    Server serve() {
        return Wire.serverOfAHouse(records, Clock.systemDefaultZone(), new ServerOptions(0, true, null, false));
    }

    private String elsewhere(String path) {
        return "http://" + Wire.ELSEWHERE + ":" + server.port() + path;
    }

    @Test
    void aPhoneIsLetInByTheLinkOfTheQrCodeWithOneTap() {
        page.navigate(url("/devices"));
        picture("devices");
        assertAccessible();
        String code = page.locator("#code").innerText().replace(" ", "");
        assertThat(page.locator("#qr path")).hasCount(1);

        page = newPage(phone);
        page.navigate(elsewhere("/start/total"));
        assertThat(page).hasURL(elsewhere("/pair"));
        assertAccessible();
        page.navigate(elsewhere("/pair?code=" + code));
        picture("pair");
        page.locator("#pair").click();
        assertThat(page.locator("p.notice")).containsText("This device is let in.");
        page.locator("a.tile").first().click();
        page.locator("#start").click();
        page.locator("[data-finish=\"4-0-0\"]").click();
        assertThat(page.locator("#sent")).hasText("all stored");
        page.navigate(elsewhere("/devices"));
        assertThat(page.locator("h1")).hasText("That did not work");
        page.navigate(elsewhere("/more"));
        assertThat(page.locator("a[href='/devices']")).hasCount(0);

        page.navigate(url("/devices"));
        picture("devices-one");
        assertAccessible();
        assertThat(page.locator("#code")).not().hasText(code);
        page.locator("form button").click();
        assertThat(page.locator("p.notice")).hasText("That device is shut out.");
        page.navigate(elsewhere("/"));
        assertThat(page).hasURL(elsewhere("/pair"));
    }

    @Test
    void aWrongCodeKeepsWhatWasTypedAndSaysWhereToLook() {
        page.navigate(elsewhere("/pair"));
        page.locator("#code").fill("abc def");
        page.locator("#name").fill("Porch phone");
        page.locator("#pair").click();
        assertThat(page.locator("#code-fault")).containsText("This code does not work");
        assertThat(page.locator("#code")).hasValue("abc def");
        assertThat(page.locator("#name")).hasValue("Porch phone");
        picture("pair-refused");
        assertAccessible();
        assertThat(records.devices().all()).isEmpty();
    }
}
