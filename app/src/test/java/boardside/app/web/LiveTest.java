package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.Account;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.record.NewSeason;
import boardside.app.record.Records;
import boardside.app.record.Stores;
import boardside.app.season.MatchSide;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import boardside.engine.rules.Finish;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Spectators on the wire: who is let in, what they are sent, and what becomes of their connections. */
@Timeout(120)
class LiveTest {
    @TempDir
    private Path folder;

    private Records records;
    private Server server;
    private Season season;
    private SeasonMatch match;

    @BeforeEach
    void serve() {
        records = Club.open(folder.resolve("store.db").toString());
        server = Club.serve(records);
        season = season(records, true);
        match = season.matches().get(0);
    }

    @AfterEach
    void stop() {
        server.close();
        records.close();
    }

    private static Season season(Records records, boolean open) {
        return records.seasons()
                .add(new NewSeason(
                        "<script>alert(1)</script>".replace("<", "A<") + (open ? " open" : " closed"),
                        SeasonRules.USUAL,
                        new Weeks(LocalDate.now().atStartOfDay(), ZoneId.systemDefault()),
                        List.of(new NewSeason.Division(
                                "All", List.of("Ash \"<img src=x onerror=alert(1)>", "Bea'</script><b>"))),
                        open,
                        ""));
    }

    private static String live(Season season) {
        return "/seasons/" + season.id() + "/matches/" + season.matches().get(0).id() + "/live";
    }

    private void round(int number, Finish finish) {
        records.matchNights().correct(season.id(), match.id(), 1, MatchSide.FIRST, number, finish);
    }

    /** A spectator's connection. */
    private static final class Spectator implements AutoCloseable {
        private final Socket socket;
        private final BufferedReader in;
        private final List<String> head = new ArrayList<>();

