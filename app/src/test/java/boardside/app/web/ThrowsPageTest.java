package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.cli.Cli;
import boardside.app.cli.Surroundings;
import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.record.Pushes;
import boardside.app.record.Throws;
import boardside.engine.physics.Range;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ReducedMotion;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** How the player throws: from belief alone, and from records, with the figures that the command line gives. */
class ThrowsPageTest extends Browser {
    private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(6);

    @Test
    void withoutRecordsItSaysWhatIsUsual() {
        page.navigate(url("/more"));
        page.getByText("How I throw").click();
        assertThat(page.locator("#throws-said")).containsText("what is usual among players");
        assertThat(page.locator("svg.picture")).hasCount(1);
        assertAccessible();
    }

    @Test
    void recordsAndPrintedSpeedsMakeASpeedSheet() {
        int me = records.firstPlayer().id();
        records.saveBag(me, new BagSet("", "Barley", 3, 7, null, "", "", false));
        Thrown.total(records, me, random, 3, 60, 0.35, 0.45);
        page.navigate(url("/throws"));
        assertThat(page.locator("#throws-said")).containsText("From 240 bags");
        assertThat(page.locator(".sheet")).hasCount(3);
        Throws all = Throws.of(records, me, LocalDate.now(ZoneId.systemDefault()));
        Range in = all.usual().advice().in();
        assertThat(page.locator("#throws-worth"))
                .containsText(Numbers.percent(in.estimate()) + " (" + Math.round(100 * in.low()) + "\u2013"
                        + Math.round(100 * in.high()) + ")");
        assertThat(page.locator("#throws-open")).containsText("narrow board");
        picture("throws");
        assertAccessible();

        page.locator("#bag").selectOption("2");
        page.getByText("Show", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.locator("#throws-said")).containsText("No counted throws of this bag");
        assertThat(page.url()).contains("bag=2");
    }

    /** Taps where bags landed and stopped, as shares of the board's drawing from its upper left corner. */
    private void tap(double[]... taps) {
        for (double[] tap : taps) {
            var box = page.locator("#tap-board").boundingBox();
            page.locator("#tap-board")
                    .click(new Locator.ClickOptions().setPosition(tap[0] * box.width, tap[1] * box.height));
        }
    }

    private void press(String text) {
        page.getByText(text, new Page.GetByTextOptions().setExact(true)).click();
    }

    @Test
    void aSlideTestIsTappedOnTheBoardKeptAndAnswered() {
        page.navigate(url("/slides"));
        assertAccessible();
        tap(new double[][] {{0.5, 0.7}, {0.5, 0.4}, {0.4, 0.65}, {0.45, 0.37}, {0.6, 0.72}, {0.6, 0.5}});
        page.locator("#tap-undo").click();
        tap(new double[][] {{0.6, 0.72}});
        press("It went in");
        tap(new double[][] {{0.55, 0.6}, {0.5, 0.19}});
        assertThat(page.locator("#tap-marks .way")).hasCount(4);
        assertThat(page.locator("#slides")).hasValue(Pattern.compile("^0(\\.\\d)?,14\\.\\d>.+ .+>.+ .+>in .+>in$"));
        // What is tapped stays on the phone until it is sent, also where the page is opened again.
        page.navigate(url("/slides"));
        assertThat(page.locator("#tap-marks .way")).hasCount(4);
        press("Measure the boards");
        assertThat(page.locator("#answers .said").first()).containsText("From 2 slides");
        assertThat(page.locator("#answers")).containsText("usual ones");
        assertThat(page.locator("svg.told .way")).hasCount(2);
        picture("slide-test");
        assertAccessible();
        int me = records.firstPlayer().id();
        assertThat(records.slideTests().latest(me, 5)).hasSize(1);

        press("Delete this test");
        assertThat(page.locator("main")).containsText("This slide test was deleted.");
        assertThat(records.slideTests().latest(me, 5)).isEmpty();
        page.locator(".entries button").first().click();
        assertThat(page.locator("p.notice")).containsText("Undone");
        assertThat(records.slideTests().latest(me, 5)).hasSize(1);
        page.navigate(url("/slides"));
        assertThat(page.locator("#slides")).hasValue("");
        page.locator("#slide-tests a").click();
        assertThat(page.locator("#answers .said").first()).containsText("From 2 slides");

        page.navigate(url("/throws"));
        assertThat(page.locator("#throws-said")).containsText("4 were tapped in slide tests");
        JsonNode today = json("slide").get("bags").get(0).get("today");
        assertThat(page.locator(".sheet").first())
                .containsText("Today, by your slide test: slides " + whole(today.get("slide")) + " in.");
    }

