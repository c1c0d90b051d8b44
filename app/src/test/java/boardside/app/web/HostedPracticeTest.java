package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Account;
import boardside.app.practice.Board;
import boardside.app.practice.Login;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.record.Records;
import boardside.app.record.SampleStore;
import boardside.app.record.Snapshot;
import boardside.app.record.Stores;
import boardside.app.transfer.Backups;
import boardside.app.transfer.LogFiles;
import boardside.app.web.Club.Asker;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import io.javalin.http.HandlerType;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A player's practice is theirs alone: everything of one account's, asked for by another through every route, on both kinds of
 * store. Anna's is the sample store with something of everything; Ben asks, and so does the host.
 */
@ParameterizedClass
@EnumSource
class HostedPracticeTest {
    /** What stands in Anna's records and in no page of anybody else. */
    private static final List<String> HERS =
            List.of("Äsa", "Kim", "broken in", "Doorstep", "Tuesday Post", "Fäces", "at Lou", "gusty", "Porch board");

    /** Worked out for a while, in the same turn as other answers; whose it is is found as for any other page. */
    private static final Set<String> SLOW = Set.of("GET /playbook", "POST /plan");

    private static final Pattern PARAMETER = Pattern.compile("\\{(\\w+)}");

    private final Stores kind;

    @TempDir
    private Path folder;

    private String location = "";
    private Records records;
    private Server server;
    private Account anna;
    private Account ben;
    private List<Player> hers = List.of();
    private List<Login> logins = List.of();

    HostedPracticeTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        location = kind.location(folder);
        records = Club.open(location);
        SampleStore.fill(records);
        List<Player> household = records.players();
        records.saveBoard(
                household.get(0).id(), new Board("p1", "Porch board", BoardKind.REGULATION, 24, 3.5, "", false));
        anna = Club.account(records, "anna", Role.PLAYER);
        ben = Club.account(records, "ben", Role.PLAYER);
        household.forEach(player -> records.accounts().give(anna.id(), player));
        hers = records.players(anna.id());
        assertThat(hers).hasSize(3);
        records.signIns().signIn(anna, "Anna's phone");
        logins = records.signIns().of(anna);
        server = Club.serve(records);
    }

    @AfterEach
    void close() {
        server.close();
        records.close();
    }

    private Asker asker(Account account) {
        return Club.asker(records, server.port(), account);
    }

    /** Everything of an account's that can be put in words. */
    private String all(Account account) {
        StringBuilder out = new StringBuilder();
        for (Player player : records.players(account.id())) {
            Backups.export(records, player.id(), out);
            out.append(
                    records.snapshot(snapshot -> snapshot.changes(player.id())).toString());
            out.append(records.plans().coaches(player.id()));
        }
        return out.append(records.signIns().of(account)).toString();
    }

    /** Ids of Anna's for a parameter of a path. */
    private List<String> ids(String path, String parameter) {
        List<String> ids = new ArrayList<>();
        for (Player player : hers) {
            ids.addAll(records.snapshot(snapshot -> ids(snapshot, player.id(), path, parameter)));
        }
        return ids;
    }

    private List<String> ids(Snapshot of, int player, String path, String parameter) {
        List<String> ids = new ArrayList<>();
        switch (parameter) {
            case "player", "shared" -> ids.add(String.valueOf(player));
            case "change" -> of.changes(player).forEach(change -> ids.add(change.id()));
            case "trial" -> of.trials(player).forEach(trial -> ids.add(trial.id()));
            case "plan" -> of.plans(player).forEach(plan -> ids.add(plan.id()));
            case "goal" -> of.goals(player).forEach(goal -> ids.add(goal.id()));
            case "league" -> of.leagues(player).forEach(league -> ids.add(league.id()));
            case "fixture" -> of.fixtures(player).forEach(fixture -> ids.add(fixture.id()));
            case "place" -> ids.add("0");
            case "day" -> ids.add("2026-05-01");
            case "drill" -> ids.add("total");
            case "kind" -> ids.addAll(Word.words(Reports.Kind.class));
            case "test" -> of.slideTests(player).forEach(test -> ids.add(test.id()));
            case "login" -> logins.forEach(login -> ids.add(login.id()));
            case "account" -> ids.add(anna.id());
            case "ticket", "season", "entrant", "match" -> ids.add("nothing");
            case "id" -> {
                if (path.startsWith("/players")) {
                    ids.add(String.valueOf(player));
                } else if (path.startsWith("/bags")) {
                    of.bags(player).forEach(bag -> ids.add(bag.id()));
                } else if (path.startsWith("/boards")) {
                    of.boards(player).forEach(board -> ids.add(board.id()));
                } else if (path.startsWith("/situations")) {
                    of.situations(player).forEach(situation -> ids.add(situation.id()));
                } else if (path.contains("/sessions/")) {
                    of.sessions(player).forEach(session -> ids.add(session.id()));
                } else if (path.contains("/runs/")) {
                    of.eachRun(player, run -> ids.add(run.run().id()));
                }
            }
            default -> {}
        }
        return ids;
    }

    /** A route's path with Anna's ids in it, in every combination. */
    private List<String> paths(String path) {
        Matcher parameter = PARAMETER.matcher(path);
        if (!parameter.find()) {
            return List.of(path.replace("<file>", "boardside.css"));
        }
        List<String> ids = ids(path, parameter.group(1));
        assertThat(ids).as("ids for " + path).isNotEmpty();
        return ids.stream()
                .distinct()
                .flatMap(id -> paths(path.replace(parameter.group(), id)).stream())
                .toList();
    }

    private static boolean slow(Route route) {
        return SLOW.contains(route.method() + " " + route.path());
    }

    /** A page that can be opened without further ado. */
    private static boolean plain(Route route) {
        return route.method() == HandlerType.GET
                && !PARAMETER.matcher(route.path()).find()
                && !slow(route);
    }

    private static void assertNothingOfHers(String what, Wire answer) {
        assertThat(answer.status()).as(what).isLessThan(500);
        for (String word : HERS) {
            assertThat(answer.body()).as(what).doesNotContain(word);
        }
    }

    /** Fields in which forms name things, filled with Anna's. */
    private String form() {
        int player = hers.get(1).id();
        return String.join(
                "&",
                "name=Mine",
                "player=" + player,
                "coach=" + player,
                "versus=player-" + player,
                "bag=b1",
                "bags=b1",
                "other-bag=b1",
                "candidate=b1",
                "run=total",
                "session=s1",
                "situation=k1",
                "trial=" + ids("", "trial").get(0),
                "league=" + ids("", "league").get(0),
                "fixture=" + ids("", "fixture").get(0),
                "plan=" + ids("", "plan").get(0),
                "goal=" + ids("", "goal").get(0),
                "drill=total",
                "rounds=5",
                "minutes=15",
                "choice=total");
    }

    @Test
    void everyRouteWithAnothersIdsAnswersAsIfTheyDidNotExist() {
        String before = all(anna);
        int asked = 0;
        for (Route route : server.routes()) {
            for (String path : slow(route) ? List.<String>of() : paths(route.path())) {
                Asker asker = asker(ben);
                Wire answer = route.method() == HandlerType.GET ? asker.get(path) : asker.post(path, form());
                String what = route.method() + " " + path;
                assertNothingOfHers(what, answer);
                boolean names = PARAMETER.matcher(route.path()).find()
                        && !route.path().matches(".*\\{(day|drill|kind|ticket|account|season)}.*");
                if (names && route.method() == HandlerType.GET) {
                    assertThat(answer.status()).as(what).isEqualTo(404);
                    asked++;
                }
                if (names && route.method() != HandlerType.GET && !route.path().contains("{login}")) {
                    String unknown = PARAMETER.matcher(route.path()).replaceAll("nothing");
                    assertThat(answer.status())
                            .as(what)
                            .isEqualTo(asker(ben).post(unknown, form()).status());
                    asked++;
                }
            }
        }
        assertThat(asked).isGreaterThan(100);
        assertThat(all(anna)).as("nothing of Anna's was changed").isEqualTo(before);
    }

    @Test
    void everyPageShowsOnesOwnWhomeverTheBrowserChose() {
        Account host = Club.account(records, "host", Role.HOST);
        String before = all(anna);
        for (Account account : List.of(ben, host)) {
            Asker asker = asker(account);
            for (Route route : server.routes()) {
                if (plain(route)) {
                    int player = hers.get(1).id();
                    Asker chosen =
                            new Asker(asker.port(), asker.cookies() + "; " + Web.PLAYER + "=" + player, asker.token());
                    for (String query : List.of("", "?versus=player-" + player)) {
                        Wire answer = chosen.get(route.path().replace("<file>", "boardside.css") + query);
                        assertNothingOfHers(account.name() + " " + route.path() + query, answer);
                    }
                }
            }
        }
        assertThat(all(anna)).isEqualTo(before);
        Asker own = asker(anna);
        assertThat(own.get("/players").body()).contains("Äsa", "Kim", "The one called anna");
    }

    @Test
    void thePhoneInterfaceStoresForOnesOwnPlayersAlone() {
        String before = all(anna);
        Asker asker = asker(ben);
        int hersFirst = records.household(hers.get(0).id()).get(0).id();
        int his = records.players(ben.id()).get(0).id();
        String round = "{\"type\":\"round\",\"run\":\"total\",\"round\":{\"number\":4,\"side\":\"me\",\"op\":"
                + "\"01900000-0000-7000-9000-000000000001\",\"lines\":[],\"thrown\":[]}}";
        String finish = "{\"type\":\"finish\",\"op\":\"01900000-0000-7000-9000-000000000002\",\"run\":\"race\","
                + "\"at\":\"2026-05-01T18:30:00+02:00\"}";
        for (int player : List.of(hersFirst, hers.get(1).id(), hers.get(2).id())) {
            Wire answer = upload(asker, player, round + "," + finish);
            assertThat(answer.status()).isEqualTo(404);
            assertNothingOfHers("outbox", answer);
        }
        Wire own = upload(asker, his, round + "," + finish);
        assertThat(own.status()).isEqualTo(200);
        assertThat(own.body()).contains("\"refused\"").doesNotContain("\"stored\"");
        assertNothingOfHers("outbox", own);
        assertThat(all(anna)).isEqualTo(before);
    }

    private static Wire upload(Asker asker, int player, String operations) {
        return asker.ask(
                HandlerType.POST,
                "/api/outbox",
                "{\"player\":" + player + ",\"operations\":[" + operations + "]}",
                Guard.TOKEN_HEADER + ": " + asker.token());
    }

    @Test
    void onesOwnDataIsExportedAndDeletedAndNobodyElses() {
        Asker asker = asker(anna);
        int player = hers.get(0).id();
        StringBuilder log = new StringBuilder();
        LogFiles.write(records, player, log);
        StringBuilder everything = new StringBuilder();
        Backups.export(records, player, everything);
        assertThat(asker.get("/account/players/" + player + "/log.csv").body()).isEqualTo(log.toString());
        assertThat(asker.get("/account/players/" + player + "/all.jsonl").body())
                .isEqualTo(everything.toString());

        String his = all(ben);
        String password = "password=" + Club.PASSWORD.replace(' ', '+');
        assertThat(asker.post("/account/delete", password).status())
                .as("not sure")
                .isEqualTo(422);
        assertThat(asker.post("/account/delete", "sure=yes&password=wrong").status())
                .isEqualTo(422);
        assertThat(records.players(anna.id())).hasSize(3);
        Wire gone = asker.post("/account/delete", "sure=yes&" + password);
        assertThat(gone.header("location")).endsWith("/sign-in?said=account.deleted");
        assertThat(asker.get("/").header("location")).contains("/sign-in");
        assertThat(records.accounts().named("anna")).isEmpty();
        assertThat(records.players()).extracting(Player::name).containsExactly("The one called ben");
        assertThat(all(ben)).isEqualTo(his);
        assertThat(records.check()).isEmpty();
    }

    @Test
    void twoProgramsOverOneStoreActAsOne() {
        Asker asker = asker(ben);
        try (Records other = Club.open(location);
                Server second = Club.serve(other)) {
            Asker there = new Asker(second.port(), asker.cookies(), asker.token());
            assertThat(there.get("/").status()).isEqualTo(200);
            assertThat(there.get("/more").token())
                    .as("forms of one are taken by the other")
                    .isEqualTo(asker.token());
            assertThat(there.post("/players", "name=Second&hand=left&throws-from=left")
                            .status())
                    .isEqualTo(302);
            assertThat(asker.get("/players").body()).contains("Second");
            assertThat(there.post("/account/sign-out-everywhere", "").status()).isEqualTo(302);
            assertThat(asker.get("/").header("location")).contains("/sign-in");
        }
    }

    @Test
    void withoutHostedModeAHouseholdSeesItsOwnPlayersAndNoAccounts() {
        server.close();
        server = Server.start(records, ServerOptions.local(0), java.time.Clock.systemDefaultZone());
        String before = all(anna);
        for (Route route : server.routes()) {
            if (plain(route)) {
                for (Player player : hers) {
                    Wire answer = Wire.get(
                            Wire.HERE,
                            server.port(),
                            route.path().replace("<file>", "boardside.css"),
                            "Cookie: " + Web.PLAYER + "=" + player.id());
                    assertNothingOfHers(route.path(), answer);
                }
            }
        }
        for (Player player : hers) {
            assertThat(Wire.get(Wire.HERE, server.port(), "/players/" + player.id())
                            .status())
                    .isEqualTo(404);
        }
        for (String path : List.of("/sign-in", "/account", "/accounts", "/invitation/x")) {
            assertThat(Wire.get(Wire.HERE, server.port(), path).status())
                    .as(path)
                    .isEqualTo(404);
        }
        assertThat(all(anna)).isEqualTo(before);
    }
}
