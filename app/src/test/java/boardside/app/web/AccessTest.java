package boardside.app.web;

import static boardside.app.web.Wire.ELSEWHERE;
import static boardside.app.web.Wire.HERE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.account.Devices;
import boardside.app.json.Json;
import boardside.app.practice.Player;
import boardside.app.record.Records;
import io.javalin.http.HandlerType;
import java.awt.image.BufferedImage;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who gets what: every route of the access table, asked for from here, by a device let in, and by a stranger. */
class AccessTest {
    @TempDir
    private Path folder;

    private Records records;
    private Server server;
    private int port;

    /** Somebody's address and cookies, and the token that goes with them. */
    private record Asker(String name, String address, String cookies, String token) {}

    private Asker here;
    private Asker letIn;
    private Asker stranger;

    @BeforeEach
    void serve() {
        records = Records.open(folder.resolve("store.db").toString());
        server = Wire.serverOfAHouse(records, Clock.systemDefaultZone(), new ServerOptions(0, true, null, false));
        port = server.port();
        here = visitor("this machine", HERE);
        stranger = visitor("a stranger", ELSEWHERE);
        Asker phone = visitor("a device let in", ELSEWHERE);
        Wire paired = pair(phone, code());
        assertThat(paired.status()).isEqualTo(302);
        assertThat(paired.header("location")).endsWith("/?said=paired");
        letIn = new Asker(
                phone.name(), phone.address(), phone.cookies() + "; " + paired.cookie(Guard.DEVICE), phone.token());
    }

    @AfterEach
    void stop() {
        server.close();
        records.close();
    }

    private Asker visitor(String name, String address) {
        Wire page = Wire.get(address, port, "/pair");
        String cookie = page.cookie(Guard.VISIT);
        assertThat(cookie).isNotEmpty();
        // On this machine the page has no form, so the token comes from one that has.
        String token = address.equals(HERE)
                ? Wire.get(HERE, port, "/start/total", "Cookie: " + cookie).token()
                : page.token();
        return new Asker(name, address, cookie, token);
    }

    private String code() {
        return server.invite().orElseThrow().code();
    }

    private Wire pair(Asker asker, String code) {
        return ask(asker, HandlerType.POST, "/pair", "code=" + code + "&name=Test&token=" + asker.token());
    }

    private Wire ask(Asker asker, HandlerType method, String path, String form, String... headers) {
        List<String> all = new ArrayList<>(List.of(headers));
        all.add("Cookie: " + asker.cookies());
        return Wire.send(asker.address(), port, method.name(), path, form, all.toArray(String[]::new));
    }

    private static String path(Route route) {
        return route.path().replace("<file>", "boardside.css").replaceAll("\\{[^}]*}", "nothing");
    }

    @Test
    void onlyWhatIsNeededToGetInAndOpenSeasonsAreForEveryoneAndOnlyDevicesAreForThisMachineAlone() {
        assertThat(with(Access.EVERYONE))
                .containsExactlyInAnyOrder(
                        "GET /static/<file>",
                        // The program itself, and a page that names nobody.
                        "GET /worker.js",
                        // What the interface is; the same for everybody.
                        "GET /openapi.json",
                        "GET /offline",
                        "GET /pair",
                        "POST /pair",
                        // Of seasons that are open to everybody, and of no others: HostedSeasonTest.
                        "GET /seasons/{season}/table",
                        "GET /seasons/{season}/ending",
                        "GET /seasons/{season}/matches/{match}/live",
                        "GET /seasons/{season}/matches/{match}/live/events",
                        "GET /seasons/{season}/matches/{match}/live/overlay",
                        "GET /seasons/{season}/matches/{match}/live.json",
                        "GET /seasons/{season}/results.csv",
                        "GET /seasons/{season}/results.json",
                        "GET /seasons/{season}/calendar.ics",
                        "GET /seasons/{season}/players/{entrant}/calendar.ics");
        assertThat(with(Access.LOCAL)).containsExactlyInAnyOrder("GET /devices", "POST /devices/{id}/out");
        assertThat(with(Access.DEVICE)).contains("GET /", "POST /runs", "POST /api/outbox");
    }

