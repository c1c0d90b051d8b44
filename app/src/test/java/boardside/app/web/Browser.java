package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.record.Records;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.Cookie;
import com.microsoft.playwright.options.ServiceWorkerPolicy;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** A real Chromium at phone size before a real server with an empty store of its own. */
@Tag("browser")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class Browser {
    static final int WIDTH = 360;
    static final int HEIGHT = 740;

    /** Milliseconds until a wait counts as in vain; nobody waits so long unless something is wrong or the machine is busy. */
    static final int PATIENCE = 30_000;

    @TempDir
    Path folder;

    Records records;
    Server server;
    BrowserContext phone;
    Page page;
    final List<String> scriptFaults = new ArrayList<>();
    private final List<String> foreign = new ArrayList<>();

    /**
     * One for all classes that run in this virtual machine, one after another; contexts keep tests apart. It ends with the
     * machine: its driver reads from it.
     */
    private static com.microsoft.playwright.@Nullable Browser shared;

    private com.microsoft.playwright.Browser chromium;

    @BeforeAll
    void launch() {
        PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE);
        if (shared == null || !shared.isConnected()) {
            shared = launch(playwright());
        }
        chromium = shared;
    }

    static Playwright playwright() {
        return Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    }

    static com.microsoft.playwright.Browser launch(Playwright playwright) {
        return playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(executable())
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-gpu-rasterization",
                                "--disable-quic",
                                "--disable-background-networking")));
    }

    private static Path executable() {
        String told = System.getenv("BOARDSIDE_CHROMIUM");
        return Stream.of(
                        told,
                        // Draws no windows that nobody sees: half the time.
                        "/usr/bin/chromium-headless-shell",
                        "/usr/bin/chromium",
                        "/usr/bin/chromium-browser",
                        "/usr/bin/google-chrome")
                .filter(path -> path != null && Files.isExecutable(Path.of(path)))
                .findFirst()
                .map(Path::of)
                .orElseThrow(() -> new IllegalStateException(
                        "the browser tests need Chromium: install it, or name it in BOARDSIDE_CHROMIUM"));
    }

    @BeforeEach
    void open() {
        records = Club.open(folder.resolve("store.db").toString());
        server = serve();
        phone = newPhone();
        page = newPage(phone);
    }

    Server serve() {
        return Server.start(records, ServerOptions.local(0), Clock.systemDefaultZone());
    }

    @AfterEach
    void close() {
        phone.close();
        server.close();
        records.close();
        assertThat(scriptFaults).as("faults of scripts").isEmpty();
        assertThat(foreign).as("requests to other hosts").isEmpty();
    }

    /** Most tests look at what the server answers at this moment, so nothing stands in between. */
    ServiceWorkerPolicy serviceWorkers() {
        return ServiceWorkerPolicy.BLOCK;
    }

    BrowserContext newPhone() {
        BrowserContext opened = chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(WIDTH, HEIGHT)
                .setDeviceScaleFactor(pictured() ? 2 : 1)
                .setServiceWorkers(serviceWorkers())
                .setHasTouch(true)
                .setIsMobile(true));
        opened.onRequest(request -> {
            URI asked = URI.create(request.url());
            if (asked.getHost() != null && !asked.getHost().matches("127\\.0\\.0\\.[12]|localhost")) {
                foreign.add(request.url());
            }
        });
        return opened;
    }

    Page newPage(BrowserContext context) {
        Page opened = context.newPage();
        opened.setDefaultTimeout(PATIENCE);
        opened.onPageError(scriptFaults::add);
        return opened;
    }

    String url(String path) {
        return "http://127.0.0.1:" + server.port() + path;
    }

    /** Waits until the page has all of its answers: until then it loads itself anew when it has more. */
    void complete() {
        page.waitForFunction("() => !document.querySelector('script[src*=\"again.js\"]')");
    }

    /** Fails where axe finds something serious or critical. */
    void assertAccessible() {
        assertAccessible("{}");
    }

    /** Has every page asked for from now on come in a theme. */
    void look(String theme) {
        page.context()
                .addCookies(List.of(new Cookie(Web.LOOK, new Look(theme, "in", "right").cookie()).setUrl(url("/"))));
    }

    /**
     * Shows the page as it stands in another theme, and fails where axe finds fault with its colours: all else is alike. That it
     * would come in that theme if it were asked for is looked at too.
     */
    void assertContrastIn(String theme) {
        look(theme);
        String asked = page.request().get(page.url()).text();
        look("light");
        assertThat(asked).contains("data-theme=\"" + theme + "\"");
        page.evaluate("(theme) => { document.documentElement.dataset.theme = theme; }", theme);
        assertAccessible("{ runOnly: ['color-contrast'] }");
        PlaywrightAssertions.assertThat(page.locator("html")).hasAttribute("data-theme", theme);
    }

    /** Fails where the page is wider than the phone. */
    void assertNoWiderThanThePhone() {
        int wide = (Integer) page.evaluate("document.documentElement.scrollWidth");
        assertThat(wide).as(page.url() + " does not scroll sideways").isLessThanOrEqualTo(WIDTH);
    }

    /**
     * Asks axe in the page itself: what passes is not listed node by node, nor a second page opened to put frames together, of
     * which there are none.
     */
    private void assertAccessible(String options) {
        page.evaluate(AxeBuilder.getAxeScript());
        Object found = page.evaluate("axe.run(document, { resultTypes: ['violations'], ..." + options + """
                 }).then(({ violations, passes }) => {
                  if (passes.length === 0) throw new Error('axe looked at nothing');
                  if (document.querySelector('iframe')) throw new Error('axe was not put into the frames');
                  return violations.filter(({ impact }) => ['serious', 'critical'].includes(impact))
                    .map(({ id, help, nodes }) => `${id}: ${help} ${nodes.map(({ html }) => html).join(', ')}`);
                })""");
        assertThat(found).as("accessibility of " + page.url()).isEqualTo(List.of());
    }

    /** A picture of the page for a person to look at, in the build's folder; taken where BOARDSIDE_PICTURES is set. */
    void picture(String name) {
        if (pictured()) {
            page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target", "pictures", name + ".png")));
        }
    }

    private static boolean pictured() {
        return System.getenv("BOARDSIDE_PICTURES") != null;
    }
}
