package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Player;
import boardside.app.record.NewSeason;
import boardside.app.season.MatchRound;
import boardside.app.season.MatchSide;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Cookie;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two phones throw one match; a spectator, let in by nobody, sees it as it comes. */
class MatchNightPagesTest extends Browser {
    private Duration passed = Duration.ZERO;
    private Season season;
    private SeasonMatch match;
    private Player bea;

    /** The server's clock, which goes forward when a test says so. */
    private final class Passing extends Clock {
        @Override
        public ZoneId getZone() {
            return ZoneId.systemDefault();
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return Instant.now().plus(passed);
        }
    }

    @Override
    Server serve() {
        passed = Duration.ZERO;
        return Wire.serverOfAHouse(records, new Passing(), new ServerOptions(0, true, null, false));
    }

    @Override
    BrowserContext newPhone() {
        BrowserContext phone = super.newPhone();
        phone.clock().install();
        return phone;
    }

    /** Time passes for everybody. */
    private void pass(Duration time, Page... phones) {
        passed = passed.plus(time);
        for (Page one : phones) {
            one.clock().fastForward(time.toMillis());
        }
    }

    @BeforeEach
    void start() {
        Player ash = records.firstPlayer();
        records.editPlayer(new Player(ash.id(), "Ash Moor", ash.hand(), ash.throwsFrom(), ash.version()));
        bea = records.addPlayer("Bea Lind", Player.Hand.RIGHT, Player.Hand.LEFT);
        SeasonRules usual = SeasonRules.USUAL;
        season = records.seasons()
                .add(new NewSeason(
                        "Long Porch",
                        new SeasonRules(2, 4, usual.points(), usual.tieBreaks(), usual.meetings(), 0, false),
                        new Weeks(LocalDate.now().minusDays(1).atStartOfDay(), ZoneId.systemDefault()),
                        List.of(new NewSeason.Division("Everybody", List.of("Ash Moor", "Bea Lind"))),
                        true,
                        ""));
        match = season.matches().get(0);
    }

