package boardside.app.web;

import boardside.app.demo.Demo;
import boardside.app.record.Records;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ServiceWorkerPolicy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;

/**
 * Makes what is drawn once and committed: the icons as PNG, from their SVG, and the pictures of docs/guide.md, from the real app
 * with the example's records.
 *
 * <p>Run it in the folder {@code app} after icon or pages have changed; see docs/front.md.
 */
final class Artwork {
    private static final Path STATIC = Path.of("src", "main", "resources", "boardside", "static");
    private static final Path PICTURES = Path.of("..", "docs", "pictures");

    private final Page page;
    private final String address;

    private Artwork(Page page, String address) {
        this.page = page;
        this.address = address;
    }

    public static void main(String[] arguments) throws IOException {
        try (Playwright playwright = Browser.playwright();
                com.microsoft.playwright.Browser chromium = Browser.launch(playwright)) {
            for (String icon : List.of("icon", "icon-maskable")) {
                for (int size : new int[] {192, 512}) {
                    icon(chromium, icon, size);
                }
            }
            guide(chromium);
        }
    }

    private static void icon(com.microsoft.playwright.Browser chromium, String name, int size) throws IOException {
        try (Page page = chromium.newPage()) {
            page.setViewportSize(size, size);
            page.setContent("<body style='margin:0;background:transparent'>"
                    + Files.readString(STATIC.resolve(name + ".svg")).replace("<svg ", "<svg width='100%' "));
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(STATIC.resolve(name + "-" + size + ".png"))
                    .setOmitBackground(true));
        }
    }

    private static void guide(com.microsoft.playwright.Browser chromium) throws IOException {
        Path folder = Files.createTempDirectory("boardside-guide");
        try (Records empty = Records.open(folder.resolve("empty.db").toString());
                Server fresh = Server.start(empty, ServerOptions.local(0), Clock.systemDefaultZone());
                Records filled = Records.open(folder.resolve("filled.db").toString());
                BrowserContext phone = phone(chromium)) {
            Demo.fill(filled, LocalDate.now());
            try (Server server = Server.start(filled, ServerOptions.local(0), Clock.systemDefaultZone())) {
                new Artwork(phone.newPage(), "http://127.0.0.1:" + fresh.port()).firstThrows();
                new Artwork(phone.newPage(), "http://127.0.0.1:" + server.port()).answers();
            }
        }
    }

    private static BrowserContext phone(com.microsoft.playwright.Browser chromium) {
        return chromium.newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(Browser.WIDTH, Browser.HEIGHT)
                .setHasTouch(true)
                .setIsMobile(true)
                .setServiceWorkers(ServiceWorkerPolicy.BLOCK));
    }

    private void firstThrows() {
        open("/");
        picture("first");
        page.locator("#first button").tap();
        page.waitForURL("**/runs/*");
        for (String finish : List.of("1-2-1", "2-1-1", "0-3-1")) {
            page.locator("[data-finish='" + finish + "']").tap();
        }
        picture("boards");
        page.locator("#rounds button").nth(1).tap();
        picture("correct");
    }

    private void answers() {
        open("/");
        picture("what-now");
        page.locator("#plan .minutes button").nth(2).tap();
        page.waitForURL("**/plan*");
        picture("plan");
        open("/form");
        page.locator(".whats summary").nth(1).tap();
        picture("form");
        open("/compare?by=bag");
        picture("compare");
        open("/spread");
        picture("spread");
    }

    private void open(String path) {
        // What is worked out for a moment first would show itself anew.
        while (page.request().get(address + path).status() == Web.WORKING) {
            page.waitForTimeout(300);
        }
        page.navigate(address + path);
    }

    private void picture(String name) {
        page.waitForTimeout(400);
        page.screenshot(new Page.ScreenshotOptions().setPath(PICTURES.resolve(name + ".png")));
    }
}
