package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season from its first day to its champion, from the terminal. */
class SeasonCommandTest {
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
    void season() {
        Ran made = with(
                "1. Ash\n2. Bea\n\n- Cy\n* Di\n",
                "season",
                "new",
                "Porch",
                "-",
                "--starts",
                "2026-05-04",
                "--zone",
                "Europe/Berlin",
                "--qualifiers",
                "2",
                "--handicap");
        assertThat(made.err()).isEmpty();
        assertThat(made.out()).isEqualTo("New season: Porch, 4 players, 3 weeks, 6 matches\n");
    }

    @Test
    void fromTheFirstResultToTheChampion() throws Exception {
        JsonNode whole = json("season", "show", "Porch");
        assertThat(whole.get("matches")).hasSize(6);
        assertThat(whole.get("matches").get(0).get("first").asText()).isEqualTo("Ash");
        assertThat(whole.get("matches").get(0).get("second").asText()).isEqualTo("Di");
        assertThat(whole.get("matches").get(0).get("closes").asText()).isEqualTo("2026-05-10T22:00:00Z");

        // Whoever is named first, the totals are theirs first.
        Ran told = run("season", "result", "Porch", "Di", "Ash", "70-80", "71-?");
        assertThat(told.out()).isEqualTo("Ash v Di: 80\u201370, ?\u201371; open\n");
        assertThat(run("season", "result", "Porch", "Ash", "Di", "80-70", "72-71", "66-66")
                        .out())
                .isEqualTo("Ash v Di: 80\u201370, 72\u201371, 66\u201366\n");
        JsonNode table =
                json("season", "table", "Porch").get("divisions").get(0).get("table");
        assertThat(table.get(0).get("player").asText()).isEqualTo("Ash");
        assertThat(table.get(0).get("points").asInt()).isEqualTo(5);
        assertThat(table.get(1).get("reason").asText()).isEqualTo("League points 1, games 3; 4 behind Ash.");

        // A player tells, the other agrees.
        assertThat(run("season", "result", "Porch", "Bea", "Cy", "60-61", "70-61", "80-61", "--by", "second")
                        .out())
                .endsWith("told, not yet agreed\n");
        assertThat(run("season", "result", "Porch", "Bea", "Cy", "--dispute", "it was 62")
                        .out())
                .endsWith("disputed\n");
        assertThat(run("season", "result", "Porch", "Bea", "Cy", "--confirm").out())
                .isEqualTo("Bea v Cy: 60\u201361, 70\u201361, 80\u201361\n");
        assertThat(run("season", "play-off", "Porch", "--start").err()).contains("4 matches are not settled yet");
        run("season", "result", "Porch", "Ash", "Cy", "--forfeit-to", "Ash");
        run("season", "result", "Porch", "Ash", "Bea", "80-60", "80-60", "80-60");
        run("season", "result", "Porch", "Di", "Cy", "80-60", "80-60", "80-60");
        run("season", "result", "Porch", "Di", "Bea", "--forfeit-to", "neither");
        JsonNode playOff = json("season", "play-off", "Porch", "--start", "--from", "2026-06-01");
        assertThat(playOff.get("seeds").get(0).asText()).isEqualTo("Ash");
        assertThat(playOff.get("seeds").get(1).asText()).isEqualTo("Di");
        run("season", "result", "Porch", "Ash", "Di", "60-61", "60-61", "60-61");
        assertThat(json("season", "play-off", "Porch").get("champion").asText()).isEqualTo("Di");
        assertThat(run("season", "show", "Porch").out()).contains("Final:\n  Ash v Di: 60\u201361");

        JsonNode changes = json("season", "changes", "Porch");
        assertThat(changes.get(0).get("says").asText()).startsWith("Result: Ash v Di: Totals before");
        assertThat(run(
                                "season",
                                "changes",
                                "Porch",
                                "--undo",
                                changes.get(0).get("id").asText())
                        .status())
                .isEqualTo(0);
        assertThat(json("season", "play-off", "Porch").has("champion")).isFalse();
    }

    @Test
    void whoHasStillToThrowIsToldAsATextForTheChat() throws Exception {
        run("season", "result", "Porch", "Ash", "Di", "80-?", "72-?", "66-?");
        run("season", "result", "Porch", "Bea", "Cy", "60-61", "70-61", "80-61");
        Ran waiting = run("season", "waiting", "Porch");
        assertThat(waiting.out())
                .startsWith("Porch (times of Europe/Berlin)\nWeek 1, was due Sun 10 May 2026, 23:59:\n"
                        + "- Di v Ash: games to throw 3\nWeek 2,");
        assertThat(json("season", "waiting", "Porch").get(0).get("over").asBoolean())
                .isTrue();
    }