    private Set<String> with(Access access) {
        return server.routes().stream()
                .filter(route -> route.access() == access)
                .map(route -> route.method() + " " + route.path())
                .collect(Collectors.toSet());
    }

    @Test
    void everyRouteKeepsItsRule() {
        for (Route route : server.routes()) {
            for (Asker asker : List.of(here, letIn, stranger)) {
                Wire answer = ask(asker, route.method(), path(route), "token=" + asker.token());
                boolean may = switch (route.access()) {
                    case EVERYONE, PROBE -> true;
                    case DEVICE, ORGANISER -> asker != stranger;
                    case HOST -> false;
                    case LOCAL, MONITOR -> asker == here;
                };
                String what = asker.name() + ", " + route.method() + " " + route.path();
                if (may) {
                    assertThat(answer.status()).as(what).isNotIn(401, 403, 421).isLessThan(500);
                    assertThat(answer.header("location")).as(what).doesNotEndWith("/pair");
                } else if (route.access() == Access.LOCAL || route.access() == Access.MONITOR) {
                    assertThat(answer.status()).as(what).isEqualTo(403);
                } else if (route.method() == HandlerType.GET && !route.path().startsWith("/api/")) {
                    assertThat(answer.status()).as(what).isEqualTo(302);
                    assertThat(answer.header("location")).as(what).endsWith("/pair");
                } else {
                    assertThat(answer.status()).as(what).isEqualTo(401);
                }
                assertGuarded(what, answer);
            }
        }
    }

    @Test
    void whatChangesSomethingNeedsTheTokenOfOurOwnPages() {
        for (Route route : server.routes()) {
            if (route.method() == HandlerType.GET) {
                continue;
            }
            String what = route.method() + " " + route.path();
            assertThat(ask(here, route.method(), path(route), "").status())
                    .as("no token: " + what)
                    .isEqualTo(403);
            assertThat(ask(here, route.method(), path(route), "token=" + stranger.token())
                            .status())
                    .as("somebody else's token: " + what)
                    .isEqualTo(403);
            for (String origin : List.of("http://evil.example", "null", "http://" + HERE + ":1")) {
                assertThat(ask(here, route.method(), path(route), "token=" + here.token(), "Origin: " + origin)
                                .status())
                        .as("from " + origin + ": " + what)
                        .isEqualTo(403);
            }
            assertThat(ask(
                                    here,
                                    route.method(),
                                    path(route),
                                    "token=" + here.token(),
                                    "Origin: http://" + HERE + ":" + port)
                            .status())
                    .as("from our own page: " + what)
                    .isNotEqualTo(403);
        }
    }

    @Test
    void onlyKnownNamesAreAnsweredTo() {
        for (Route route : server.routes()) {
            if (route.access() == Access.PROBE) {
                // Nothing to protect: WatchTest.
                continue;
            }
            for (String host : List.of("evil.example", "evil.example:" + port, "localhost.evil.example", "[", "")) {
                Wire answer = Wire.send(
                        HERE,
                        port,
                        route.method().name(),
                        path(route),
                        "token=" + here.token(),
                        "Host: " + host,
                        "Cookie: " + here.cookies());
                String what = "\"" + host + "\", " + route.method() + " " + route.path();
                assertThat(answer.status()).as(what).isIn(400, 421);
                assertGuarded(what, answer);
            }
        }
        for (String host : List.of("localhost", "LOCALHOST:" + port, "[::1]", "porch:1", "porch.local", ELSEWHERE)) {
            assertThat(Wire.get(HERE, port, "/", "Host: " + host).status())
                    .as(host)
                    .isEqualTo(200);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "X-Forwarded-For: 203.0.113.9",
                "X-Forwarded-For: 127.0.0.1",
                "Forwarded: for=127.0.0.1",
                "X-Forwarded-Host: localhost",
                "X-Real-IP: 127.0.0.1",
                "Via: 1.1 proxy"
            })
    void aProxyDoesNotMakeAStrangerLocal(String header) {
        assertThat(ask(here, HandlerType.GET, "/", "", header).header("location"))
                .endsWith("/pair");
        assertThat(ask(here, HandlerType.GET, "/devices", "", header).status()).isEqualTo(403);
        assertThat(ask(stranger, HandlerType.GET, "/", "", header).header("location"))
                .endsWith("/pair");
    }