    /** At the boards the network may be away: the phone answers by itself, and sends the test when it is back. */
    @Test
    void aSlideTestIsAnsweredWithoutANetwork() {
        Thrown.total(records, records.firstPlayer().id(), random, 3, 30, 0.35, 0.45);
        page.navigate(url("/throws"));
        assertThat(page.locator("#throws-said")).isVisible();
        page.navigate(url("/slides"));
        page.context().setOffline(true);
        tap(new double[][] {{0.5, 0.7}, {0.5, 0.4}, {0.4, 0.65}, {0.45, 0.37}, {0.55, 0.6}, {0.6, 0.33}});
        press("Measure the boards");
        assertThat(page.locator("#measured .said").first())
                .hasText(
                        Pattern.compile("From 3 slides .* slides \\d+ \\(\\d+.\\d+\\) in on these boards that day\\."));
        assertThat(page.locator("#measured .said").nth(1)).containsText("nine times in ten between");
        assertThat(page.locator("#measured .notice")).containsText("kept on this phone");
        picture("slides-offline");
        assertThat(records.slideTests().latest(records.firstPlayer().id(), 5)).isEmpty();
        page.context().setOffline(false);
        assertThat(page.locator("#answers .said").first()).containsText("From 3 slides");
        assertThat(records.slideTests().latest(records.firstPlayer().id(), 5)).hasSize(1);
    }

    @Test
    void whatIsNoSlideIsSaidBesideTheField() {
        page.navigate(url("/slides"));
        press("Measure the boards");
        assertThat(page.locator("#slides-fault")).containsText("Tap one bag");
        page.locator("#slides").fill("0,20 0,20>0,60");
        press("Measure the boards");
        assertThat(page.locator("#slides-fault")).containsText("\"0,20\" is no slide");
        assertThat(page.locator("#slides-fault")).containsText("\"0,20>0,60\" is not on the board");
        assertThat(page.locator("#slides")).hasAttribute("aria-invalid", "true");
        assertAccessible();
    }

    /** Where scripts do not run, the form keeps a test as well, once. */
    @Test
    void withoutScriptsTheFormKeepsATest() {
        try (BrowserContext plain = page.context()
                .browser()
                .newContext(new com.microsoft.playwright.Browser.NewContextOptions().setJavaScriptEnabled(false))) {
            Page bare = plain.newPage();
            bare.navigate(url("/slides"));
            bare.locator("#slides").fill("0,14>1,33 nonsense");
            bare.locator("button.main").click();
            assertThat(bare.locator("#slides-fault")).containsText("\"nonsense\" is no slide");
            assertThat(bare.locator("#slides")).hasValue("0,14>1,33 nonsense");
            bare.locator("#slides").fill("0,14>1,33");
            bare.locator("button.main").click();
            assertThat(bare.locator("main")).containsText("1 bags");
            assertThat(records.slideTests().latest(records.firstPlayer().id(), 5))
                    .hasSize(1);
        }
    }

    /** By keys alone: the slides are typed, and the button sends them. */
    @Test
    void aSlideTestByKeysAlone() {
        page.navigate(url("/slides"));
        for (int i = 0; i < 40 && !"slides".equals(page.evaluate("document.activeElement.id")); i++) {
            page.keyboard().press("Tab");
        }
        page.keyboard().type("0,14>1,33 1,15>1,35");
        page.keyboard().press("Tab");
        page.keyboard().press("Enter");
        assertThat(page.locator("#answers .said").first()).containsText("From 2 slides");
    }