        Spectator(int port, String path, String... headers) {
            try {
                socket = new Socket(InetAddress.getByName(Wire.HERE), port);
                socket.setSoTimeout(30_000);
                List<String> lines =
                        new ArrayList<>(List.of("GET " + path + "/events HTTP/1.1", "Host: localhost:" + port));
                lines.addAll(List.of(headers));
                socket.getOutputStream()
                        .write((String.join("\r\n", lines) + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
                in = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
                for (String line = in.readLine(); line != null && !line.isEmpty(); line = in.readLine()) {
                    head.add(line);
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /** The next event's data; missing where the answer ended. */
        JsonNode next() {
            try {
                // The last chunk is an empty one (RFC 9112, section 7.1).
                for (String line = in.readLine(); line != null && !line.equals("0"); line = in.readLine()) {
                    if (line.startsWith("data: ")) {
                        return Json.read(line.substring(6), JsonNode.class);
                    }
                }
                return MissingNode.getInstance();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        @Override
        public void close() throws IOException {
            socket.close();
        }
    }

    private static JsonNode rounds(JsonNode state, String side) {
        return state.path("games").path(0).path(side);
    }

    @Test
    void aStrangerIsSentTheWholeMatchAndEachChangeOfIt() throws Exception {
        try (Spectator one = new Spectator(server.port(), live(season));
                Spectator other = new Spectator(server.port(), live(season))) {
            assertThat(one.head.get(0)).contains(" 200 ");
            assertThat(one.head)
                    .anyMatch(line -> line.equalsIgnoreCase("content-type: text/event-stream;charset=utf-8")
                            || line.equalsIgnoreCase("content-type: text/event-stream; charset=utf-8"));
            assertThat(one.head).anyMatch(line -> line.startsWith("Content-Security-Policy: default-src 'none'"));
            assertThat(one.next().path("state").asText()).isEqualTo("open");
            other.next();
            round(1, new Finish(3, 1, 0));
            for (Spectator spectator : List.of(one, other)) {
                assertThat(rounds(spectator.next(), "first")).hasSize(1);
            }
            round(2, new Finish(4, 0, 0));
            assertThat(rounds(one.next(), "first")).hasSize(2);
            // Whoever comes back has all of it again, whatever they had before.
            try (Spectator again = new Spectator(server.port(), live(season), "Last-Event-ID: 1")) {
                assertThat(rounds(again.next(), "first")).hasSize(2);
            }
        }
    }

    @Test
    void whoMayNotSeeTheSeasonIsToldThatThereIsNone() throws Exception {
        Season closed = season(records, false);
        Account olga = Club.account(records, "olga", Role.ORGANISER);
        Account ash = Club.account(records, "ash", Role.PLAYER);
        records.seasons().letRun(closed.id(), "olga", true);
        for (String path : List.of("", "/events", "/overlay", ".json")) {
            String address = live(closed) + path;
            assertThat(Club.asker(records, server.port(), null).get(address).status())
                    .as(path)
                    .isEqualTo(404);
            assertThat(Club.asker(records, server.port(), ash).get(address).status())
                    .as(path)
                    .isEqualTo(404);
            assertThat(Club.asker(records, server.port(), null)
                            .get("/seasons/" + season.id() + "/matches/"
                                    + closed.matches().get(0).id() + "/live" + path)
                            .status())
                    .as("another season's match: " + path)
                    .isEqualTo(404);
            if (!path.equals("/events")) {
                assertThat(Club.asker(records, server.port(), olga).get(address).status())
                        .as(path)
                        .isEqualTo(200);
            }
        }
        String cookie = Club.asker(records, server.port(), olga).cookies();
        try (Spectator member = new Spectator(server.port(), live(closed), "Cookie: " + cookie)) {
            assertThat(member.next().path("state").asText()).isEqualTo("open");
        }
    }

    @Test
    void aSeasonThatIsClosedLetsStrangersGo() throws Exception {
        try (Spectator stranger = new Spectator(server.port(), live(season))) {
            assertThat(stranger.next().isMissingNode()).isFalse();
            records.seasons().settings(season.id(), "Closed now", season.rules(), season.weeks(), false, "");
            boolean ended = false;
            while (!ended) {
                ended = stranger.next().isMissingNode();
            }
            assertThat(ended).isTrue();
        }
    }

    @Test
    void connectionsFromOneAddressAreBoundedAndGivenBack() throws Exception {
        List<Spectator> many = new ArrayList<>();
        try {
            for (int i = 0; i < Live.MOST_OF_ONE; i++) {
                many.add(new Spectator(server.port(), live(season)));
                assertThat(many.get(i).head.get(0)).contains(" 200 ");
            }
            try (Spectator refused = new Spectator(server.port(), live(season))) {
                assertThat(refused.head.get(0)).contains(" 503 ");
                assertThat(refused.head).contains("Retry-After: 10");
            }
            // Other pages are served as ever.
            assertThat(Wire.get(Wire.HERE, server.port(), live(season) + ".json")
                            .status())
                    .isEqualTo(200);
        } finally {
            for (Spectator spectator : many) {
                spectator.close();
            }
        }
    }

    @Test
    void namesAreTextOnEveryPageOfAMatch() {
        for (String path : List.of("", "/overlay")) {
            assertThat(Wire.get(Wire.HERE, server.port(), live(season) + path).body())
                    .as(path)
                    .doesNotContain("<img src=x", "</script><b>", "<script>alert");
        }
        assertThat(Wire.get(Wire.HERE, server.port(), live(season) + ".json").body())
                .contains("Bea'");
    }

    /** One instance takes the round, the spectator hangs on the other; they share nothing but the database. */
    @Test
    void aRoundCrossesFromOneInstanceToAnother() throws Exception {
        String location = Stores.POSTGRES.location(folder);
        try (Records here = Club.open(location);
                Records there = Club.open(location);
                Server other = Club.serve(there)) {
            Season shared = season(here, true);
            String of = shared.matches().get(0).id();
            try (Spectator spectator = new Spectator(other.port(), live(shared))) {
                assertThat(spectator.next().isMissingNode()).isFalse();
                here.matchNights().correct(shared.id(), of, 1, MatchSide.SECOND, 1, new Finish(2, 2, 0));
                long sent = System.nanoTime();
                JsonNode state = spectator.next();
                while (!state.isMissingNode() && rounds(state, "second").isEmpty()) {
                    state = spectator.next();
                }
                assertThat(rounds(state, "second")).hasSize(1);
                // Without the database's notification it would be found at the next beat, up to 15 seconds later.
                assertThat(System.nanoTime() - sent).isLessThan(10_000_000_000L);
            }
        }
    }

    /** A season has the rounds of its matches and nothing else of what a player records. */
    @Test
    void practiceStaysWithThePlayer() {
        Player player = records.firstPlayer();
        assertThat(Wire.get(Wire.HERE, server.port(), live(season) + ".json").body())
                .doesNotContain("bag\"", "approach", "conditions", "player", player.name() + "\"");
    }
}