    @Test
    void everyAnswerCarriesTheHeaders() {
        assertGuarded("no such page", Wire.get(HERE, port, "/nowhere"));
        assertGuarded("no such file", Wire.get(HERE, port, "/static/nothing.css"));
        assertGuarded("a file above", Wire.get(HERE, port, "/static/../texts/en.properties"));
        assertGuarded("no such method", Wire.send(HERE, port, "DELETE", "/", ""));
        assertGuarded("a path that is none", Wire.get(HERE, port, "/%zz"));
        assertGuarded("an unchanged file", unchanged());
        assertThat(Wire.get(HERE, port, "/nowhere").status()).isEqualTo(404);
        assertThat(Wire.get(HERE, port, "/static/../texts/en.properties").body())
                .doesNotContain("app.name");
        assertThat(Wire.get(HERE, port, "/").headers()).doesNotContainKeys("server", "x-powered-by");
        // A browser that has once seen that header would never again let anybody pass a certificate's warning.
        assertThat(Wire.get(HERE, port, "/").headers()).doesNotContainKey("strict-transport-security");
    }

    private Wire unchanged() {
        String tag = Wire.get(HERE, port, "/static/tokens.css").header("etag");
        Wire again = Wire.get(HERE, port, "/static/tokens.css", "If-None-Match: " + tag);
        assertThat(again.status()).isEqualTo(304);
        return again;
    }

    @Test
    void whatIsNoRequestAtAllIsToldSoInWordsWithoutWhatWasSent() {
        String wild = "w1ld".repeat(5000);
        assertUnread(414, "fault.too-long", Wire.get(HERE, port, "/form?ways=" + wild));
        assertUnread(431, "fault.too-long", Wire.get(HERE, port, "/", "Extra: " + wild));
        assertUnread(400, "fault.unreadable", Wire.get(HERE, port, "/%zzw1ld"));
        assertUnread(417, "fault.unreadable", Wire.get(HERE, port, "/", "Accept: text/html,*/*;q=0.8", "Expect: w1ld"));
        Wire script = Wire.get(HERE, port, "/", "Accept: */*", "Expect: w1ld");
        assertThat(script.status()).isEqualTo(417);
        assertGuarded("a script", script);
        assertThat(script.header("content-type")).startsWith("text/plain");
        assertThat(script.body()).isEqualTo(Texts.in("en").of("fault.unreadable") + "\n");
    }

    private static void assertUnread(int status, String words, Wire answer) {
        assertThat(answer.status()).isEqualTo(status);
        assertGuarded(words, answer);
        assertThat(answer.header("content-type")).startsWith("text/html");
        assertThat(answer.body())
                .contains("name=\"viewport\"", "<p>" + Texts.in("en").of(words) + "</p>", "href=\"/\"")
                .doesNotContain("w1ld");
    }

    private static void assertGuarded(String what, Wire answer) {
        assertThat(answer.header("content-security-policy"))
                .as(what)
                .startsWith("default-src 'none'; script-src 'self'; style-src 'self';")
                .contains("frame-ancestors 'none'")
                .doesNotContain("unsafe", "http:", "https:", "*");
        assertThat(answer.header("x-content-type-options")).as(what).isEqualTo("nosniff");
        assertThat(answer.header("referrer-policy")).as(what).isEqualTo("same-origin");
        assertThat(answer.header("cache-control")).as(what).containsAnyOf("no-store", "no-cache");
        for (String cookie : answer.header("set-cookie").lines().toList()) {
            assertThat(cookie).as(what).contains("; HttpOnly").contains("; SameSite=Lax");
        }
    }

