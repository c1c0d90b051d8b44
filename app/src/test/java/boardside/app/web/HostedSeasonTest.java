package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Player;
import boardside.app.record.HostedSeasons;
import boardside.app.record.NewSeason;
import boardside.app.season.MatchSide;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Said;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.league.season.SeasonOutlook;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Weeks;
import boardside.engine.rules.Finish;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Cookie;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A season as its organiser has it on a phone, and as a stranger sees it. */
class HostedSeasonTest extends Browser {
    @Override
    Server serve() {
        return Wire.serverOfAHouse(records, Clock.systemDefaultZone(), new ServerOptions(0, true, null, false));
    }

    private Locator button(String name) {
        return page.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    private Season season() {
        return records.seasons().find(records.seasons().all().get(0).id()).orElseThrow();
    }

    private void details(String name) {
        page.locator("summary", new Page.LocatorOptions().setHasText(Pattern.compile("^" + name + "$")))
                .click();
    }

    private static List<GameScore> games(int mine, int theirs) {
        return List.of(new GameScore(mine, theirs), new GameScore(mine, theirs), new GameScore(mine, theirs));
    }

    /** A season that began so many days ago, in the time zone here. */
    private Season made(int daysAgo, boolean open, String... players) {
        return records.seasons()
                .add(new NewSeason(
                        "Long Porch",
                        new SeasonRules(
                                3,
                                10,
                                SeasonRules.USUAL.points(),
                                SeasonRules.USUAL.tieBreaks(),
                                SeasonRules.USUAL.meetings(),
                                2,
                                true),
                        new Weeks(LocalDate.now().minusDays(daysAgo).atStartOfDay(), ZoneId.systemDefault()),
                        List.of(new NewSeason.Division("Everybody", List.of(players))),
                        open,
                        "Be kind."));
    }

    @Test
    void aSeasonInOneFormAndItsFirstWeek() {
        page.navigate(url("/seasons"));
        assertAccessible();
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Start a season"))
                .click();
        page.locator("#name").fill("Long Porch");
        page.locator("#players").fill("Ash Moor\nash moor");
        page.locator("#starts").fill("soon");
        button("Make the schedule").click();
        assertThat(page.locator("#players-fault")).containsText("is there already");
        assertThat(page.locator("#starts-fault")).hasText("Give a day such as 2026-11-30.");
        assertThat(page.locator("#players")).hasValue("Ash Moor\nash moor");
        picture("hosted-new-fault");
        assertAccessible();
        page.locator("#players").fill("1. Ash Moor\n2. Bea Lind\n3. Cy Holt");
        page.locator("#starts").fill(LocalDate.now().minusDays(3).toString());
        button("Make the schedule").click();
        assertThat(page.locator("p.notice")).hasText("The schedule is made.");
        assertThat(page.locator("#now")).hasText("Week 1 of 3");
        // Three players: one match a week, and one has a bye.
        assertThat(page.locator("#waiting li")).hasCount(2);
        picture("hosted-desk");
        assertAccessible();

        page.locator("#waiting a").first().click();
        page.locator("[name=first-1]").fill("88");
        page.locator("[name=second-1]").fill("119");
        button("Keep the totals").click();
        assertThat(page.locator("[name=second-1] + .fault-here")).containsText("0 to 120 points, all but 119");
        assertThat(page.locator("[name=first-1]")).hasValue("88");
        page.locator("[name=second-1]").fill("");
        button("Keep the totals").click();
        assertThat(page.locator("#stands")).hasText("88\u2013?; open");
        picture("hosted-match");
        assertAccessible();
        details("Forfeit");
        page.locator("input[name=to][value=first]").check();
        button("Give the rest away").click();
        assertThat(page.locator("#stands")).hasText(Pattern.compile("88\u2013\\?; by forfeit to .*"));
        button("Open it again").click();
        details("Put off");
        page.locator("#until").fill("yesterday");
        button("Put off until then").click();
        assertThat(page.locator("#until-fault")).hasText("Give a day and a time, such as 2026-12-08T21:00.");
        page.locator("#until").fill(LocalDate.now().plusDays(20) + "T21:00");
        button("Put off until then").click();
        assertThat(page.locator("#window")).containsText("put off");
        assertThat(season().matches())
                .filteredOn(match -> match.extended() != null)
                .hasSize(1);

        page.navigate(url("/seasons"));
        page.locator(".thing").click();
        details("What was changed");
        assertThat(page.locator("#changes li")).hasCount(4);
        page.locator("#changes button").first().click();
        assertThat(page.locator("p.notice")).hasText("Undone: it is as it was before.");
        assertThat(season().matches()).noneMatch(match -> match.extended() != null);
    }

    @Test
    void whatPlayersToldIsSettledByTheOrganiserAndPlayersComeAndGo() {
        HostedSeasons seasons = records.seasons();
        Season made = made(1, false, "Ash", "Bea", "Cy", "Di", "Ed");
        SeasonMatch told = made.matches().get(0);
        seasons.tell(made.id(), told.id(), games(80, 70), Voice.FIRST);
        page.navigate(url("/seasons/" + made.id()));
        assertThat(page.locator("#settle li")).hasCount(1);
        page.locator("#settle a").click();
        details("Dispute");
        page.locator("#why").fill("game 2 was 71");
        button("Mark as disputed").click();
        assertThat(page.locator(".note")).hasText("game 2 was 71");
        button("Settle as told").click();
        assertThat(season().match(told.id()).orElseThrow().state()).isEqualTo(State.CONFIRMED);
        details("Substitutes");
        page.locator("#first-substitute").fill("Guest");
        button("Keep the substitutes").click();
        details("Head start");
        page.locator("#head-start").fill("lots");
        button("Keep the head start").click();
        assertThat(page.locator("#head-start-fault")).hasText("Give a whole number from -120 to 120.");
        page.locator("#head-start").fill("-12");
        button("Keep the head start").click();
        SeasonMatch now = season().match(told.id()).orElseThrow();
        assertThat(now.headStart()).isEqualTo(-12);
        assertThat(now.firstSubstitute()).isEqualTo("Guest");

        page.navigate(url("/seasons/" + made.id() + "/players"));
        picture("hosted-players");
        assertAccessible();
        details("Cy");
        Entrant cy = made.named("Cy").orElseThrow();
        page.locator("#name-" + cy.id()).fill("bea");
        page.locator("details[open]").getByText("Rename").click();
        assertThat(page.locator("#name-" + cy.id() + "-fault")).containsText("twice");
        page.locator("#name-" + cy.id()).fill("Cy Holt");
        page.locator("details[open]").getByText("Rename").click();
        page.locator("#name").fill("Late");
        button("Let them in").click();
        assertThat(season().entrants()).extracting(Entrant::name).contains("Cy Holt", "Late");
        details("Di");
        button("Di leaves the season").click();
        assertThat(page.getByText("Di left early; nothing of theirs counts")).isVisible();
    }

    @Test
    void theTableThePlayOffAndTheForecast() {
        Season made = made(30, true, "Ash", "Bea", "Cy", "Di");
        HostedSeasons seasons = records.seasons();
        int more = 0;
        for (SeasonMatch match : made.matches()) {
            more++;
            seasons.tell(made.id(), match.id(), games(80 + more, 70), Voice.ORGANISER);
        }
        page.navigate(url("/seasons/" + made.id() + "/ending"));
        SeasonOutlook outlook = SeasonOutlook.of(season(), 0, HostedSeasons.SEED);
        assertThat(page.locator("#sentence")).hasText("Everything is thrown: the table stands.");
        assertThat(page.locator(".standings tbody tr").first())
                .containsText(outlook.forecast().order().get(0));
        picture("hosted-ending");
        assertAccessible();
        page.navigate(url("/seasons/" + made.id()));
        assertThat(page.locator("#nobody")).isVisible();
        button("Start the play-off").click();
        assertThat(page.locator("#now")).hasText("The play-off");
        page.locator("a[href='/seasons/" + made.id() + "/table']").click();
        assertThat(page.locator(".standings tbody tr")).hasCount(4);
        assertThat(page.locator(".standings tbody tr").nth(1)).containsText("behind");
        assertThat(page.locator("#play-off")).isVisible();
        picture("hosted-table");
        assertAccessible();
        int wide = (Integer) page.evaluate("document.documentElement.scrollWidth");
        assertThat(wide).isLessThanOrEqualTo(WIDTH);

        // Whoever undoes the start is told that rounds go with it.
        SeasonMatch decider = season().matches().stream()
                .filter(match -> match.stage() == SeasonMatch.Stage.PLAY_OFF)
                .findFirst()
                .orElseThrow();
        page.navigate(url("/seasons/" + made.id()));
        assertThat(page.locator("li .fault")).hasCount(0);
        for (int number = 1; number <= 2; number++) {
            records.matchNights().correct(made.id(), decider.id(), 1, MatchSide.FIRST, number, new Finish(2, 1, 1));
        }
        page.reload();
        page.locator("details:has(form[action$='/undo']) summary").click();
        Locator warned = page.locator("li:has(.fault)");
        assertThat(warned.locator(".fault")).containsText("and the rounds thrown in them: 2.");
        picture("hosted-undo");
        warned.locator("button").click();
        assertThat(page.locator("p.notice")).isVisible();
        assertThat(page.locator("#play-off")).hasCount(0);
        assertThat(season().matches()).noneMatch(match -> match.stage() == SeasonMatch.Stage.PLAY_OFF);
    }

    @Test
    void aStrangerSeesASeasonThatIsOpenAndNothingElse() {
        Season open = made(1, true, "Ash", "Bea", "<script>".replace("<", "Cy "));
        Season closed = records.seasons()
                .add(new NewSeason(
                        "Secret",
                        SeasonRules.USUAL,
                        open.weeks(),
                        List.of(new NewSeason.Division("All", List.of("Fay", "Gil"))),
                        false,
                        ""));
        String entrant = open.entrants().get(0).id();
        for (String file : List.of(
                "table", "results.csv", "results.json", "calendar.ics", "players/" + entrant + "/calendar.ics")) {
            assertThat(Wire.get(Wire.ELSEWHERE, server.port(), "/seasons/" + open.id() + "/" + file)
                            .status())
                    .as(file)
                    .isEqualTo(200);
            Wire refused = Wire.get(Wire.ELSEWHERE, server.port(), "/seasons/" + closed.id() + "/" + file);
            assertThat(refused.status()).as(file).isEqualTo(404);
            assertThat(refused.body()).doesNotContain("Fay", "Secret");
            assertThat(Wire.get(Wire.HERE, server.port(), "/seasons/" + closed.id() + "/" + file)
                            .status())
                    .as(file)
                    .isIn(200, 404);
        }
        assertThat(Wire.get(Wire.ELSEWHERE, server.port(), "/seasons/" + open.id())
                        .status())
                .isEqualTo(302);
        Wire table = Wire.get(Wire.ELSEWHERE, server.port(), "/seasons/" + open.id() + "/table");
        assertThat(table.body()).doesNotContain("/matches/", "<form");
        Wire calendar = Wire.get(Wire.ELSEWHERE, server.port(), "/seasons/" + open.id() + "/calendar.ics");
        assertThat(calendar.header("content-type")).isEqualTo("text/calendar; charset=utf-8");
        assertThat(calendar.body()).startsWith("BEGIN:VCALENDAR\r\n");
    }

    private void as(int player) {
        page.context().addCookies(List.of(new Cookie(Web.PLAYER, String.valueOf(player)).setUrl(url("/"))));
    }

    @Test
    void playersTellTheirOwnTotalsAndAgreeToTheOthers() {
        int ash = records.addPlayer("Ash", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        int bea = records.addPlayer("Bea", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        int eve = records.addPlayer("Eve", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        Season made = made(1, false, "Ash", "Bea");
        String match =
                "/seasons/" + made.id() + "/mine/" + made.matches().get(0).id();
        as(ash);
        page.navigate(url("/seasons/mine"));
        picture("hosted-mine");
        assertAccessible();
        page.locator(".links a").click();
        page.locator("[name=mine-1]").fill("119");
        button("Tell my totals").click();
        assertThat(page.locator(".fault-here")).containsText("0 to 120 points");
        for (int game = 1; game <= 3; game++) {
            page.locator("[name=mine-" + game + "]").fill("8" + game);
        }
        button("Tell my totals").click();
        assertThat(page.locator("#stands")).hasText("81–?, 82–?, 83–?; open");
        as(bea);
        page.navigate(url(match));
        for (int game = 1; game <= 3; game++) {
            page.locator("[name=mine-" + game + "]").fill("7" + game);
        }
        button("Tell my totals").click();
        assertThat(page.locator("#stands")).containsText("told, not yet agreed");
        assertThat(button("These totals are right")).hasCount(0);
        picture("hosted-my-match");
        assertAccessible();
        // Said again, it is no agreement.
        button("Tell my totals").click();
        assertThat(page.locator("#stands")).containsText("told, not yet agreed");
        as(ash);
        page.navigate(url(match));
        details("Something is wrong");
        page.locator("#why").fill("game 3 was 72");
        button("Tell the organiser").click();
        assertThat(page.locator("#stands")).containsText("disputed");
        assertThat(button("Tell my totals")).hasCount(0);
        records.seasons().reopen(made.id(), made.matches().get(0).id());
        as(bea);
        page.navigate(url(match));
        page.locator("[name=mine-3]").fill("72");
        button("Tell my totals").click();
        as(ash);
        page.navigate(url(match));
        button("These totals are right").click();
        assertThat(season().matches().get(0).state()).isEqualTo(State.CONFIRMED);
        assertThat(season().matches().get(0).said()).isEqualTo(Said.BOTH);
        // Somebody else's match is not there.
        as(eve);
        page.navigate(url("/seasons/mine"));
        assertThat(page.locator("main")).containsText("You are in no season run here");
        page.navigate(url(match));
        assertThat(page.locator("main")).containsText("There is no such match in this season.");
    }

    /** Names are text wherever they are shown. */
    @Test
    void namesAreNeverTakenForMarkup() {
        Season made = made(1, true, "A<script>window.bad=1</script>", "B\"><img src=x onerror=bad()>", "C'&amp;");
        for (String path :
                Map.of("desk", "", "table", "/table", "players", "/players").values()) {
            page.navigate(url("/seasons/" + made.id() + path));
            assertThat(page.locator("main")).containsText("A<script>window.bad=1</script>");
            assertThat(page.evaluate("window.bad === undefined && !document.querySelector('main img')"))
                    .isEqualTo(true);
        }
    }
}
