package boardside.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.account.Accounts;
import boardside.app.account.SignIns;
import boardside.app.practice.Account;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.Ticket;
import boardside.app.record.NewSeason;
import boardside.app.record.Records;
import boardside.app.record.SampleStore;
import boardside.app.record.Stores;
import boardside.app.season.Organiser;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Stores that older programs wrote, kept under {@code stores/}: {@code vN.db} of schema version N, with {@code vN.jsonl},
 * all that was in it. See the README there for how to add one.
 */
class UpgradeTest {
    @TempDir
    Path folder;

    private Path resource(String name) throws IOException {
        Path copy = folder.resolve(name);
        try (InputStream in = Objects.requireNonNull(getClass().getResourceAsStream("/stores/" + name))) {
            Files.copy(in, copy);
        }
        return copy;
    }

    private static String all(Records records) {
        StringBuilder out = new StringBuilder();
        records.snapshot(
                snapshot -> JsonLines.write(snapshot, player -> true, true, true, out, LogFiles.Progress.NONE));
        return out.toString();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11})
    void everyOldStoreOpensWithNothingLost(int version) throws Exception {
        Path store = resource("v" + version + ".db");
        String expected = Files.readString(resource("v" + version + ".jsonl"));
        try (Records records = Records.open(store.toString())) {
            assertThat(all(records)).isEqualTo(expected);
            assertThat(records.check()).isEmpty();
            // And it can be written to.
            records.addPlayer("New", Player.Hand.RIGHT, Player.Hand.LEFT);
        }
    }

    /** What stands in the way of a late step takes the earlier ones back with it. */
    @Test
    void anUpgradeThatFailsLeavesTheStoreAsItWas() throws Exception {
        Path store = resource("v4.db");
        String url = "jdbc:sqlite:" + store;
        try (Connection connection = DriverManager.getConnection(url)) {
            connection.createStatement().execute("create table season_live (theirs text)");
        }
        Set<String> before = tables(url);
        assertThatThrownBy(() -> Records.open(store.toString()))
                .isInstanceOf(Failure.StoreUnusable.class)
                .hasMessageContaining("cannot be brought up to date");
        assertThat(tables(url)).isEqualTo(before);
        try (Connection connection = DriverManager.getConnection(url)) {
            connection.createStatement().execute("drop table season_live");
        }
        try (Records records = Records.open(store.toString())) {
            assertThat(all(records)).isEqualTo(Files.readString(resource("v4.jsonl")));
        }
    }

    private static Set<String> tables(String url) throws SQLException {
        Set<String> tables = new HashSet<>();
        try (Connection connection = DriverManager.getConnection(url);
                ResultSet found = connection
                        .createStatement()
                        .executeQuery("select name from sqlite_master where type = 'table'")) {
            while (found.next()) {
                tables.add(found.getString(1));
            }
        }
        return tables;
    }

    @ParameterizedTest
    @EnumSource
    void everyOldBackupComesBackIntoEitherKindOfStore(Stores kind) throws Exception {
        try (Records records = Stores.open(kind.location(folder), 1)) {
            for (String version : List.of(
                    "v1.jsonl",
                    "v4.jsonl",
                    "v5.jsonl",
                    "v6.jsonl",
                    "v7.jsonl",
                    "v8.jsonl",
                    "v9.jsonl",
                    "v10.jsonl",
                    "v11.jsonl")) {
                Path lines = resource(version);
                Backups.restore(records, lines, true, LogFiles.Progress.NONE);
                assertThat(all(records)).isEqualTo(Files.readString(lines));
                assertThat(records.check()).isEmpty();
            }
        }
    }

    /** Plans, what was refused and goals come back from a backup; who may look does not: players may have other ids there. */
    @ParameterizedTest
    @EnumSource
    void plansComeBackFromABackupButNobodyIsLetIn(Stores kind) throws Exception {
        Path lines = folder.resolve("backup.jsonl");
        try (Records records = Stores.open(folder.resolve("before.db").toString(), 1)) {
            SampleStore.fill(records);
            assertThat(records.plans().coaches(records.firstPlayer().id())).hasSize(1);
            Files.writeString(lines, all(records));
        }
        try (Records records = Stores.open(kind.location(folder), 1)) {
            Backups.restore(records, lines, true, LogFiles.Progress.NONE);
            int player = records.firstPlayer().id();
            SessionPlan plan = records.plans().latest(player).orElseThrow();
            assertThat(plan.blocks().stream().map(one -> one.block().choice()))
                    .containsExactly("warm-up", "total", "placement:2-left");
            assertThat(plan.blocks().get(0).doneAt()).isNotEmpty();
            assertThat(records.plans().of(player, "total")).contains(plan);
            LocalDate day = LocalDate.parse(plan.day());
            assertThat(records.plans().current(player, day)).contains(plan);
            assertThat(records.plans().refused(player, day)).isEqualTo(Map.of("race", 1.0));
            assertThat(records.plans().goals(player)).hasSize(1);
            assertThat(records.plans().coaches(player)).isEmpty();
        }
    }

    /** Accounts with their players and passwords come back from a backup; nobody is signed in, and no link works. */
    @ParameterizedTest
    @EnumSource
    void accountsComeBackFromABackupButNobodyIsSignedIn(Stores kind) throws Exception {
        Path file = folder.resolve("backup.gz");
        String token;
        String link;
        String before;
        try (Records records = Stores.open(folder.resolve("before.db").toString(), 1)) {
            SampleStore.fill(records);
            List<Player> household = records.players();
            Account anna = account(records, "Anna", Role.PLAYER);
            Account host = account(records, "host", Role.HOST);
            records.accounts().give(anna.id(), household.get(0));
            String season = records.seasons()
                    .add(
                            new NewSeason(
                                    "Theirs",
                                    SeasonRules.USUAL,
                                    new Weeks(LocalDateTime.parse("2026-05-04T18:30"), ZoneId.of("UTC")),
                                    List.of(new NewSeason.Division("All", List.of("Ash", "Bea"))),
                                    false,
                                    ""),
                            host.id())
                    .id();
            records.seasons().letRun(season, "host", true);
            token = records.signIns().signIn(anna, "phone").orElseThrow();
            link = records.accounts().invite(Role.HOST, "").token();
            assertThat(records.accounts().close(anna.id()).closed()).isTrue();
            assertThat(host.closed()).isFalse();
            before = all(records);
            assertThat(Backups.write(records, file, LogFiles.Progress.NONE).players())
                    .isEqualTo(4);
        }
        assertThat(before).startsWith("{\"kind\":\"boardside\",\"format\":2}").doesNotContain(token, link);
        try (Records records = Stores.open(kind.location(folder), 1)) {
            Account somebody = account(records, "somebody", Role.HOST);
            String in = records.signIns().signIn(somebody, "phone").orElseThrow();
            assertThatThrownBy(() -> Backups.restore(records, file, false, LogFiles.Progress.NONE))
                    .hasMessageContaining("add --force");
            Backups.restore(records, file, true, LogFiles.Progress.NONE);
            assertThat(all(records)).isEqualTo(before);
            assertThat(records.accounts().all()).extracting(Account::name).containsExactly("Anna", "host");
            assertThat(records.seasons().all())
                    .filteredOn(season -> season.name().equals("Theirs"))
                    .flatExtracting(season -> records.seasons().organisers(season.id()))
                    .extracting(Organiser::name)
                    .containsOnly("host");
            assertThat(records.signIns().find(in)).isEmpty();
            assertThat(records.signIns().find(token)).isEmpty();
            assertThat(records.accounts().ticket(Ticket.Kind.INVITATION, link)).isEmpty();
            assertThat(records.players(null)).extracting(Player::name).containsExactly("Kim");
            assertThat(records.signIns().signIn("host", PASSWORD, "192.0.2.1", "phone"))
                    .isInstanceOf(SignIns.Result.Done.class);
        }
    }

    private static final String PASSWORD = "correct horse battery";

    private static Account account(Records records, String name, Role role) {
        Accounts accounts = records.accounts();
        Accounts.Taken taken = accounts.take(accounts.invite(role, "").token(), name, name, PASSWORD);
        return ((Accounts.Taken.Done) taken).account();
    }

    /** Today's program still writes the sample as it was written: else a schema change lacks a migration, or a sample. */
    @Test
    void sampleOfTheNewestSchemaIsTodays() throws Exception {
        try (Records records = Stores.open(folder.resolve("today.db").toString(), 1)) {
            SampleStore.fill(records);
            assertThat(all(records)).isEqualTo(Files.readString(resource("v11.jsonl")));
        }
    }

    @Test
    void backupHasEveryTableButDevicesAndWhatLetsSomebodyIn() throws Exception {
        Path file = folder.resolve("store.db");
        Records.open(file.toString()).close();
        Set<String> tables = tables("jdbc:sqlite:" + file);
        // login, ticket, attempt, pairing and device: whoever was let in signs in, or is let in, anew.
        // tally and feat are derived from the rounds when a run is put back, learned from all runs when the skill model
        // is next
        // fitted.
        assertThat(tables)
                .containsExactlyInAnyOrder(
                        "player",
                        "bag",
                        "board",
                        "session",
                        "run",
                        "round",
                        "line",
                        "throw",
                        "tally",
                        "try",
                        "situation",
                        "slide_test",
                        "history",
                        "learned",
                        "league",
                        "fixture",
                        "fixture_game",
                        "challenge",
                        "feat",
                        "trial",
                        "plan",
                        "plan_block",
                        "refusal",
                        "goal",
                        "share",
                        "season",
                        "season_division",
                        "season_entrant",
                        "season_match",
                        "season_game",
                        "season_round",
                        "season_change",
                        "season_organiser",
                        "season_run",
                        "season_round_edit",
                        "season_stream",
                        "season_live",
                        "account",
                        "player_number",
                        "login",
                        "ticket",
                        "attempt",
                        "pairing",
                        "device",
                        "flyway_schema_history");
    }
}
