package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.cli.Answers;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Line;
import boardside.app.record.Ladder;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Climbs and the ghosts they meet, from the start page to the summary. */
class LadderPagesTest extends Recorder {
    private GhostPlay played() {
        return Objects.requireNonNull(stored().run().setup().ghostPlay());
    }

    private String chosen() {
        return page.locator("input[name=ghost]:checked").getAttribute("value");
    }

    /** Runs of one evening lie within three hours; each outing is one of its own. */
    @Test
    void aClimbOverThreeSessionsOneOfThemOffline() {
        page.navigate(url("/start/climb"));
        assertThat(page.locator("#ladder")).containsText("Nothing is known of your throwing yet");
        assertThat(chosen()).isEqualTo("3");
        picture("climb-first");
        assertAccessible();
        go();
        assertThat(page.locator("#where")).hasText("Round 1, ghost 3");
        tapTimes(3, "4-0-0");
        assertThat(page.locator("#done-said")).hasText("Won 27\u20130 in 3 rounds");
        summary();
        assertThat(page.locator("#ladder")).containsText("You beat ghost 3");
        assertThat(page.locator("#again")).hasText("Next race: ghost 4");
        picture("climb-summary");
        assertAccessible();

        // The next outing, a day on; without network once the page is there.
        moveBack(1);
        page.navigate(url("/"));
        assertThat(page.locator("a[href=\"/start/climb\"]")).containsText("Next: ghost 4");
        page.getByText("Same again").click();
        assertThat(page.locator("#where")).hasText("Round 1, ghost 4");
        phone.setOffline(true);
        tapTimes(6, "0-0-4");
        assertThat(page.locator("#done-said")).containsText("The ghost takes this one");
        assertThat(page.locator("#sent")).containsText("not yet sent");
        phone.setOffline(false);
        summary();
        assertThat(page.locator("#ladder")).containsText("Ghost 4 beat you");

        moveBack(1);
        start("climb");
        assertThat(page.locator("#where")).hasText("Round 1, ghost 3");
        tapTimes(3, "4-0-0");
        summary();
        assertThat(page.locator("#again")).hasText("Next race: ghost 4");
        picture("climb-three");
        page.locator("svg[aria-labelledby^=ladder-picture]").scrollIntoViewIfNeeded();
        picture("climb-ladder");
        assertThat(Ladder.of(records, me()).races())
                .extracting(Ladder.Race::ghost)
                .containsExactly(3, 4, 3);

        // A correction of the last race moves the rung: two rounds won, then seven lost.
        page.navigate(url("/runs/" + runId()));
        page.locator("#rounds button").first().click();
        tap("0-0-4");
        assertThat(page.locator("#score")).hasText("18\u20133");
        tapTimes(6, "0-0-4");
        summary();
        assertThat(page.locator("#again")).hasText("Next race: ghost 2");
    }

    /** Puts everything recorded so far a day back. */
    private void moveBack(int days) {
        Shift.back(folder.resolve("store.db"), days);
    }

    @Test
    void theLevelAndTheLadderAreThoseOfTheCommand() throws Exception {
        var random = RandomSource.XO_RO_SHI_RO_128_PP.create(19);
        for (int day = 1; day <= 8; day++) {
            Thrown.total(records, me(), random, day, 15, 0.4, 0.35);
        }
        JsonNode form = Answers.json(folder.resolve("store.db"), "form");
        JsonNode odds = Answers.json(folder.resolve("store.db"), "odds", "climb");
        JsonNode climb = Answers.json(folder.resolve("store.db"), "climb");
        assertThat(climb.get("level")).isEqualTo(form.get("level"));
        assertThat(climb.get("stationary")).isEqualTo(odds.get("stationary"));
        assertThat(climb.get("mean")).isEqualTo(odds.get("range").get("mean"));
        int start = climb.get("next").asInt();
        JsonNode race = Answers.json(folder.resolve("store.db"), "odds", "race", "--ghost", String.valueOf(start));
        assertThat(race.get("winProbability").asDouble()).isGreaterThanOrEqualTo(0.7);
        assertThat(climb.get("winProbability")).isEqualTo(race.get("range").get("winProbability"));
        JsonNode above = Answers.json(folder.resolve("store.db"), "odds", "race", "--ghost", String.valueOf(start + 1));
        assertThat(above.get("winProbability").asDouble()).isLessThan(0.7);

        page.navigate(url("/start/climb"));
        assertThat(chosen()).isEqualTo(String.valueOf(start));
        JsonNode level = form.get("level");
        assertThat(page.locator("#ladder"))
                .containsText("Your level, going by all bags thrown, is "
                        + Numbers.one(level.get("low").asDouble()) + "\u2013"
                        + Numbers.one(level.get("high").asDouble()));
        assertThat(page.locator("#ladder"))
                .containsText("hovers around ghost "
                        + Numbers.one(climb.get("mean").get("low").asDouble()));
        picture("climb-known");
    }

    @Test
    void aGhostThatVariesPlaysTheRoundsItWasGiven() {
        page.navigate(url("/start/climb"));
        choose("ghost", "6");
        choose("ghost-kind", "level");
        go();
        assertThat(page.locator("#where")).hasText("Round 1 against a player of level 6");
        GhostPlay play = played();
        assertThat(play.points()).hasSize(200);
        tapTimes(2, "1-3-0");
        assertThat(page.locator("#rounds button").first()).hasText("6:" + play.in(1));
        picture("climb-varying");
        assertAccessible();
        while (!page.locator("#done-said").isVisible()) {
            tap("4-0-0");
        }
        assertSent();
        assertThat(stored().rounds())
                .allSatisfy(round -> assertThat(round.lines().get(0).ghost()).isEqualTo(play.in(round.number())));
        summary();
        assertThat(page.locator("#again")).hasText("Next race: ghost 7");
        page.locator("#again").click();
        GhostPlay next = played();
        assertThat(next.of()).isEqualTo("7");
        assertThat(next.points()).isNotEqualTo(play.points());
    }

    @Test
    void aRaceAgainstMyOwnPastRoundForRound() {
        var random = RandomSource.XO_RO_SHI_RO_128_PP.create(23);
        String worse = Thrown.total(records, me(), random, 40, 12, 0.2, 0.4);
        String better = Thrown.total(records, me(), random, 30, 12, 0.5, 0.3);
        page.navigate(url("/start/race"));
        choose("ghost-kind", "day");
        picture("race-past");
        assertAccessible();
        go();
        List<Integer> points = records.run(me(), better).orElseThrow().rounds().stream()
                .map(boardside.app.practice.Round::points)
                .toList();
        GhostPlay play = played();
        assertThat(play.of()).isEqualTo(LocalDate.now().minusDays(30).toString());
        assertThat(play.points()).isEqualTo(points);
        tapTimes(2, "2-2-0");
        assertSent();
        assertThat(stored().rounds().stream()
                        .flatMap(round -> round.lines().stream())
                        .map(Line::ghost))
                .isEqualTo(points.subList(0, 2));

        page.navigate(url("/start/race"));
        choose("ghost-kind", "month");
        String month = LocalDate.now().minusDays(40).toString().substring(0, 7);
        page.locator("#ghost-month").selectOption(month);
        go();
        GhostPlay past = played();
        assertThat(past.of()).isEqualTo(month);
        assertThat(past.points().size()).isGreaterThanOrEqualTo(12);
        assertThat(records.run(me(), worse)).isPresent();
    }
}
