package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.demo.Demo;
import boardside.app.record.Records;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ReducedMotion;
import com.microsoft.playwright.options.ViewportSize;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The main pages laid out in three themes, at the size of a phone and of a desk, with the example's records: what no picture of
 * pixels would hold across versions of a browser is measured instead. Nothing is wider than the page, no target lies over another,
 * no text is cut off, nothing ends below the bar at the bottom, what is tapped is big enough (WCAG 2.2, 2.5.8: 24 by 24 CSS
 * pixels, links within a sentence excepted; 44 high where it is the page's main action or the bar).
 */
class LayoutTest extends Browser {
    private static final List<String> THEMES = List.of("light", "dark", "sun");
    private static final List<ViewportSize> SIZES =
            List.of(new ViewportSize(WIDTH, HEIGHT), new ViewportSize(1280, 800));

    /** Returns what is wrong with the page as it is shown, in words. */
    private static final String FAULTS = """
            () => {
              const faults = [];
              document.getAnimations().forEach((animation) => animation.finish());
              const name = (e) => e.tagName.toLowerCase() + (e.id ? '#' + e.id : '') + ' "'
                + (e.getAttribute('aria-label') || e.textContent).trim().replace(/\\s+/g, ' ').slice(0, 30) + '"';
              const root = document.documentElement;
              if (root.scrollWidth > root.clientWidth) faults.push(`scrolls sideways by ${root.scrollWidth - root.clientWidth}`);
              const shown = (e) => e.checkVisibility({ checkOpacity: false, checkVisibilityCSS: true });
              const scrolled = (e) => e.closest('.scroll-x, .set-up, .rounds, pre');
              const targets = [...document.querySelectorAll('a[href], button, summary, select, textarea, label.choice, '
                + 'input:not([type=hidden]):not(.choice input)')]
                .filter((e) => shown(e) && !e.closest('.skip') && !e.closest('svg') && !e.closest('dialog:not([open])'));
              const inText = (e) => e.tagName === 'A' && getComputedStyle(e).display === 'inline';
              const boxes = targets.filter((e) => !inText(e)).map((e) => {
                const r = e.getBoundingClientRect();
                return { e, fixed: Boolean(e.closest('.bottom, .run-bar, .stick')), left: r.left, right: r.right, top: r.top, bottom: r.bottom };
              });
              for (const { e, left, right, top, bottom } of boxes) {
                const [w, h] = [right - left, bottom - top];
                if (w < 24 || h < 24) faults.push(`${name(e)} is ${w.toFixed(0)} by ${h.toFixed(0)}`);
                if (h < 44 && e.matches('.main, .bottom a, .run-bar button, .tile')) faults.push(`${name(e)} is ${h.toFixed(0)} high`);
                if ((left < -1 || right > root.clientWidth + 1) && !scrolled(e)) faults.push(`${name(e)} reaches out of the page`);
              }
              for (const [i, a] of boxes.entries()) for (const b of boxes.slice(i + 1)) {
                if (a.fixed !== b.fixed || a.e.contains(b.e) || b.e.contains(a.e)) continue;
                const over = Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
                  && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
                if (over && !scrolled(a.e)) faults.push(`${name(a.e)} lies over ${name(b.e)}`);
              }
              for (const e of document.querySelectorAll('main *, nav.bottom *, header *')) {
                if (!shown(e) || e.closest('svg, .visually-hidden') || e.childElementCount > 0 || !e.textContent.trim()) continue;
                const style = getComputedStyle(e);
                const cut = style.overflowX !== 'visible' && e.scrollWidth > e.clientWidth + 1 && !scrolled(e);
                // Where the words themselves are, not the box that they may run out of.
                const words = document.createRange();
                words.selectNodeContents(e);
                const r = words.getBoundingClientRect();
                const out = (r.right > root.clientWidth + 1 || r.left < -1) && !scrolled(e);
                if (cut || out) faults.push(`${name(e)} is cut off`);
                const box = e.closest('button, .button, .tile, .choice, nav.bottom a');
                if (box && !scrolled(e)) {
                  const b = box.getBoundingClientRect();
                  if (r.left < b.left - 1 || r.right > b.right + 1) faults.push(`${name(e)} is wider than what it stands in`);
                }
              }
              scrollTo(0, document.body.scrollHeight);
              const bar = document.querySelector('nav.bottom, .run-bar');
              const last = [...document.querySelectorAll('main *')].filter((e) => shown(e) && !e.closest('dialog, .visually-hidden, .run-bar'))
                .reduce((most, e) => Math.max(most, e.getBoundingClientRect().bottom), 0);
              if (bar && shown(bar) && last > bar.getBoundingClientRect().top + 1) {
                faults.push(`${Math.round(last - bar.getBoundingClientRect().top)} px stay below the bar`);
              }
              scrollTo(0, 0);
              return faults;
            }""";

    @TempDir
    static Path filled;

    @BeforeAll
    static void fill() {
        try (Records all = Club.open(filled.resolve("store.db").toString())) {
            assertThat(Demo.fill(all, LocalDate.now()).name()).isEqualTo(Demo.PLAYER);
        }
    }

    @Override
    Server serve() {
        records.close();
        Path store = folder.resolve("filled.db");
        try {
            Files.copy(filled.resolve("store.db"), store);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        records = Club.open(store.toString());
        return Server.start(records, new ServerOptions(0, false, null, true), Clock.systemDefaultZone());
    }

    @Test
    void everyMainPageIsLaidOutWellInEveryThemeAndSize() {
        List<String> faults = new ArrayList<>();
        for (String path : pages()) {
            show(path);
            for (ViewportSize size : SIZES) {
                page.setViewportSize(size.width, size.height);
                for (String theme : THEMES) {
                    page.evaluate("(theme) => { document.documentElement.dataset.theme = theme; }", theme);
                    for (Object fault : (List<?>) page.evaluate(FAULTS)) {
                        faults.add(path + ", " + theme + ", " + size.width + ": " + fault);
                    }
                }
            }
            page.setViewportSize(WIDTH, HEIGHT);
        }
        assertThat(faults).isEmpty();
    }

    /** What is worked out for a moment first would show itself anew in the middle of looking, or call back from the next page. */
    private void show(String path) {
        while (page.request().get(url(path)).status() == Web.WORKING) {
            page.waitForTimeout(300);
        }
        page.navigate(url(path));
    }

    @Test
    void whatIsWrongWouldBeFound() {
        page.navigate(url("/safety"));
        page.evaluate("""
                () => {
                  document.querySelector('main').innerHTML = `<a class="button" href="/" id="one">One</a>
                    <button id="small">x</button><p id="long">end</p>`;
                  const set = (id, values) => Object.assign(document.getElementById(id).style, values);
                  set('one', { position: 'absolute', left: '10px', top: '100px' });
                  set('small', { position: 'absolute', left: '12px', top: '102px', minHeight: '0', height: '12px', padding: '0' });
                  set('long', { position: 'relative', top: '900px' });
                }""");
        assertThat(page.evaluate(FAULTS).toString()).contains("button#small", "lies over", "stay below the bar");
        page.evaluate("document.querySelector('main').innerHTML = `<p>${'wide'.repeat(40)}</p>`");
        assertThat(page.evaluate(FAULTS).toString()).contains("scrolls sideways", "is cut off");
    }

    @Test
    void everythingIsReachedWithTheKeyboardAndSeenWhenItIs() {
        for (String path : pages()) {
            show(path);
            int targets = (Integer) page.evaluate("""
                    () => {
                      window.left = new Set([...document.querySelectorAll('a[href], button:not([disabled]), summary, select, textarea')]
                        .filter((e) => e.tabIndex >= 0 && e.checkVisibility({ checkVisibilityCSS: true })));
                      window.unseen = [];
                      // What a script has replaced meanwhile is no longer there to be reached.
                      window.missed = () => [...left].filter((e) => e.checkVisibility({ checkVisibilityCSS: true }));
                      document.addEventListener('focusin', ({ target }) => {
                        left.delete(target);
                        const seen = target.closest('.choice')?.querySelector('span') ?? target;
                        const r = seen.getBoundingClientRect();
                        const bar = [...document.querySelectorAll('nav.bottom, .run-bar')].map((e) => e.getBoundingClientRect())
                          .filter(({ height }) => height > 0).reduce((most, { top }) => Math.min(most, top), innerHeight);
                        const name = target.tagName + ' ' + target.textContent.trim().slice(0, 30);
                        const fixed = target.closest('.bottom, .stick, .run-bar');
                        if (!fixed && (r.bottom < 1 || r.top > bar - 8)) unseen.push(name + ' is out of sight');
                        if (getComputedStyle(seen).outlineStyle === 'none') unseen.push(name + ' has no ring');
                      });
                      return left.size;
                    }""");
            for (int i = 0; i < 2 * targets + 20 && (Integer) page.evaluate("missed().length") > 0; i++) {
                page.keyboard().press("Tab");
            }
            assertThat(page.evaluate("unseen.join()")).as(path).isEqualTo("");
            assertThat(page.evaluate("missed().map((e) => e.textContent.trim()).join()"))
                    .as(path)
                    .isEqualTo("");
        }
    }

    /** WCAG 2.2, 2.3.3: what moves on its own does not for whoever has asked for less motion. */
    @Test
    void nothingMovesForWhoeverWantsLessMotion() {
        for (ReducedMotion wish : ReducedMotion.values()) {
            page.emulateMedia(new Page.EmulateMediaOptions().setReducedMotion(wish));
            for (String path : List.of("/style", "/", "/form")) {
                page.navigate(url(path));
                Object moving = page.evaluate("""
                        () => [...document.querySelectorAll('*')].filter((e) => {
                          const style = getComputedStyle(e);
                          return style.animationName !== 'none' || style.transitionDuration.split(', ').some((d) => d !== '0s')
                            || style.scrollBehavior === 'smooth';
                        }).length""");
                if (wish == ReducedMotion.REDUCE) {
                    assertThat(moving).as(path).isEqualTo(0);
                } else if (path.equals("/style")) {
                    assertThat(moving).as("that there is motion to leave out").isNotEqualTo(0);
                }
            }
        }
        page.emulateMedia(new Page.EmulateMediaOptions().setReducedMotion(null));
    }

    /** Places, drills, answers, the way to a league night, and the pages at the boards. */
    private List<String> pages() {
        int me = records.player(Demo.PLAYER).orElseThrow().id();
        String run = records.lastRun(me, boardside.engine.rules.Drill.TOTAL)
                .orElseThrow()
                .id();
        String league = records.leagues().all(me).get(0).league().id();
        return List.of(
                "/",
                "/form",
                "/journal",
                "/bags",
                "/more",
                "/help",
                "/glossary",
                "/safety",
                "/start/total",
                "/start/race",
                "/start/duel",
                "/start/situation",
                "/throw",
                "/runs/" + run,
                "/runs/" + run + "/summary",
                "/plan",
                "/goals",
                "/compare?by=bag-approach",
                "/odds",
                "/spread",
                "/bests",
                "/calendar",
                "/leagues",
                "/leagues/" + league,
                "/reports",
                "/playbook",
                "/rates/situation",
                "/slides",
                "/trials",
                "/advise",
                "/throws",
                "/style",
                "/players",
                "/boards",
                "/seasons/mine");
    }
}