    private static Locator button(Page on, String name) {
        return on.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    private static void tap(Page on, String finish) {
        on.locator("[data-finish='" + finish + "']").click();
    }

    private String mine() {
        return url(HostedMinePage.path(season.id(), match.id()));
    }

    private String live() {
        return "http://" + Wire.ELSEWHERE + ":" + server.port() + LivePage.path(season.id(), match.id());
    }

    private SeasonMatch told() {
        return records.seasons()
                .find(season.id())
                .flatMap(all -> all.match(match.id()))
                .orElseThrow();
    }

    private static Locator cells(Page on, int game, int side) {
        return on.locator(".game:nth-of-type(" + game + ") tbody tr td:nth-of-type(" + (side == 1 ? 1 : 3) + ")");
    }

    @Test
    void twoPhonesThrowAMatchAndASpectatorSeesItAsItComes() {
        Page ash = page;
        ash.navigate(url("/"));
        assertThat(ash.locator("#due a")).containsText("Ash Moor v Bea Lind");
        assertThat(ash.locator("#due a")).containsText("Week 1, until ");
        ash.locator("#due a").click();
        assertAccessible();
        button(ash, "Throw game 1").click();
        assertThat(ash.locator("#where")).hasText(Pattern.compile(".*1 .*4.*"));

        BrowserContext couch = newPhone();
        Page spectator = newPage(couch);
        spectator.navigate(live());
        assertThat(spectator.locator(".game").first()).containsText("Not thrown yet.");
        tap(ash, "3-1-0");
        assertThat(cells(spectator, 1, 1)).hasCount(1);
        assertThat(spectator.locator("#live-now b").first()).hasText("10");
        pass(Duration.ofSeconds(30), ash, spectator);
        tap(ash, "1-1-2");
        assertThat(cells(spectator, 1, 1).last()).containsText("4");
        assertThat(spectator.locator(".mark")).hasCount(0);
        assertThat(spectator.locator("#live-said")).containsText("Ash Moor, game 1, round ");

        // The other side throws elsewhere: game one against game one, round against round.
        BrowserContext other = newPhone();
        Page bea = newPage(other);
        other.addCookies(List.of(new Cookie(Web.PLAYER, String.valueOf(this.bea.id())).setUrl(url("/"))));
        bea.navigate(mine());
        button(bea, "Throw game 1").click();
        tap(bea, "2-2-0");
        assertThat(cells(spectator, 1, 2).first()).containsText("8");
        assertThat(spectator.locator(".thrown .score").first()).hasText("10–8");

        // Without the network rounds are kept, and come with their own times.
        phone.setOffline(true);
        pass(Duration.ofSeconds(30), ash, bea, spectator);
        tap(ash, "0-4-0");
        pass(Duration.ofMinutes(3), ash, bea, spectator);
        tap(ash, "0-0-4");
        assertThat(ash.locator("#done-said")).containsText("Game 1: 18");
        button(ash, "Game 2").click();
        pass(Duration.ofSeconds(40), ash, bea, spectator);
        tap(ash, "4-0-0");
        assertThat(cells(spectator, 1, 1)).hasCount(2);
        phone.setOffline(false);
        assertThat(cells(spectator, 1, 1)).hasCount(4);
        assertThat(cells(spectator, 1, 1).nth(2)).containsText("sent late");
        assertThat(cells(spectator, 1, 1).nth(3)).not().containsText("sent late");
        assertThat(spectator.locator(".game:nth-of-type(2) .round b")).hasText(new String[] {"12"});
        assertThat(spectator.locator(".game:nth-of-type(1) .game-total")).hasText("18–8");
        assertThat(told().games()).containsExactly(new GameScore(18, null));
        page = spectator;
        picture("match-spectator");
        assertAccessible();

        // A slip is set right at once and leaves no trace; later it does.
        button(ash, "Undo").click();
        assertThat(spectator.locator(".game:nth-of-type(2) .round")).hasCount(0);
        tap(ash, "3-0-1");
        assertThat(spectator.locator(".game:nth-of-type(2) .round b")).hasText(new String[] {"9"});
        assertThat(spectator.locator("#edits")).hasCount(0);
        pass(Duration.ofMinutes(5), ash, bea, spectator);
        ash.locator("#rounds button").first().click();
        tap(ash, "3-1-0");
        assertThat(spectator.locator(".game:nth-of-type(2) .mark")).hasText("changed later");
        spectator.locator("#edits summary").click();
        assertThat(spectator.locator("#edits li"))
                .containsText("Ash Moor: game 2, Ash Moor, round 1: 3-0-1 became 3-1-0");
        picture("match-edits");
        assertAccessible();

        // Over a video: nothing behind it.
        Page overlay = newPage(couch);
        overlay.navigate(live() + "/overlay");
        assertThat(overlay.locator(".lay-first .lay-points")).hasText("10");
        assertThat(overlay.evaluate("() => [document.documentElement, document.body].map("
                        + "(e) => getComputedStyle(e).backgroundColor).join()"))
                .isEqualTo("rgba(0, 0, 0, 0),rgba(0, 0, 0, 0)");

        // The organiser sees how it came in, and sets a round right for all to see.
        page = ash;
        ash.navigate(url("/seasons/" + season.id()));
        assertThat(ash.locator("#content"))
                .containsText(Pattern.compile("Rounds: 5 live, 1 sent late, 1 changed later"));
        ash.navigate(url("/seasons/" + season.id() + "/matches/" + match.id()));
        ash.locator("summary", new Page.LocatorOptions().setHasText("Set a round right"))
                .click();
        ash.locator("#game").fill("1");
        ash.locator("#number").fill("1");
        ash.locator("#bags").fill("4-0-1");
        button(ash, "Set it right").click();
        assertThat(ash.locator(".fault-here").first()).containsText("four bags as in-on-off");
        ash.locator("#bags").fill("4-0-0");
        button(ash, "Set it right").click();
        assertThat(ash.locator("p.notice")).isVisible();
        assertThat(spectator.locator("#edits li").last()).containsText("the organiser: game 1, Ash Moor, round 1");
        assertAccessible();
        other.close();
        couch.close();
    }

    @Test
    void aGameTypedInAfterwardsIsMarkedAndAVideoIsShown() {
        page.navigate(mine());
        page.locator("summary", new Page.LocatorOptions().setHasText("Type rounds"))
                .click();
        page.locator("#rounds").fill("3-1-0 2-2-0 4-4-0 1-1-2");
        button(page, "Add this game").click();
        assertThat(page.locator("#rounds-fault")).containsText("\"4-4-0\" is no round");
        page.locator("#rounds").fill("3-1-0 2-2-0 4-0-0");
        button(page, "Add this game").click();
        assertThat(page.locator("#rounds-fault")).hasText("A game has 4 rounds, not 3.");
        page.locator("#rounds").fill("3-1-0, 2-2-0, 4-0-0, 1-1-2");
        button(page, "Add this game").click();
        assertThat(page.locator("p.notice")).isVisible();
        assertThat(page.locator(".game .mark")).hasCount(4);
        assertThat(records.matchNights()
                        .find(season.id(), match.id())
                        .orElseThrow()
                        .rounds(1, MatchSide.FIRST))
                .extracting(MatchRound::way)
                .containsOnly(MatchRound.Way.TYPED);
        assertThat(told().games()).containsExactly(new GameScore(34, null));
        // What follows from rounds cannot be typed as well.
        assertThat(page.locator("[name=mine-1]")).hasCount(0);
        page.locator("[name=mine-2]").fill("20");
        button(page, "Tell my totals").click();
        assertThat(page.locator("#stands")).containsText("34–?, 20–?");
        assertThat(told().state()).isEqualTo(State.OPEN);

        page.locator("summary", new Page.LocatorOptions().setHasText("Spectators"))
                .click();
        page.locator("#stream").fill("javascript:alert(1)");
        button(page, "Keep the address").click();
        assertThat(page.locator("#stream-fault")).containsText("begins with https://");
        page.locator("#stream").fill("https://video.example/ash?x=1&y=\"<b>");
        button(page, "Keep the address").click();
        assertThat(page.locator("#stream-fault")).isVisible();
        page.locator("#stream").fill("https://video.example/ash?x=1&y=2");
        button(page, "Keep the address").click();
        Locator video = page.locator("#streams a");
        assertThat(video).hasAttribute("href", "https://video.example/ash?x=1&y=2");
        assertThat(video).hasAttribute("rel", "noopener noreferrer nofollow");
        picture("match-mine");
        assertAccessible();
    }

    @Test
    void namesThatLookLikeMarkupAreText() {
        String evil = "Ash<img src=x onerror=document.title='bad'>";
        records.seasons().rename(season.id(), season.entrants().get(0).id(), evil);
        page.navigate(mine());
        page.locator("summary", new Page.LocatorOptions().setHasText("Type rounds"))
                .click();
        page.locator("#rounds").fill("3-1-0 2-2-0 4-0-0 1-1-2");
        button(page, "Add this game").click();
        for (String path : List.of(
                mine(),
                live(),
                live() + "/overlay",
                url("/"),
                url("/seasons/" + season.id()),
                url("/seasons/" + season.id() + "/matches/" + match.id()),
                url("/seasons/" + season.id() + "/table"))) {
            page.navigate(path);
            assertThat(page.locator("img")).hasCount(0);
            assertThat(page.title()).as(path).isNotEqualTo("bad");
        }
    }
}
