package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.Fixture;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.record.LeagueNight;
import boardside.app.record.LeagueSeason;
import boardside.app.record.LeagueState;
import boardside.app.record.RunDetail;
import boardside.engine.league.Reach;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.skill.Interval;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** A league night as a player has it: from the fixtures in the chat to the result in the chat. */
class LeagueNightTest extends Browser {
    private int me;

    private void practise() {
        me = records.firstPlayer().id();
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(7_600);
        for (int day = 20; day > 0; day--) {
            Thrown.total(records, me, random, day, 10, 0.45, 0.35);
        }
    }

    private void league() {
        page.navigate(url("/leagues"));
        assertAccessible();
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Add a league"))
                .click();
        page.locator("#name").fill("Tuesday Post");
        page.locator("#me").fill("Ash Moor");
        page.locator("#zone").fill("America/Chicago");
        picture("league-settings");
        assertAccessible();
        button("Save").click();
        assertThat(page.locator("h1")).hasText("Tuesday Post");
    }

    private Locator button(String name) {
        return page.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    private void paste(String text) {
        page.locator("#text").fill(text);
        button("Take these").click();
    }

    private LeagueState state() {
        return records.leagues().all(me).get(0);
    }

    private void tap(String finish, int rounds) {
        for (int i = 0; i < rounds; i++) {
            page.locator("[data-finish='" + finish + "']").click();
        }
    }

    /** The page says of the player what the command says. */
    private void ending() {
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("How the season may end"))
                .click();
        LeagueSeason season =
                LeagueSeason.of(records, me, state(), LocalDate.now()).orElseThrow();
        assertThat(page.locator("#sentence"))
                .containsText("You most likely end in place "
                        + season.forecast().likeliest("Ash Moor") + " (nine times in ten "
                        + season.forecast().quantile("Ash Moor", 0.05) + "\u2013"
                        + season.forecast().quantile("Ash Moor", 0.95));
        assertThat(page.locator("#season tbody tr")).hasCount(4);
        picture("league-ending");
        assertAccessible();
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Tuesday Post"))
                .first()
                .click();
    }

    @Test
    void fromPastedFixturesThroughThreeGamesOfflineToTheTextForTheChat() {
        practise();
        league();
        paste("Week 3 due 2035-11-29 9 pm\nAsh Moor v Bea Lind\nCy plays Di");
        assertThat(page.locator("#paste-faults")).containsText("line 3: there are no two names in \"Cy plays Di\"");
        assertThat(page.locator("#text")).hasValue(Pattern.compile("Week 3 due.*"));
        picture("league-paste-fault");
        assertAccessible();
        paste("""
                Week 3 due 2035-11-29 9 pm
                Ash Moor v Bea Lind ?-74, ?-71
                Cy v Di 88-92, 60-60, 75-70
                Week 2
                Bea Lind v Cy 80-78, 71-66, 90-61
                """);
        assertThat(page.locator("p.notice")).hasText("Taken.");
        assertThat(page.locator("#table")).containsText("Bea Lind");
        picture("league");
        assertAccessible();
        ending();
        page.locator("#throw").click();

        assertThat(page.locator("#against")).hasText("Game 1 of 3 against Bea Lind");
        assertThat(page.locator("#needed")).containsText("7.5 a round over the last 10 beats Bea Lind's 74.");
        LeagueNight night =
                LeagueNight.of(records, me, state(), state().toThrow().get(0).id(), LocalDate.now());
        assertThat(page.locator("#needed")).containsText(said(night, 1, 0, 10));
        picture("night-game");
        assertAccessible();

        phone.setOffline(true);
        tap("2-2-0", 3);
        assertThat(page.locator("#needed")).containsText("7.3 a round over the last 7 beats Bea Lind's 74.");
        assertThat(page.locator("#needed")).containsText(said(night, 1, 24, 7));
        tap("2-2-0", 7);
        assertThat(page.locator("#done-said")).hasText("Game 1: 80–74, yours.");
        picture("night-done");
        page.locator("#next-game").click();
        assertThat(page.locator("#against")).hasText("Game 2 of 3 against Bea Lind");
        assertThat(page.locator("#score")).hasText("0");
        // 54 after nine rounds: eighteen more would be needed.
        tap("1-3-0", 9);
        assertThat(page.locator("#needed")).containsText("Bea Lind's 71 is out of reach now");
        tap("3-1-0", 1);
        assertThat(page.locator("#done-said")).hasText("Game 2: 64–71. This one goes to Bea Lind.");
        page.locator("#next-game").click();
        assertThat(page.locator("#needed")).containsText("going by totals Bea Lind posted (5)");
        assertThat(page.locator("#needed")).containsText(said(night, 3, 0, 10));
        tap("3-0-1", 10);
        assertThat(page.locator("#done-said")).hasText("Game 3: 90 thrown. Bea Lind has not posted yet.");
        assertThat(page.locator("#sent")).containsText("not yet sent");

        phone.setOffline(false);
        assertThat(page.locator("#sent"))
                .hasText(
                        "all stored",
                        new com.microsoft.playwright.assertions.LocatorAssertions.HasTextOptions().setTimeout(40_000));
        assertThat(page).hasURL(Pattern.compile(".*/runs/.*"));
        page.locator("#match").click();
        assertThat(page.locator("#games")).containsText("Game 1: 80–74, won.");
        assertThat(page.locator("#games")).containsText("Game 2: 64–71. This one goes to Bea Lind.");
        assertThat(page.locator("#games")).containsText("Game 3: 90 thrown. Bea Lind has not posted yet.");
        picture("match");
        assertAccessible();

        page.locator("[name='second-3']").fill("90");
        button("Save").click();
        assertThat(page.locator("p.notice")).hasText("Kept.");
        assertThat(page.locator("#chat")).hasValue("""
                        Tuesday Post, week 3: Ash Moor v Bea Lind
                        Game 1: 80-74
                        Game 2: 64-71
                        Game 3: 90-90
                        League points: Ash Moor 3, Bea Lind 3
                        Ash Moor, game 1 by rounds: 8 8 8 8 8 8 8 8 8 8
                        Ash Moor, game 2 by rounds: 6 6 6 6 6 6 6 6 6 10
                        Ash Moor, game 3 by rounds: 9 9 9 9 9 9 9 9 9 9""");
        button("Copy the text").click();
        assertThat(page.locator("#copied")).hasText("Copied. Paste it into the chat.");
        storedAsThrown();

        page.navigate(url(LeaguesPage.path(state().league())));
        assertThat(page.locator("#table tbody tr").first()).containsText("Bea Lind");
        assertThat(page.locator("#table")).containsText("Ash Moor");
        picture("league-after");
        page.locator("details summary").last().click();
        button("Undo").first().click();
        assertThat(page.locator("p.notice")).containsText("Undone");
        assertThat(state().toThrow()).isEmpty();
        assertThat(state().standings().rows().stream()
                        .filter(row -> row.player().equals("Ash Moor"))
                        .findFirst()
                        .orElseThrow()
                        .record()
                        .games())
                .isEqualTo(2);
    }

