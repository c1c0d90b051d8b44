package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Players, bag sets, boards and how pages look, in a phone's browser. */
class HouseholdTest extends Browser {
    private void save() {
        page.locator("button.main").click();
    }

    private void choose(String name, String value) {
        page.locator("input[name=" + name + "][value=" + value + "]").check();
    }

    @Test
    void aBagSetIsAddedMendedAndRetired() {
        page.navigate(url("/bags"));
        page.locator("a[href='/bags/new']").click();
        page.locator("#name").fill("Blue fours");
        page.locator("#slow").fill("4");
        page.locator("#fast").fill("11");
        page.locator("#weight").fill("heavy");
        page.locator("#fill").fill("resin");
        save();
        assertThat(page.locator("#fast-fault")).hasText("Give a whole number from 1 to 10, or leave it empty.");
        assertThat(page.locator("#fast")).hasAttribute("aria-invalid", "true");
        assertThat(page.locator("#weight-fault")).hasText("Give a number from 1 to 64, or leave it empty.");
        assertThat(page.locator("#slow-fault")).hasCount(0);
        assertThat(page.locator("#name")).hasValue("Blue fours");
        assertThat(page.locator("#weight")).hasValue("heavy");
        picture("bag-faults");
        assertAccessible();
        page.locator("#fast").fill("7");
        page.locator("#weight").fill("15,5");
        save();
        assertThat(page.locator("p.notice")).hasText("Kept.");
        assertThat(page.locator(".thing")).containsText("slow face 4, fast face 7, 15.5 oz (439 g), resin");
        picture("bags");

        page.locator(".thing").click();
        assertThat(page.locator("#weight")).hasValue("15.5");
        choose("retired", "yes");
        save();
        BagSet bag = records.bags(records.firstPlayer().id()).get(0);
        assertThat(bag.retired()).isTrue();
        assertThat(bag.weight()).isEqualTo(15.5);
        page.navigate(url("/start/total"));
        assertThat(page.getByText("Blue fours")).hasCount(0);
    }

    @Test
    void aNameTakenIsToldBesideIt() {
        records.saveBag(records.firstPlayer().id(), BagSet.named("", "Blue"));
        page.navigate(url("/bags/new"));
        page.locator("#name").fill("Blue");
        page.locator("#note").fill("line one\nline two");
        save();
        assertThat(page.locator("#name-fault")).hasText("The name \"Blue\" is taken; give a bag set another one.");
        assertThat(page.locator("#note")).hasValue("line one\nline two");
    }

    @Test
    void playersShareAHouseAndEachDeviceRemembersWhoItRecordsFor() {
        page.navigate(url("/players"));
        page.locator("a[href='/players/1']").click();
        page.locator("#name").fill("Ada");
        save();
        page.locator("a[href='/players/new']").click();
        page.locator("#name").fill("Ada");
        choose("hand", "left");
        choose("throws-from", "right");
        save();
        assertThat(page.locator("#name-fault")).containsText("is taken");
        assertThat(page.locator("input[name=hand][value=left]")).isChecked();
        assertThat(page.locator("input[name=throws-from][value=right]")).isChecked();
        page.locator("#name").fill("Ben");
        save();
        assertThat(page.locator(".top a[href='/players']")).hasText("Ben");
        page.navigate(url("/players"));
        picture("players");
        assertAccessible();
        page.getByText("Record for Ada").click();
        assertThat(page.locator(".top a[href='/players']")).hasText("Ada");
        Page desk = newPage(newPhone());
        desk.navigate(url("/"));
        assertThat(desk.locator(".top a[href='/players']")).hasText("Ada");
        desk.context().close();
        assertThat(records.player("Ben").orElseThrow().throwsFrom().word()).isEqualTo("right");
    }

    @Test
    void aBoardMeasuredInCentimetresKeepsItsInches() {
        page.navigate(url("/more"));
        choose("units", "cm");
        save();
        page.navigate(url("/boards/new"));
        page.locator("#name").fill("Slim");
        choose("kind", "narrow");
        page.locator("#width").fill("70");
        save();
        assertThat(page.locator("#width-fault")).hasText("Give a number from 2.54 to 60.96, or leave it empty.");
        page.locator("#width").fill("");
        save();
        assertThat(page.locator(".thing")).containsText("30.48 cm wide, front edge 8.89 cm high");
        picture("boards");
        page.locator(".thing").click();
        save();
        Board board = records.boards(records.firstPlayer().id()).get(0);
        assertThat(board.width()).isEqualTo(12);
        assertThat(board.front()).isEqualTo(3.5);
    }

    /** Every page that can be opened without further ado, but for the playbook: it is worked out for a while first. */
    private List<String> pages() {
        List<String> pages = new ArrayList<>(server.routes().stream()
                .filter(route -> route.method() == io.javalin.http.HandlerType.GET)
                .map(Route::path)
                .filter(path -> !path.contains("{") && !path.contains("<") && !path.startsWith("/api/"))
                .filter(path -> !path.equals("/playbook"))
                // What programs ask for; and the page the worker keeps is the same for every look: WithoutNetworkTest.
                .filter(path -> !List.of("/worker.js", "/offline", "/health", "/ready", "/metrics", "/openapi.json")
                        .contains(path))
                .toList());
        pages.addAll(List.of("/start/total", "/start/race", "/start/volume", "/start/casual", "/nowhere"));
        int player = records.firstPlayer().id();
        pages.add("/bags/"
                + records.saveBag(player, new BagSet("", "Blue", 4, 7, 16.0, "resin", "dry days", false))
                        .id());
        pages.add("/boards/"
                + records.saveBoard(
                                player,
                                new Board("", "Garden", boardside.engine.rules.BoardKind.REGULATION, 24, 3.5, "", true))
                        .id());
        pages.add("/players/" + player);
        return pages;
    }