    @Test
    void arrangementsHeadStartsAndPlayers() throws Exception {
        run("season", "result", "Porch", "Ash", "Di", "100-60", "98-62", "103-58");
        JsonNode match = json(
                "season",
                "match",
                "Porch",
                "Bea",
                "Cy",
                "--until",
                "2026-05-20T21:00",
                "--substitute",
                "Guest",
                "--head-start",
                "5",
                "--note",
                "on holiday");
        assertThat(match.get("closes").asText()).isEqualTo("2026-05-20T19:00:00Z");
        boolean straight = match.get("first").asText().equals("Bea");
        assertThat(match.get("headStart").asInt()).isEqualTo(straight ? 5 : -5);
        assertThat(match.get(straight ? "firstSubstitute" : "secondSubstitute").asText())
                .isEqualTo("Guest");
        assertThat(run("season", "match", "Porch", "Bea", "Cy", "--until", "2026-05-05")
                        .err())
                .contains("an extension ends after the match's week");
        JsonNode fair = json("season", "head-starts", "Porch", "--week", "2");
        for (JsonNode one : fair) {
            assertThat(one.get("headStart").asInt()).isNotZero();
        }
        assertThat(run("season", "players", "Porch", "--rename", "Cy", "Cy Holt")
                        .out())
                .contains("Cy Holt");
        assertThat(run("season", "players", "Porch", "--leave", "Cy Holt").out())
                .contains("Cy Holt (struck)");
        assertThat(run("season", "players", "Porch", "--join", "Ed").err()).contains("even number of players");
        assertThat(run("season", "settings", "Porch", "--public", "--no-handicap", "--tie-breaks", "forfeits,thrown")
                        .out())
                .contains("told apart by fewest forfeits, points thrown, then by lot")
                .contains("Open to everybody");
        assertThat(run("season", "settings", "Porch", "--rounds", "8").err()).contains("games and rounds stay");
    }

    @Test
    void theForecastNamesChancesOfEveryPlaceAndOfThePlayOff() throws Exception {
        run("season", "result", "Porch", "Ash", "Di", "100-60", "98-62", "103-58");
        JsonNode division = json("season", "forecast", "Porch").get("divisions").get(0);
        assertThat(division.get("open").asInt()).isEqualTo(15);
        JsonNode first = division.get("players").get(0);
        assertThat(first.get("player").asText()).isEqualTo("Ash");
        double sum = 0;
        for (JsonNode chance : first.get("chances")) {
            sum += chance.asDouble();
        }
        assertThat(sum).isBetween(1 - 1e-9, 1 + 1e-9);
        assertThat(first.get("playOff").asDouble())
                .isEqualTo(first.get("chances").get(0).asDouble()
                        + first.get("chances").get(1).asDouble());
    }

    @Test
    void filesForOtherPrograms() throws Exception {
        assertThat(run("season", "results", "Porch").out().lines()).hasSize(1 + 6 * 3);
        assertThat(run("season", "calendar", "Porch", "--of", "Bea").out())
                .startsWith("BEGIN:VCALENDAR\r\n")
                .contains("X-WR-CALNAME:Porch: Bea\r\n");
        assertThat(json("season", "calendar", "Porch")).hasSize(6);
        assertThat(run("export", "--all").out()).contains("\"kind\":\"season\"");
    }

    @Test
    void whatCannotBeIsToldWithAStatus() {
        assertThat(run("season", "table", "Nothing").status()).isEqualTo(1);
        assertThat(run("season", "table", "Nothing").err()).contains("there are Porch");
        assertThat(run("season", "result", "Porch", "Ash", "Eve", "1-2").status())
                .isEqualTo(1);
        assertThat(run("season", "result", "Porch", "Ash", "Di", "119-2").err())
                .contains("10 rounds give 0 to 120 points (all but 119), not 119");
        assertThat(with("Ash\nash\n", "season", "new", "Twice", "-", "--starts", "2026-05-04")
                        .err())
                .isEqualTo("line 2: \"ash\" is there already; give one of them another name\n");
        assertThat(with("Ash\nBea\n", "season", "new", "When", "-", "--starts", "soon")
                        .err())
                .contains("write it like 2026-12-08");
        Ran deleted = run("season", "delete", "Porch");
        assertThat(run("season", "list").status()).isEqualTo(1);
        String id = deleted.out().replaceAll("(?s).*--restore ", "").strip();
        assertThat(run("season", "delete", "--restore", id).status()).isEqualTo(0);
        assertThat(run("season", "list").out()).startsWith("Porch: 4 players, week ");
    }
}
