package boardside.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import boardside.app.record.HostedSeasons;
import boardside.app.record.NewSeason;
import boardside.app.record.Records;
import boardside.app.record.Stores;
import boardside.app.season.Arrangement;
import boardside.app.web.SeasonWords;
import boardside.app.web.Texts;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Weeks;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season's files as other programs read them: calendars by an independent reader of iCalendar, CSV by our own strict one. */
class SeasonFilesTest {
    private static final String NAME = "Porch, \"long\"; and \\ slashes " + "\u00e4\u65e5\u672c\ud83c\udfaf".repeat(5);

    @TempDir
    Path folder;

    private Records records;
    private HostedSeasons seasons;
    private String id;

    @BeforeEach
    void season() {
        records = Stores.open(folder.resolve("s.db").toString(), 1);
        seasons = records.seasons();
        // The weeks go over the end of daylight saving in Berlin, 25 October 2026.
        id = seasons.add(new NewSeason(
                        NAME,
                        SeasonRules.USUAL,
                        new Weeks(LocalDateTime.parse("2026-10-12T18:30"), ZoneId.of("Europe/Berlin")),
                        List.of(new NewSeason.Division(
                                "All",
                                List.of("Ash, \"A\"", "Bea; Lind", "Cy\\Holt", "D\u00e4\u65e5\ud83c\udfaf".repeat(9)))),
                        true,
                        ""))
                .id();
    }

    @AfterEach
    void close() {
        records.close();
    }

    private Season now() {
        return seasons.find(id).orElseThrow();
    }

    private String calendar(Optional<Entrant> of) {
        SeasonWords words = new SeasonWords(Texts.in("en"));
        HostedSeasons.Version version = seasons.version(id);
        return ICalendar.of(words.calendar(now(), of), words.events(now(), of, version.count(), version.last()));
    }

    private static Map<String, VEvent> read(String text) {
        List<List<biweekly.io.ParseWarning>> warnings = new ArrayList<>();
        biweekly.ICalendar calendar = Biweekly.parse(text).warnings(warnings).first();
        assertThat(warnings).allMatch(List::isEmpty);
        assertThat(calendar.validate(biweekly.ICalVersion.V2_0).getWarnings()).isEmpty();
        return calendar.getEvents().stream()
                .collect(Collectors.toMap(event -> event.getUid().getValue(), Function.identity()));
    }

    private static VEvent event(Map<String, VEvent> events, String uid) {
        return Objects.requireNonNull(events.get(uid));
    }

    @Test
    void aCalendarReadsBackAsTheMatches() {
        SeasonMatch later = now().matches(Stage.LEAGUE).get(2);
        seasons.arrange(id, later.id(), Arrangement.of(later).until(LocalDateTime.parse("2026-11-05T21:00")));
        Map<String, VEvent> events = read(calendar(Optional.empty()));
        assertThat(events).hasSize(6);
        Season season = now();
        for (SeasonMatch match : season.matches(Stage.LEAGUE)) {
            VEvent event = event(events, match.id() + "@boardside");
            assertThat(event.getSummary().getValue())
                    .isEqualTo(season.name(match.first()) + " v " + season.name(match.second()));
            assertThat(event.getDescription().getValue()).contains(NAME);
            assertThat(event.getDateStart().getValue().toInstant())
                    .isEqualTo(season.window(match).opens());
            assertThat(event.getDateEnd().getValue().toInstant())
                    .isEqualTo(season.window(match).closes());
        }
        // The week over which the clocks go back ends an hour later in UTC.
        VEvent second = event(events, season.matches(Stage.LEAGUE).get(3).id() + "@boardside");
        assertThat(second.getDateStart().getValue().toInstant()).isEqualTo(Instant.parse("2026-10-19T16:30:00Z"));
        assertThat(second.getDateEnd().getValue().toInstant()).isEqualTo(Instant.parse("2026-10-26T17:30:00Z"));
    }