    /**
     * Every page in the light theme, and its colours in one of the others, turn about: looking at all in all takes minutes.
     * ThemeTest computes the contrast of every pair of colours in every theme, LayoutTest measures the main pages in each.
     */
    @Test
    void everyPageIsAccessibleInTwoThemes() {
        look("light");
        List<String> pages = pages();
        for (int i = 0; i < pages.size(); i++) {
            String path = pages.get(i);
            page.navigate(url(path));
            // What is worked out for a moment first comes by itself.
            assertThat(page.locator("#working")).hasCount(0);
            assertThat(page.locator("html")).hasAttribute("data-theme", "light");
            picture("light" + named(path));
            assertNoWiderThanThePhone();
            assertAccessible();
            String other = i % 2 == 0 ? "sun" : "dark";
            assertContrastIn(other);
            picture(other + named(path));
            assertNoWiderThanThePhone();
        }
    }

    private static String named(String path) {
        return path.replaceAll("/[0-9a-f-]{36}", "-one").replaceAll("\\W", "-");
    }

    @Test
    void whatIsNotAccessibleWouldBeFound() {
        page.navigate(url("/safety"));
        page.evaluate("document.querySelector('main').innerHTML = '<img src=\"/static/icon.svg\">'");
        assertThatThrownBy(this::assertAccessible).hasMessageContaining("image-alt");
        page.evaluate("""
                () => {
                  document.querySelector('main').innerHTML = '<p>pale</p>';
                  Object.assign(document.querySelector('main p').style, { color: '#888', background: '#999' });
                }""");
        assertThatThrownBy(this::assertAccessible).hasMessageContaining("color-contrast");
        assertThatThrownBy(() -> assertContrastIn("dark")).hasMessageContaining("color-contrast");
    }

    @Test
    void theChosenLookIsKeptForThisDevice() {
        page.navigate(url("/more"));
        choose("theme", "sun");
        choose("hand", "left");
        save();
        assertThat(page.locator("p.notice")).hasText("Kept for this device.");
        page.navigate(url("/"));
        assertThat(page.locator("html")).hasAttribute("data-theme", "sun");
        assertThat(page.locator("html")).hasAttribute("data-hand", "left");
        page.navigate(url("/more"));
        assertThat(page.locator("input[name=theme][value=sun]")).isChecked();
        assertThat(page.locator("input[name=units][value=in]")).isChecked();
    }

    @Test
    void theThemeFollowsTheDeviceUntilOneIsChosen() {
        page.emulateMedia(
                new Page.EmulateMediaOptions().setColorScheme(com.microsoft.playwright.options.ColorScheme.DARK));
        page.navigate(url("/more"));
        String dark = background();
        page.emulateMedia(
                new Page.EmulateMediaOptions().setColorScheme(com.microsoft.playwright.options.ColorScheme.LIGHT));
        assertThat(background()).isNotEqualTo(dark);
        look("dark");
        page.reload();
        assertThat(background()).isEqualTo(dark);
    }

    private String background() {
        return (String) page.evaluate("getComputedStyle(document.body).backgroundColor");
    }

    @Test
    void aKeyboardGoesThroughAFormAndShowsWhereItIs() {
        page.navigate(url("/more"));
        page.keyboard().press("Tab");
        assertThat(focused()).isEqualTo("Skip to the content");
        page.keyboard().press("Enter");
        page.keyboard().press("Tab");
        assertThat(focused()).as("past the header").isEqualTo("Plan");
        for (int i = 0; i < 80 && !"auto".equals(page.evaluate("document.activeElement.value")); i++) {
            page.keyboard().press("Tab");
        }
        // A radio group takes the arrows, and the focus ring is drawn on the label that is seen.
        page.keyboard().press("ArrowRight");
        page.keyboard().press("ArrowRight");
        assertThat(page.evaluate("document.activeElement.value")).isEqualTo("dark");
        assertThat((String) page.evaluate("getComputedStyle(document.activeElement.nextElementSibling).outlineStyle"))
                .isEqualTo("solid");
        page.keyboard().press("Enter");
        assertThat(page.locator("html")).hasAttribute("data-theme", "dark");
    }

    private String focused() {
        return ((String) page.evaluate("document.activeElement.textContent")).strip();
    }

    @Test
    void helpNamesTheKeysTheRecorderTakes() {
        page.navigate(url("/help"));
        assertThat(page.locator("table")).containsText("1, arrow up or page up");
        String script = Wire.get(Wire.HERE, server.port(), "/static/js/run.js").body()
                + Wire.get(Wire.HERE, server.port(), "/static/js/sheets.js").body();
        for (String key : List.of("ArrowUp", "PageUp", "ArrowRight", "ArrowDown", "PageDown", "Backspace")) {
            assertThat(script).contains(key);
        }
    }
}
