package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Account;
import boardside.app.practice.Role;
import boardside.app.record.NewSeason;
import boardside.app.record.Records;
import boardside.app.season.SeasonChange;
import boardside.app.web.Club.Asker;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Weeks;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season in hosted mode: organisers run it, players tell their own totals, nobody else learns that it is there. */
class SeasonAccountsTest {
    @TempDir
    private Path folder;

    private Records records;
    private Server server;
    private Season season;
    private SeasonMatch match;
    private Account ash;
    private Account bea;
    private Account eve;
    private Account organiser;

    @BeforeEach
    void serve() {
        records = Club.open(folder.resolve("store.db").toString());
        server = Club.serve(records);
        ash = Club.account(records, "ash", Role.PLAYER);
        bea = Club.account(records, "bea", Role.PLAYER);
        eve = Club.account(records, "eve", Role.PLAYER);
        organiser = Club.account(records, "olga", Role.ORGANISER);
        season = records.seasons()
                .add(
                        new NewSeason(
                                "Closed circle",
                                SeasonRules.USUAL,
                                new Weeks(LocalDate.now().atStartOfDay(), ZoneId.systemDefault()),
                                // Who is called as somebody in the season is nobody in it for that.
                                List.of(new NewSeason.Division("All", List.of("The one called ash", "Bea"))),
                                false,
                                ""),
                        organiser.id());
        match = season.matches().get(0);
    }

    @AfterEach
    void stop() {
        server.close();
        records.close();
    }

    private Asker asker(Account account) {
        return Club.asker(records, server.port(), account);
    }

    private void link(int entrant, String account) {
        String id = season.entrants().get(entrant).id();
        Wire linked = asker(organiser)
                .post("/seasons/" + season.id() + "/players/" + id + "/account", "account-" + id + "=" + account);
        assertThat(linked.status()).isEqualTo(302);
    }

    private SeasonMatch now() {
        return records.seasons()
                .find(season.id())
                .flatMap(all -> all.match(match.id()))
                .orElseThrow();
    }

    private String mine() {
        return "/seasons/" + season.id() + "/mine/" + match.id();
    }

    @Test
    void playersTellTheirOwnAndAgreeAndOthersLearnNothing() {
        assertThat(asker(ash).get(mine()).status()).as("a name is no proof").isEqualTo(404);
        link(0, "ash");
        link(1, "bea");
        assertThat(asker(ash).get("/seasons/mine").body()).contains("Closed circle");
        assertThat(asker(ash).post(mine(), "mine-1=80&mine-2=81&mine-3=82").status())
                .isEqualTo(302);
        assertThat(asker(bea).post(mine(), "mine-1=70&mine-2=71&mine-3=72").status())
                .isEqualTo(302);
        assertThat(now().state()).isEqualTo(State.REPORTED);
        assertThat(now().games()).contains(new GameScore(80, 70));
        // Agreeing with oneself settles nothing.
        asker(bea).post(mine() + "/confirm", "");
        assertThat(now().state()).isEqualTo(State.REPORTED);
        asker(ash).post(mine() + "/confirm", "");
        assertThat(now().state()).isEqualTo(State.CONFIRMED);

        assertThat(asker(eve).get("/seasons/mine").body()).doesNotContain("Closed circle");
        for (String path : List.of("/table", "/ending", "/results.csv", "/results.json", "/calendar.ics")) {
            Wire hidden = asker(eve).get("/seasons/" + season.id() + path);
            assertThat(hidden.status()).as(path).isEqualTo(404);
            assertThat(hidden.body()).doesNotContain("Bea");
            // 202 where the answer is still being worked out.
            assertThat(asker(ash).get("/seasons/" + season.id() + path).status())
                    .as(path)
                    .isIn(200, 202);
        }
        for (String action : List.of("", "/confirm", "/dispute")) {
            assertThat(asker(eve).post(mine() + action, "mine-1=1&why=x").status())
                    .as(action)
                    .isEqualTo(404);
        }
        assertThat(asker(ash).get("/seasons/" + season.id()).status()).isEqualTo(403);
        assertThat(asker(ash).get("/seasons/" + season.id() + "/table").body())
                .doesNotContain("href=\"/seasons/" + season.id() + "\"");
        assertThat(asker(organiser).get("/seasons/" + season.id()).status()).isEqualTo(200);
    }

