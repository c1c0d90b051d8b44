package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Account;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.record.Records;
import boardside.app.web.Club.Asker;
import io.javalin.http.HandlerType;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Who gets what in hosted mode: every route of the access table, asked for by each role and by a stranger. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class HostedAccessTest {
    private Records records;
    private Server server;
    private int port;

    /** Accounts by role; a stranger has none. */
    private final Map<Role, Account> accounts = new HashMap<>();

    @BeforeAll
    void serve(@TempDir Path folder) {
        records = Club.open(folder.resolve("store.db").toString());
        server = Club.serve(records);
        port = server.port();
        for (Role role : Role.values()) {
            accounts.put(role, Club.account(records, role.word(), role));
        }
    }

    @AfterAll
    void stop() {
        server.close();
        records.close();
    }

    private Asker asker(@Nullable Role role) {
        return Club.asker(records, port, role == null ? null : accounts.get(role));
    }

    /** What is worked out for a while, in the same turn as other answers; here strangers alone ask for it. */
    private static final Set<String> SLOW = Set.of("/playbook");

    private static String path(Route route) {
        return route.path().replace("<file>", "boardside.css").replaceAll("\\{[^}]*}", "nothing");
    }

    private Set<String> with(Access access) {
        return server.routes().stream()
                .filter(route -> route.access() == access)
                .map(route -> route.method() + " " + route.path())
                .collect(Collectors.toSet());
    }

    @Test
    void strangersGetWhatIsNeededToGetInAndPairingIsGone() {
        assertThat(with(Access.EVERYONE))
                .contains(
                        "GET /static/<file>",
                        // The program itself, and a page that names nobody.
                        "GET /worker.js",
                        "GET /offline",
                        "GET /sign-in",
                        "POST /sign-in",
                        "GET /invitation/{ticket}",
                        "POST /invitation/{ticket}",
                        "GET /reset/{ticket}",
                        "POST /reset/{ticket}");
        assertThat(with(Access.LOCAL)).isEmpty();
        assertThat(with(Access.HOST)).allMatch(route -> route.contains(" /accounts"));
        for (String path : List.of("/pair", "/devices")) {
            assertThat(asker(Role.HOST).get(path).status()).as(path).isEqualTo(404);
        }
    }

    @Test
    void everyRouteKeepsItsRule() {
        for (Route route : server.routes()) {
            for (Role role : Arrays.asList(null, Role.PLAYER, Role.ORGANISER, Role.HOST)) {
                if (role != null && SLOW.contains(route.path())) {
                    continue;
                }
                Asker asker = asker(role);
                Wire answer = asker.ask(route.method(), path(route), "token=" + asker.token());
                String what = role + ", " + route.method() + " " + route.path();
                boolean may = switch (route.access()) {
                    // Over loopback; as hosts elsewhere: WatchTest.
                    case EVERYONE, PROBE, MONITOR -> true;
                    case DEVICE -> role != null;
                    case ORGANISER -> role == Role.ORGANISER || role == Role.HOST;
                    case HOST -> role == Role.HOST;
                    case LOCAL -> false;
                };
                if (may) {
                    assertThat(answer.status()).as(what).isNotIn(401, 403, 421).isLessThan(500);
                } else if (role != null) {
                    assertThat(answer.status()).as(what).isEqualTo(403);
                } else if (route.method() == HandlerType.GET && !route.path().startsWith("/api/")) {
                    assertThat(answer.status()).as(what).isEqualTo(302);
                    assertThat(answer.header("location")).as(what).contains("/sign-in");
                } else {
                    assertThat(answer.status()).as(what).isEqualTo(401);
                }
                assertThat(answer.header("content-security-policy")).as(what).startsWith("default-src 'none'");
                for (String cookie : answer.header("set-cookie").lines().toList()) {
                    assertThat(cookie).as(what).contains("; HttpOnly").contains("; SameSite=Lax");
                }
            }
        }
    }

    @Test
    void whatChangesSomethingNeedsTheTokenOfThisVeryLogin() {
        Asker other = asker(Role.HOST);
        Asker earlier = asker(Role.HOST);
        for (Route route : server.routes()) {
            if (route.method() == HandlerType.GET) {
                continue;
            }
            Asker asker = asker(Role.HOST);
            String what = route.method() + " " + route.path();
            for (String token : List.of("", "token=", "token=" + other.token(), "token=" + earlier.token())) {
                assertThat(asker.ask(route.method(), path(route), token).status())
                        .as(token + ": " + what)
                        .isEqualTo(403);
            }
            for (String origin : List.of("http://evil.example", "null", "https://" + Wire.HERE)) {
                assertThat(asker.ask(route.method(), path(route), "token=" + asker.token(), "Origin: " + origin)
                                .status())
                        .as("from " + origin + ": " + what)
                        .isEqualTo(403);
            }
        }
        // A stranger's forms have a token of their own, so that nobody is signed in to somebody else's account
        // unawares.
        Wire forged = Wire.post(Wire.HERE, port, "/sign-in", "name=host&password=x", "Host: " + Wire.HERE);
        assertThat(forged.status()).isEqualTo(403);
    }

    @Test
    void signingInMakesANewTokenWhateverTheBrowserHad() {
        Asker stranger = asker(null);
        String planted = "f".repeat(64);
        Wire in = stranger.ask(
                HandlerType.POST,
                "/sign-in",
                "name=player&password=" + Club.PASSWORD.replace(' ', '+') + "&token=" + stranger.token(),
                "Cookie: " + Guard.LOGIN + "=" + planted);
        assertThat(in.status()).isEqualTo(302);
        String cookie = in.cookie(Guard.LOGIN);
        assertThat(cookie).matches(Guard.LOGIN + "=[0-9a-f]{64}").doesNotContain(planted);
        assertThat(records.signIns().find(planted)).isEmpty();

        // Signing in again in the same browser ends the login it had.
        String first = cookie.substring(cookie.indexOf('=') + 1);
        Wire page = Wire.get(Wire.HERE, port, "/more", "Cookie: " + cookie);
        Wire again = Wire.post(
                Wire.HERE,
                port,
                "/sign-in",
                "name=player&password=" + Club.PASSWORD.replace(' ', '+') + "&token=" + page.token(),
                "Cookie: " + cookie);
        assertThat(again.cookie(Guard.LOGIN)).isNotEqualTo(cookie).isNotEmpty();
        assertThat(records.signIns().find(first)).isEmpty();
        assertThat(page.token()).as("bound to the login").isNotEqualTo(stranger.token());
    }

    @Test
    void theAnswerDoesNotSayWhetherANameExistsAndGuessingIsSlowed() {
        Club.account(records, "guessed", Role.PLAYER);
        Asker stranger = asker(null);
        for (int guess = 0; guess < 11; guess++) {
            Wire known = stranger.post("/sign-in", "name=guessed&password=wrong+wrong+wrong");
            Wire unknown = stranger.post("/sign-in", "name=unknown&password=wrong+wrong+wrong");
            assertThat(known.status()).isEqualTo(guess < 10 ? 422 : 429);
            assertThat(unknown.status()).isEqualTo(known.status());
            assertThat(unknown.body().replace("unknown", "guessed")).isEqualTo(known.body());
        }
        assertThat(stranger.post("/sign-in", "name=guessed&password=" + Club.PASSWORD.replace(' ', '+'))
                        .status())
                .isEqualTo(429);
    }

    @Test
    void whereToGoAfterwardsIsAPageOfOurs() {
        assertThat(SignInPage.next("/journal?page=2")).isEqualTo("/journal?page=2");
        for (String elsewhere :
                List.of("//evil.example", "/\\evil.example", "https://evil.example", "journal", "", "/a\\b", "/a\nb")) {
            assertThat(SignInPage.next(elsewhere)).as(elsewhere).isEqualTo("/");
        }
        Wire asked = asker(null).get("/runs/x/summary?said=saved");
        assertThat(asked.header("location")).endsWith("/sign-in?next=%2Fruns%2Fx%2Fsummary%3Fsaid%3Dsaved");
    }

    @Test
    void nobodyIsTakenBySurpriseByAnInvitationWhileSignedIn() {
        String token = records.accounts().invite(Role.PLAYER, "").token();
        Asker asker = asker(Role.PLAYER);
        assertThat(asker.get("/invitation/" + token).body()).contains("You are signed in as player here");
        assertThat(asker.get("/invitation/" + token).status())
                .as("looking uses nothing up")
                .isEqualTo(200);
        String form = "name=newcomer&player=New&password=" + Club.PASSWORD.replace(' ', '+') + "&again="
                + Club.PASSWORD.replace(' ', '+');
        assertThat(asker.post("/invitation/" + token, form.replace("again=c", "again=x"))
                        .status())
                .isEqualTo(422);
        Wire taken = asker.post("/invitation/" + token, form);
        assertThat(taken.header("location")).endsWith("/?said=account.welcome");
        assertThat(asker.get("/").header("location"))
                .as("the login before is over")
                .contains("/sign-in");
        assertThat(asker(null).get("/invitation/" + token).status()).isEqualTo(410);
        assertThat(asker(null).post("/invitation/" + token, form).status()).isEqualTo(410);
        assertThat(asker(null).post("/reset/" + token, form).status()).isEqualTo(410);
    }

    @Test
    void scriptInANameIsTextEverywhere() {
        String evil = "<script>alert(1)</script>\"'><img src=x>";
        String sent = "%3Cscript%3Ealert(1)%3C%2Fscript%3E%22%27%3E%3Cimg%20src%3Dx%3E";
        Account account = Club.account(records, "scripted", Role.HOST);
        Player first = records.players(account.id()).get(0);
        Asker asker = Club.asker(records, port, account);
        assertThat(asker.post("/players/" + first.id(), "name=" + sent + "&hand=right&throws-from=left")
                        .status())
                .isEqualTo(302);
        assertThat(asker.post("/accounts/invite", "role=player&note=" + sent).status())
                .isEqualTo(200);
        String token = records.signIns().signIn(account, evil).orElseThrow();
        assertThat(records.signIns().find(token)).isPresent();
        Wire refused = asker(null).post("/sign-in", "password=x&name=" + sent);
        assertThat(refused.body()).contains("&lt;script").doesNotContain("<script>alert", "<img src=x>");
        String invitation = records.accounts().invite(Role.PLAYER, "").token();
        Wire taking = asker(null)
                .post("/invitation/" + invitation, "name=" + sent + "&player=" + sent + "&password=x&again=x");
        assertThat(taking.status()).isEqualTo(422);
        assertThat(taking.body()).contains("&lt;script").doesNotContain("<script>alert", "<img src=x>");
        int found = 0;
        for (Route route : server.routes()) {
            if (route.method() == HandlerType.GET
                    && !route.path().matches(".*[{<].*")
                    && !SLOW.contains(route.path())) {
                String body = asker.get(route.path()).body();
                assertThat(body).as(route.path()).doesNotContain("<script>alert", "<img src=x>");
                found += body.contains("&lt;script") ? 1 : 0;
            }
        }
        assertThat(found).as("pages that show the name").isGreaterThan(10);
    }

    @Test
    void behindAProxyItIsAskedUnderItsPublicNameOverHttpsAlone() {
        Hosting hosting = Hosting.of(List.of("https://Boards.Example:443/"), true, false);
        assertThat(hosting.addresses()).containsExactly(URI.create("https://boards.example"));
        try (Server proxied = Server.start(records, Club.options(hosting), Clock.systemDefaultZone())) {
            String[] through = {"Host: boards.example", "X-Forwarded-Proto: https", "X-Forwarded-For: 198.51.100.9"};
            assertThat(proxied.address()).isEqualTo("https://boards.example/");
            assertThat(Wire.get(Wire.HERE, proxied.port(), "/sign-in").status()).isEqualTo(421);
            Wire plain = Wire.get(Wire.HERE, proxied.port(), "/sign-in?next=%2F", "Host: boards.example");
            assertThat(plain.status()).isEqualTo(308);
            assertThat(plain.header("location")).isEqualTo("https://boards.example/sign-in?next=%2F");

            Wire page = Wire.get(Wire.HERE, proxied.port(), "/sign-in", through);
            String visit = page.cookie("__Host-" + Guard.VISIT);
            assertThat(visit).isNotEmpty();
            assertThat(page.header("set-cookie"))
                    .contains("; Secure")
                    .contains("; Path=/")
                    .doesNotContain("Domain");
            String form = "name=player&password=" + Club.PASSWORD.replace(' ', '+') + "&token=" + page.token();
            for (String origin : List.of("http://boards.example", "https://boards.example:8443")) {
                assertThat(Wire.post(
                                        Wire.HERE,
                                        proxied.port(),
                                        "/sign-in",
                                        form,
                                        with(through, "Cookie: " + visit, "Origin: " + origin))
                                .status())
                        .as(origin)
                        .isEqualTo(403);
            }
            Wire in = Wire.post(
                    Wire.HERE,
                    proxied.port(),
                    "/sign-in",
                    form,
                    with(through, "Cookie: " + visit, "Origin: https://boards.example"));
            assertThat(in.status()).isEqualTo(302);
            String login = in.cookie("__Host-" + Guard.LOGIN);
            assertThat(Wire.get(Wire.HERE, proxied.port(), "/", with(through, "Cookie: " + login))
                            .status())
                    .isEqualTo(200);
            // A cookie that another page of the domain could have planted is not looked at.
            assertThat(Wire.get(
                                    Wire.HERE,
                                    proxied.port(),
                                    "/",
                                    with(through, "Cookie: " + login.replace("__Host-", "")))
                            .header("location"))
                    .contains("/sign-in");
        }
    }

    @Test
    void theProxysWordCountsForAddressesAndWhatWasSentToItDoesNot() {
        Hosting hosting = Hosting.of(List.of("http://boards.example"), true, false);
        try (Server proxied = Server.start(records, Club.options(hosting), Clock.systemDefaultZone())) {
            Wire page = Wire.get(Wire.HERE, proxied.port(), "/sign-in", "Host: boards.example");
            String cookie = "Cookie: " + page.cookie(Guard.VISIT);
            for (int guess = 0; guess <= 60; guess++) {
                Wire.post(
                        Wire.HERE,
                        proxied.port(),
                        "/sign-in",
                        "name=nobody&password=x&token=" + page.token(),
                        "Host: boards.example",
                        cookie,
                        "X-Forwarded-For: 10.1.1." + guess + ", 203.0.113.5");
            }
            String form = "name=organiser&password=" + Club.PASSWORD.replace(' ', '+') + "&token=" + page.token();
            assertThat(Wire.post(
                                    Wire.HERE,
                                    proxied.port(),
                                    "/sign-in",
                                    form,
                                    "Host: boards.example",
                                    cookie,
                                    "X-Forwarded-For: 10.1.1.99",
                                    "X-Forwarded-For: 203.0.113.5")
                            .status())
                    .isEqualTo(429);
            assertThat(Wire.post(
                                    Wire.HERE,
                                    proxied.port(),
                                    "/sign-in",
                                    form,
                                    "Host: boards.example",
                                    cookie,
                                    "X-Forwarded-For: 203.0.113.5, 203.0.113.6")
                            .status())
                    .isEqualTo(302);
        }
    }

    private static String[] with(String[] headers, String... more) {
        return java.util.stream.Stream.concat(Arrays.stream(headers), Arrays.stream(more))
                .toArray(String[]::new);
    }
}