    /** Three fixture runs of ten legal rounds of four at a league's stake, each with its game and opponent. */
    private void storedAsThrown() {
        List<Run> runs = records.journal(me, "fixture", 0, 10).entries().stream()
                .flatMap(entry -> entry.runs().stream())
                .filter(run -> run.drill() == Drill.FIXTURE)
                .toList();
        assertThat(runs).extracting(Run::game).containsExactlyInAnyOrder(1, 2, 3);
        for (Run run : runs) {
            RunDetail detail = records.run(me, run.id()).orElseThrow();
            assertThat(run.opponent()).isEqualTo("Bea Lind");
            assertThat(run.finishedAt()).isNotNull();
            assertThat(detail.rounds()).hasSize(10).allSatisfy(round -> {
                assertThat(round.bags()).isEqualTo(4);
                assertThat(round.lines().get(0).setting()).isEqualTo(Setting.LEAGUE);
            });
            assertThat(detail.rounds().stream().mapToInt(Round::points).sum())
                    .isEqualTo(run.sum().points());
        }
        assertThat(records.check()).isEmpty();
    }

    /** The page's own arithmetic against the engine's; a sum of up to 121 chances, each given to a millionth. */
    @Test
    void thePageWorksOutTheSameChances() throws Exception {
        practise();
        league();
        paste("Ash Moor v Bea Lind ?-74\nBea Lind v Cy 66-70, 81-75");
        page.locator("#throw").click();
        page.locator("#needed").waitFor();
        LeagueNight night =
                LeagueNight.of(records, me, state(), state().toThrow().get(0).id(), LocalDate.now());
        Fixture fixture = state().toThrow().get(0);
        Object told = page.evaluate("""
                async () => {
                  const { winning } = await import('/static/js/night.js');
                  const { night } = JSON.parse(document.getElementById('run').dataset.run);
                  const found = [];
                  for (let left = 0; left <= 10; left++) {
                    for (const thrown of [0, 17, 50, 80, 110]) {
                      for (const game of [1, 2]) {
                        const { theirs, chances } = night.games[game - 1];
                        const law = theirs === undefined ? chances : [...Array(theirs).fill(0), 1];
                        found.push({ left, thrown, game, ...winning(night.reach[left], thrown, law) });
                      }
                    }
                  }
                  return JSON.stringify(found);
                }
                """);
        JsonNode found = Json.MAPPER.readTree((String) told);
        assertThat(found).hasSize(110);
        for (JsonNode one : found) {
            Reach.Chance win = win(
                    night,
                    fixture,
                    one.get("game").asInt(),
                    one.get("thrown").asInt(),
                    one.get("left").asInt());
            for (Map.Entry<String, Double> part : Map.of("likely", win.likely(), "low", win.low(), "high", win.high())
                    .entrySet()) {
                assertThat(one.get(part.getKey()).asDouble())
                        .as(one.toString())
                        .isCloseTo(part.getValue(), org.assertj.core.api.Assertions.within(1e-4));
            }
        }
    }

    private String said(LeagueNight night, int game, int thrown, int left) {
        LeagueState state = state();
        Fixture fixture = state.fixtures().stream()
                .filter(one -> one.has("Ash Moor") && one.has("Bea Lind"))
                .findFirst()
                .orElseThrow();
        Reach.Chance win = win(night, fixture, game, thrown, left);
        return "You win it " + Numbers.percent(new Interval(win.likely(), win.low(), win.high())) + " of the time";
    }

    private Reach.Chance win(LeagueNight night, Fixture fixture, int game, int thrown, int left) {
        return Objects.requireNonNull(night.standing(state(), fixture, game, thrown, left)
                        .orElseThrow()
                        .chances())
                .win();
    }
}