    @Test
    void aSeasonIsRunByWhoMadeItByThoseTheyLetAndByHosts() {
        Account otto = Club.account(records, "otto", Role.ORGANISER);
        Account host = Club.account(records, "hedda", Role.HOST);
        String desk = "/seasons/" + season.id();
        String round = desk + "/matches/" + match.id() + "/round";
        assertThat(asker(otto).get("/seasons").body()).doesNotContain("Closed circle");
        for (String path : List.of("", "/settings", "/players", "/organisers", "/table", "/matches/" + match.id())) {
            assertThat(asker(otto).get(desk + path).status()).as(path).isEqualTo(404);
            assertThat(asker(organiser).get(desk + path).status()).as(path).isEqualTo(200);
            assertThat(asker(host).get(desk + path).status()).as(path).isEqualTo(200);
        }
        assertThat(asker(otto)
                        .post(round, "game=1&number=1&side=first&bags=4-0-0")
                        .status())
                .isEqualTo(404);
        assertThat(asker(otto).post(desk + "/delete", "").status()).isEqualTo(404);
        assertThat(asker(otto).post(desk + "/organisers", "name=otto&what=in").status())
                .isEqualTo(404);
        assertThat(asker(organiser)
                        .post(desk + "/organisers", "name=ash&what=in")
                        .body())
                .contains("a player's; a host can make it an organiser's first");
        assertThat(asker(organiser)
                        .post(desk + "/organisers", "name=otto&what=in")
                        .status())
                .isEqualTo(302);
        assertThat(asker(otto).get("/seasons").body()).contains("Closed circle");
        assertThat(asker(otto)
                        .post(round, "game=1&number=1&side=first&bags=4-0-0")
                        .status())
                .isEqualTo(302);
        assertThat(asker(organiser)
                        .post(desk + "/organisers", "name=otto&what=give")
                        .status())
                .isEqualTo(302);
        assertThat(asker(otto).post(desk + "/organisers", "name=olga&what=out").status())
                .isEqualTo(302);
        assertThat(asker(organiser).get(desk).status()).isEqualTo(404);
        // A season that was deleted is brought back by nobody else either.
        assertThat(asker(otto).post(desk + "/delete", "").status()).isEqualTo(302);
        assertThat(asker(organiser).post(desk + "/restore", "").status()).isEqualTo(404);
        assertThat(asker(host).post(desk + "/restore", "").status()).isEqualTo(302);
        // Whoever makes one has it.
        Wire made = asker(organiser)
                .post(
                        "/seasons",
                        "name=Mine&players=A%0AB&starts=2026-11-30&zone=UTC&games=3&rounds=10&win=2&tie=1&loss=0"
                                + "&qualifiers=0&meetings=single");
        assertThat(made.status()).isEqualTo(302);
        assertThat(asker(organiser).get("/seasons").body()).contains("Mine");
        assertThat(asker(otto).get("/seasons").body()).doesNotContain("Mine");
        // Its owner gone, it is the hosts'.
        records.accounts().delete(organiser.id());
        assertThat(asker(host).get("/seasons").body()).contains("Mine");
        String organisers = made.header("location").replaceAll("\\?.*", "") + "/organisers";
        assertThat(asker(host).get(organisers).body()).contains("It belongs to nobody", "Make owner");
        assertThat(asker(otto).post(organisers, "name=otto&what=give").status()).isEqualTo(404);
        assertThat(asker(host).post(organisers, "name=otto&what=give").status()).isEqualTo(302);
        assertThat(asker(host).get(organisers).body()).doesNotContain("It belongs to nobody");
        assertThat(asker(otto).get("/seasons").body()).contains("Mine");
        assertThat(records.check()).isEmpty();
    }

    @Test
    void anAccountThatIsNotThereIsToldAndAnEmptyOneTakesTheLinkBack() {
        String id = season.entrants().get(0).id();
        String path = "/seasons/" + season.id() + "/players/" + id + "/account";
        Wire fault = asker(organiser).post(path, "account-" + id + "=nobody");
        assertThat(fault.status()).isEqualTo(422);
        assertThat(fault.body()).contains("There is no account \"nobody\" with a player.");
        link(0, "ash");
        assertThat(asker(ash).get(mine()).status()).isEqualTo(200);
        link(0, "");
        assertThat(asker(ash).get(mine()).status()).isEqualTo(404);
    }

    @Test
    void whoDeletesTheirAccountLeavesTheirMatchesUnderANeutralName() {
        link(0, "ash");
        String id = season.entrants().get(0).id();
        records.seasons().rename(season.id(), id, "Ash \"Moor\"");
        records.seasons()
                .tell(
                        season.id(),
                        match.id(),
                        List.of(new GameScore(80, 70), new GameScore(80, 70), new GameScore(80, 70)),
                        Voice.ORGANISER);
        records.accounts().delete(ash.id());
        Season after = records.seasons().find(season.id()).orElseThrow();
        Entrant left = after.entrant(id).orElseThrow();
        assertThat(left.name()).startsWith("Former player ");
        assertThat(left.player()).isNull();
        assertThat(after.table(0).rows().get(0).record().points()).isEqualTo(6);
        assertThat(records.check()).isEmpty();
        for (SeasonChange change : records.seasons().changes(season.id())) {
            assertThat(change.toString()).doesNotContain("Moor", "called ash");
        }
    }
}