    @Test
    void uidsStayAndWhatChangesIsNewer() {
        Entrant ash = now().entrants().get(0);
        Map<String, VEvent> before = read(calendar(Optional.of(ash)));
        assertThat(before).hasSize(3);
        SeasonMatch match = now().matches().stream()
                .filter(one -> one.has(ash.id()))
                .findFirst()
                .orElseThrow();
        seasons.tell(id, match.id(), List.of(new GameScore(80, 70)), Voice.ORGANISER);
        seasons.rename(id, ash.id(), "Ash Moor");
        Map<String, VEvent> after = read(calendar(Optional.of(ash)));
        assertThat(after.keySet()).isEqualTo(before.keySet());
        VEvent event = event(after, match.id() + "@boardside");
        assertThat(event.getSequence().getValue())
                .isGreaterThan(
                        event(before, match.id() + "@boardside").getSequence().getValue());
        assertThat(event.getSummary().getValue()).contains("Ash Moor");
        assertThat(event.getDescription().getValue()).contains("80\u201370");
        // Who is struck plays no more.
        seasons.leave(id, ash.id());
        assertThat(read(calendar(Optional.of(ash))).values())
                .allMatch(one -> one.getStatus().isCancelled());
    }

    /** RFC 5545, section 3.1: lines end in CRLF and have at most 75 octets, none broken within a character. */
    @Test
    void linesAreFoldedWithinOctetsNotCharacters() {
        String text = calendar(Optional.empty());
        assertThat(text).endsWith("END:VCALENDAR\r\n");
        assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n");
        for (String line : text.split("\r\n")) {
            byte[] octets = line.getBytes(StandardCharsets.UTF_8);
            assertThat(octets.length).as(line).isLessThanOrEqualTo(75);
            assertThat(new String(octets, StandardCharsets.UTF_8)).isEqualTo(line);
            assertThat(Character.isLowSurrogate(line.charAt(0))).isFalse();
        }
    }

    /** Any text comes back as it was, line ends told alike. */
    @Test
    void anyTextComesBack() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(9_600);
        String alphabet = "ab,;\\\":\n \u00e4\u65e5\ud83c\udfaf\u200d\ud83d\udc69";
        int[] characters = alphabet.codePoints().toArray();
        for (int time = 0; time < 200; time++) {
            StringBuilder text = new StringBuilder("x");
            for (int i = random.nextInt(200); i > 0; i--) {
                text.appendCodePoint(characters[random.nextInt(characters.length)]);
            }
            text.append("x");
            ICalendar.Event event = new ICalendar.Event(
                    "u" + time + "@boardside",
                    1,
                    Instant.EPOCH,
                    Instant.EPOCH,
                    Instant.EPOCH.plusSeconds(60),
                    text.toString(),
                    text.toString(),
                    false);
            VEvent read = event(read(ICalendar.of("n", List.of(event))), "u" + time + "@boardside");
            assertThat(read.getSummary().getValue()).isEqualTo(text.toString());
            assertThat(read.getDescription().getValue().replace("\r\n", "\n")).isEqualTo(text.toString());
        }
    }

    @Test
    void resultsAsCsvHaveARowForEachGame() throws Exception {
        Season season = now();
        SeasonMatch first = season.matches(Stage.LEAGUE).get(0);
        seasons.tell(id, first.id(), List.of(new GameScore(80, 70), new GameScore(null, 61)), Voice.ORGANISER);
        SeasonMatch second = season.matches(Stage.LEAGUE).get(1);
        seasons.forfeit(id, second.id(), Award.NEITHER);
        Csv csv = new Csv(SeasonResults.csv(now()));
        List<List<String>> rows = new ArrayList<>();
        for (Csv.Row row = csv.next(); row != null; row = csv.next()) {
            rows.add(row.fields());
        }
        assertThat(rows).hasSize(1 + 6 * 3);
        assertThat(rows.get(0)).startsWith("stage", "division", "week", "first", "second", "state", "game");
        assertThat(rows.get(1))
                .isEqualTo(Arrays.asList(
                        "league",
                        "All",
                        "1",
                        season.name(first.first()),
                        season.name(first.second()),
                        "open",
                        "1",
                        "80",
                        "70",
                        "0",
                        "",
                        "",
                        "",
                        "2026-10-19T16:30:00Z"));
        assertThat(rows.get(2).subList(6, 9)).containsExactly("2", "", "61");
        assertThat(rows.get(4)).contains("forfeited", "neither");
    }
}
