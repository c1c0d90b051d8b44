package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.account.Accounts;
import boardside.app.json.Json;
import boardside.app.record.Records;
import boardside.app.record.Stores;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AccountCommandTest {
    @TempDir
    private Path folder;

    private Path store() {
        return folder.resolve("s.db");
    }

    private Ran run(String... args) {
        List<String> all = new ArrayList<>(List.of("--data", store().toString()));
        all.addAll(List.of(args));
        return Ran.of(all.toArray(String[]::new));
    }

    /** Takes the invitation behind a link that was printed. */
    private void take(String link, String name) {
        String token = link.strip().replaceFirst(".*/invitation/", "");
        try (Records records = Stores.open(store().toString(), name.hashCode())) {
            assertThat(records.accounts().take(token, name, name, "correct horse battery"))
                    .isInstanceOf(Accounts.Taken.Done.class);
        }
    }

    @Test
    void theFirstHostIsMadeFromTheTerminalAndAllElseCanBeToo() throws Exception {
        assertThat(run("account").status()).isEqualTo(1);
        assertThat(run("account").out()).contains("first-host");
        // Links end by the machine's clock, so a store opened with a clock of old takes them.
        Ran first = run("account", "first-host", "--address", "https://boards.example/");
        assertThat(first.out()).matches("https://boards\\.example/invitation/[0-9a-f]{64}\n");
        assertThat(first.err()).contains("works once");
        take(first.out(), "Hal");
        assertThat(run("account", "first-host").err()).contains("there is a host already");

        Ran invited = run("--json", "account", "invite", "--role", "organiser", "--note", "for Olga");
        JsonNode link = Json.MAPPER.readTree(invited.out());
        assertThat(link.get("link").asText()).startsWith("http://localhost:8027/invitation/");
        take(link.get("link").asText(), "Olga");
        assertThat(run("account", "list").out()).contains("Hal: host, since ").contains("Olga: organiser, since ");
        JsonNode all = Json.MAPPER.readTree(run("account", "--json").out()).get("accounts");
        assertThat(all).hasSize(2);
        assertThat(all.get(0).get("role").asText()).isEqualTo("host");

        assertThat(run("account", "role", "olga", "player").out()).isEqualTo("Olga is player now.\n");
        assertThat(run("account", "role", "olga", "king").err())
                .contains("\"king\" is none of player, organiser, host");
        assertThat(run("account", "role", "hal", "player").err()).contains("no host would be left");
        assertThat(run("account", "close", "OLGA").status()).isZero();
        assertThat(run("account", "list").out()).contains("closed");
        assertThat(run("account", "reset", "olga").err()).contains("is closed; open it first");
        assertThat(run("account", "open", "olga").status()).isZero();
        assertThat(run("account", "reset", "olga").out()).contains("/reset/");
        assertThat(run("account", "sign-out", "olga").out()).contains("signed out everywhere");
        assertThat(run("account", "close", "nobody").status()).isEqualTo(1);
    }

    @Test
    void aNameInASeasonIsSaidToBeAnAccounts() throws Exception {
        take(run("account", "first-host").out(), "Hal");
        Path names = folder.resolve("names.txt");
        Files.writeString(names, "Hal\nBea\nCy\nDi\n");
        assertThat(run("season", "new", "Porch", names.toString(), "--starts", "2026-05-04")
                        .status())
                .isZero();
        // A name alone makes nobody of them.
        assertThat(run("season", "players", "Porch").out()).doesNotContain("tells their own totals");
        assertThat(run("season", "players", "Porch", "--account", "Bea", "hal").out())
                .contains("Bea; tells their own totals");
        assertThat(run("season", "players", "Porch", "--account", "Bea", "").out())
                .doesNotContain("tells their own totals");
        assertThat(run("season", "players", "Porch", "--account", "Bea", "nobody")
                        .err())
                .contains("there is no account \"nobody\" with a player");
    }

    @Test
    void aPlayerOfAHouseholdIsGivenToAnAccountAndKeepsTheRecords() {
        run("record", "total", "--player", "Ana", "3-1-0", "2-2-0");
        String before = run("export", "--player", "Ana").out();
        take(run("account", "first-host").out(), "hal");
        assertThat(run("account", "give", "Ana", "hal").out()).isEqualTo("Ana is a player of hal now.\n");
        assertThat(run("account", "give", "Ana (hal)", "hal").err()).contains("is an account's already");
        assertThat(run("export", "--player", "Ana (hal)").out()).isEqualTo(before);
        assertThat(run("export", "--player", "Ana").err()).contains("the store holds Ana (hal), hal (hal)");
        assertThat(run("account", "give", "Ana", "hal").status()).isEqualTo(2);
    }

    @Test
    void optionsOfHostedModeThatDoNotFitAreRefusedBeforeAnythingIsMade() {
        assertThat(run("serve", "--public", "https://boards.example").err()).contains("add --hosted");
        assertThat(run("serve", "--hosted", "--behind-proxy").err()).contains("add --public");
        assertThat(run("serve", "--hosted", "--public", "https://boards.example")
                        .err())
                .contains("add --tls, or --behind-proxy");
        assertThat(run("serve", "--hosted", "--public", "https://boards.example/app", "--behind-proxy")
                        .err())
                .contains("is no address");
        assertThat(run("serve", "--hosted", "--public", "boards.example", "--behind-proxy")
                        .err())
                .contains("is no address");
        assertThat(run(
                                "serve",
                                "--hosted",
                                "--behind-proxy",
                                "--public",
                                "https://boards.example",
                                "--public",
                                "http://boards.example")
                        .err())
                .contains("use https for all");
        assertThat(store()).doesNotExist();
    }
}
