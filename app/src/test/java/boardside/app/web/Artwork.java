package boardside.app.web;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/**
 * Makes what is drawn once and committed: the icons as PNG, from their SVG.
 *
 * <p>Run it in the folder {@code app} after the icon has changed; see docs/front.md.
 */
final class Artwork {
    private static final Path STATIC = Path.of("src", "main", "resources", "boardside", "static");

    private Artwork() {}

    public static void main(String[] arguments) throws IOException {
        try (Playwright playwright = Browser.playwright();
                com.microsoft.playwright.Browser chromium = Browser.launch(playwright)) {
            for (Map.Entry<String, String> icon : Map.of("icon", "icon.svg", "icon-maskable", "icon-maskable.svg")
                    .entrySet()) {
                for (int size : new int[] {192, 512}) {
                    icon(chromium, icon.getValue(), STATIC.resolve(icon.getKey() + "-" + size + ".png"), size);
                }
            }
        }
    }

    private static void icon(com.microsoft.playwright.Browser chromium, String svg, Path to, int size)
            throws IOException {
        try (Page page = chromium.newPage()) {
            page.setViewportSize(size, size);
            page.setContent("<body style='margin:0;background:transparent'>"
                    + Files.readString(STATIC.resolve(svg)).replace("<svg ", "<svg width='100%' "));
            page.screenshot(new Page.ScreenshotOptions().setPath(to).setOmitBackground(true));
        }
    }
}