    @Test
    void whatAPhoneNeedsToInstallItIsThere() throws Exception {
        assertThat(Wire.get(HERE, port, "/").body())
                .contains("<link rel=\"manifest\" href=\"/static/boardside.webmanifest\">");
        Wire manifest = Wire.get(HERE, port, "/static/boardside.webmanifest");
        assertThat(manifest.header("content-type")).isEqualTo("application/manifest+json");
        assertThat(Json.read(manifest.body(), Map.class))
                .containsEntry("name", "Boardside")
                .containsEntry("start_url", "/")
                .containsEntry("display", "standalone")
                .containsEntry("scope", "/");
        for (Object icon : (List<?>)
                Objects.requireNonNull(Json.read(manifest.body(), Map.class).get("icons"))) {
            Map<?, ?> told = (Map<?, ?>) icon;
            try (InputStream in = AccessTest.class.getResourceAsStream("/boardside/static/" + told.get("src"))) {
                assertThat(in).as(told.toString()).isNotNull();
                if ("image/png".equals(told.get("type"))) {
                    BufferedImage image = ImageIO.read(in);
                    assertThat(image.getWidth() + "x" + image.getHeight()).isEqualTo(told.get("sizes"));
                }
            }
        }
        assertThat(Wire.get(HERE, port, "/static/icon.svg").status()).isEqualTo(200);
    }

    @Test
    void aStrangerSeesNobodysName() {
        Player me = records.firstPlayer();
        records.editPlayer(new Player(me.id(), "Rosalind", me.hand(), me.throwsFrom(), me.version()));
        for (String path : List.of("/pair", "/nowhere", "/static/nothing.css")) {
            assertThat(ask(stranger, HandlerType.GET, path, "").body()).as(path).doesNotContain("Rosalind");
        }
        assertThat(ask(letIn, HandlerType.GET, "/", "").body()).contains("Rosalind");
    }

    @Test
    void aScriptThatIsNotLetInHearsSoInJson() {
        Wire answer = ask(stranger, HandlerType.GET, "/", "", "Accept: application/json");
        assertThat(answer.status()).isEqualTo(401);
        assertThat(answer.header("content-type")).startsWith("application/json");
        assertThat(answer.body()).contains("has not been let in");
    }

    @Test
    void aCodeWorksOnce() {
        String code = code();
        Asker one = visitor("one", ELSEWHERE);
        assertThat(pair(one, code).status()).isEqualTo(302);
        Wire again = pair(stranger, code);
        assertThat(again.status()).isEqualTo(422);
        assertThat(again.body()).contains("This code does not work");
        assertThat(again.cookie(Guard.DEVICE)).isEmpty();
    }

    @Test
    void tooManyGuessesKillTheCode() {
        String code = code();
        for (int guess = 0; guess < Devices.MOST_GUESSES; guess++) {
            assertThat(pair(stranger, "WRONG" + guess).status()).isEqualTo(422);
        }
        assertThat(pair(stranger, code).status()).isEqualTo(422);
        assertThat(code()).isNotEqualTo(code);
    }

    @Test
    void aDeviceShutOutIsOutAtOnce() {
        assertThat(ask(letIn, HandlerType.GET, "/", "").status()).isEqualTo(200);
        String device = records.devices().all().get(0).id();
        Wire out = ask(here, HandlerType.POST, "/devices/" + device + "/out", "token=" + here.token());
        assertThat(out.header("location")).endsWith("/devices?said=device.out");
        assertThat(ask(letIn, HandlerType.GET, "/", "").header("location")).endsWith("/pair");
        assertThat(ask(letIn, HandlerType.POST, "/api/outbox", "{}", "X-Boardside-Token: " + letIn.token())
                        .status())
                .isEqualTo(401);
    }

    @Test
    void onLoopbackAloneNobodyElseCanConnectAndNoCodeIsMade() {
        try (Server alone = Server.start(records, ServerOptions.local(0), Clock.systemDefaultZone())) {
            assertThat(alone.invite()).isEmpty();
            assertThat(alone.houseAddresses()).isEmpty();
            assertThat(Wire.get(HERE, alone.port(), "/devices").body()).contains("serve --lan");
            assertThatThrownBy(() -> Wire.get(ELSEWHERE, alone.port(), "/")).hasMessageContaining("refused");
        }
    }
}