    @Test
    void aThrowAndAPushMoveUnlessLessMotionIsWanted() {
        Thrown.total(records, records.firstPlayer().id(), random, 3, 30, 0.35, 0.45);
        page.navigate(url("/throws"));
        page.getByText("Watch a throw").click();
        assertThat(page.locator("#watch")).hasAttribute("data-done", "yes");
        assertThat(page.locator("#watch-chance")).containsText("of your slides go in");
        assertAccessible();
        page.getByLabel("Block at depth 1").click();
        assertThat(page.locator("#watch .thrown-bag")).hasCount(2);
        assertThat(page.locator("#watch-said")).containsText("The block");
        Throws all = Throws.of(records, records.firstPlayer().id(), LocalDate.now(ZoneId.systemDefault()));
        assertThat(page.locator("#watch-chance"))
                .containsText(ThrowsPage.percent(Pushes.collected(all.usual().fit(), 1)));
        picture("watch");
        press("Another throw");
        assertThat(page.locator("#watch-said")).containsText("Throw 1");

        page.emulateMedia(new Page.EmulateMediaOptions().setReducedMotion(ReducedMotion.REDUCE));
        page.reload();
        assertThat(page.locator("#watch-play")).isVisible();
        assertThat(page.locator("#watch")).not().hasAttribute("data-done", "yes");
        page.locator("#watch-play").press("Enter");
        assertThat(page.locator("#watch")).hasAttribute("data-done", "yes");
    }

    /** The command line gives the page's figures. */
    @Test
    void thePageAndTheCommandSayTheSame() {
        int me = records.firstPlayer().id();
        records.saveBag(me, new BagSet("", "Barley", 3, 7, null, "", "", false));
        Thrown.total(records, me, random, 3, 60, 0.35, 0.45);
        JsonNode model = json("throw-model");
        JsonNode sheet = json("slide").get("bags");
        page.navigate(url("/throws"));
        assertThat(page.locator("#throws-worth")).containsText(percent(model.get("inHole")));
        assertThat(page.locator("#throws-worth")).containsText(percent(model.get("inHoleWithHalfAcross")));
        assertThat(page.locator("#throws-worth")).containsText(percent(model.get("inHoleWithHalfAlong")));
        assertThat(page.locator("#throws-worth")).containsText(percent(model.get("narrowKept")));
        assertThat(page.locator("#throws-open"))
                .containsText(tenths(model.get("spreadX")) + " in from side to side and "
                        + tenths(model.get("spreadAlong")) + " in along");
        assertThat(page.locator(".sheet")).hasCount(sheet.size());
        for (int i = 0; i < sheet.size(); i++) {
            JsonNode bag = sheet.get(i);
            Locator shown = page.locator(".sheet").nth(i);
            assertThat(shown).containsText("Usual boards: slides " + whole(bag.get("slide")) + " in.");
            if (bag.get("landing").get("estimate").asDouble() >= 0) {
                assertThat(shown).containsText("Land it " + whole(bag.get("landing")) + " in");
            }
            assertThat(shown)
                    .containsText(
                            "Slower boards: slides " + whole(bag.get("slower").get("slide")) + " in.");
            assertThat(shown)
                    .containsText(
                            "Faster boards: slides " + whole(bag.get("faster").get("slide")) + " in.");
        }
    }

    private JsonNode json(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<String> all = new ArrayList<>(List.of("--data", records.location(), "--json"));
        all.addAll(List.of(args));
        int status = new Cli(new Surroundings(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        System.err,
                        new ByteArrayInputStream(new byte[0]),
                        Map.of(),
                        Clock.systemDefaultZone(),
                        false))
                .run(all.toArray(new String[0]));
        assertThat(status).isZero();
        return Json.read(out.toString(StandardCharsets.UTF_8), JsonNode.class);
    }

    private static Range range(JsonNode node) {
        return new Range(
                node.get("estimate").asDouble(),
                node.get("low").asDouble(),
                node.get("high").asDouble());
    }

    private static String percent(JsonNode node) {
        return ThrowsPage.percent(range(node));
    }

    private static String whole(JsonNode node) {
        return ThrowsPage.length(Look.USUAL, range(node));
    }

    private static String tenths(JsonNode node) {
        return ThrowsPage.tenths(Look.USUAL, range(node));
    }
}
