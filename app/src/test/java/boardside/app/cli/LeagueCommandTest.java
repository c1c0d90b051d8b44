package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LeagueCommandTest {
    @TempDir
    Path folder;

    private Ran run(String... args) {
        return with("", args);
    }

    private Ran with(String in, String... args) {
        List<String> all =
                new ArrayList<>(List.of("--data", folder.resolve("s.db").toString()));
        all.addAll(List.of(args));
        return Ran.with(in, all.toArray(String[]::new));
    }

    private JsonNode json(String... args) throws Exception {
        List<String> all = new ArrayList<>(List.of("--json"));
        all.addAll(List.of(args));
        Ran ran = run(all.toArray(String[]::new));
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isEqualTo(0);
        return Json.MAPPER.readTree(ran.out());
    }

    @BeforeEach
    void league() {
        for (int day = 1; day <= 6; day++) {
            run(
                    "record",
                    "total",
                    "--started-at",
                    "2026-05-2" + day + "T18:00:00+02:00",
                    "3-1-0",
                    "2-1-1",
                    "1-2-1",
                    "2-2-0",
                    "4-0-0",
                    "0-3-1",
                    "2-0-2",
                    "1-1-2",
                    "3-0-1",
                    "2-2-0");
        }
        assertThat(run("league", "new", "Tuesday Post", "--me", "Ash", "--zone", "America/Chicago")
                        .status())
                .isEqualTo(0);
        Ran posted = with(
                "Week 1 due 7 June 9 pm\nAsh v Bea ?-74\nCy v Di 88-92, 60-60, 75-70",
                "league",
                "post",
                "Tuesday Post",
                "-");
        assertThat(posted.out()).isEqualTo("2 added, 0 changed, 0 known already\n");
    }

    /** Nothing else is thrown in the match, so what is still needed is a question to the odds. */
    @Test
    void theChanceOfAGameIsThatOfTheOdds() throws Exception {
        JsonNode chance = json("league", "chance", "Tuesday Post", "--thrown", "24", "--left", "7");
        assertThat(chance.get("posted").asInt()).isEqualTo(74);
        assertThat(chance.get("need").asInt()).isEqualTo(51);
        assertThat(chance.get("pace").asDouble()).isCloseTo(51 / 7.0, within(1e-12));
        JsonNode odds = json("odds", "total", "--rounds", "7", "--at-least", "51");
        JsonNode range = odds.get("range").get("atLeast").get("probability");
        for (String part : List.of("estimate", "low", "high")) {
            assertThat(chance.get("win").get(part).asDouble())
                    .as(part)
                    .isCloseTo(range.get(part).asDouble(), within(1e-12));
        }
        assertThat(chance.get("tieOrWin").get("estimate").asDouble())
                .isCloseTo(
                        json("odds", "total", "--rounds", "7", "--at-least", "50")
                                .get("atLeast")
                                .get("probability")
                                .asDouble(),
                        within(1e-12));
        assertThat(run("league", "chance", "Tuesday Post", "--thrown", "24", "--left", "7")
                        .out())
                .startsWith(
                        "Game 1 against Bea: 24 points, 7 rounds left.\nBea posted 74: 51 more points beat it, 7.3 a round."
                                + "\nYou win it ");
        assertThat(json("league", "chance", "Tuesday Post", "--game", "2")
                        .get("goingBy")
                        .asText())
                .isEqualTo("theirs");
    }

    @Test
    void theTableAndItsReasons() throws Exception {
        JsonNode table = json("league", "table", "Tuesday Post").get("table");
        assertThat(table.get(0).get("player").asText()).isEqualTo("Cy");
        assertThat(table.get(0).get("points").asInt()).isEqualTo(3);
        assertThat(run("league", "table", "Tuesday Post").out())
                .startsWith("1. Cy: 3 points in 3 games (1-1-1), 223-222\n2. Di: 3 points in 3 games (1-1-1), 222-223;"
                        + " as many points as Cy; thrown less against -1, not 1\n");
        JsonNode list = json("league", "list").get("leagues").get(0);
        assertThat(list.get("toThrow").get(0).get("deadline").asText()).isEqualTo("2026-06-08T02:00:00Z");
    }

    @Test
    void theTextForTheChat() {
        assertThat(run("league", "chat", "Tuesday Post").out())
                .isEqualTo("Tuesday Post, week 1: Ash v Bea\nGame 1: ?-74\n");
    }

    @Test
    void whatIsWrongIsSaid() {
        assertThat(run("league", "table", "Nowhere").status()).isEqualTo(Cli.NO);
        assertThat(run("league", "table", "Nowhere").err()).contains("there are Tuesday Post");
        assertThat(run("league").status()).isEqualTo(Cli.WRONG);
        assertThat(run("league", "new", "X", "--zone", "Mars/Base").err()).contains("\"Mars/Base\" is no time zone");
        assertThat(with("Ash plays Bea", "league", "post", "Tuesday Post", "-").err())
                .startsWith("line 1: there are no two names");
        assertThat(run("league", "chance", "Tuesday Post", "--opponent", "Zed").err())
                .contains("there is no match of Ash against \"Zed\"");
        assertThat(run("league", "chance", "Tuesday Post", "--game", "4").err()).contains("games 1 to 3, not 4");
    }

    /** FIDE Handbook C.05, annex 1: the Berger table for 5 or 6. */
    @Test
    void theScheduleIsThatOfTheBergerTables() throws Exception {
        assertThat(json("league", "schedule", "--players", "5").get("weeks").toString())
                .isEqualTo("[[[2,5],[3,4]],[[5,3],[1,2]],[[3,1],[4,5]],[[1,4],[2,3]],[[4,2],[5,1]]]");
        assertThat(run("league", "schedule", "--players", "3", "--double").out())
                .isEqualTo("""
                        Week 1: 2 v 3; bye 1
                        Week 2: 1 v 2; bye 3
                        Week 3: 3 v 1; bye 2
                        Week 4: 3 v 2; bye 1
                        Week 5: 2 v 1; bye 3
                        Week 6: 1 v 3; bye 2
                        """);
        Ran one = run("league", "schedule", "--players", "1");
        assertThat(one.status()).isEqualTo(2);
        assertThat(one.err()).contains("--players: a league has 2 to 500 players, not 1");
    }

    /** Ash has one game posted by Bea and two open; everybody's places add up, and the page shows what the command says. */
    @Test
    void theForecastGivesEveryPlaceToSomebody() throws Exception {
        JsonNode forecast = json("league", "forecast", "Tuesday Post");
        assertThat(forecast.get("open").asInt()).isEqualTo(3);
        double[] places = new double[4];
        for (JsonNode player : forecast.get("players")) {
            double all = 0;
            for (int place = 0; place < 4; place++) {
                double chance = player.get("chances").get(place).asDouble();
                all += chance;
                places[place] += chance;
            }
            assertThat(all).isCloseTo(1, within(1e-9));
            assertThat(player.get("places").get(0).asInt())
                    .isLessThanOrEqualTo(player.get("places").get(1).asInt());
        }
        for (double place : places) {
            assertThat(place).isCloseTo(1, within(1e-9));
        }
        assertThat(run("league", "forecast", "Tuesday Post").out()).contains("With 3 games still to throw:");
    }
}
