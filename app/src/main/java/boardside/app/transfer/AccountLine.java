package boardside.app.transfer;

import boardside.app.json.Json;
import boardside.app.practice.Account;
import boardside.app.practice.Role;
import boardside.app.record.StoredAccount;
import boardside.engine.rules.Word;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;

/** An account as a line of a backup: with the hash of its password, without where it is signed in. */
final class AccountLine {
    private AccountLine() {}

    static ObjectNode write(StoredAccount stored) {
        Account account = stored.account();
        Instant closed = account.closedAt();
        ObjectNode node = Json.MAPPER.createObjectNode();
        node.put("id", account.id());
        node.put("name", account.name());
        node.put("signIn", stored.signIn());
        node.put("role", account.role().word());
        node.put("password", stored.password());
        node.put("madeAt", account.madeAt().toString());
        if (closed != null) {
            node.put("closedAt", closed.toString());
        }
        return node;
    }

    static StoredAccount read(JsonNode node) {
        String closed = node.path("closedAt").asText("");
        Account account = new Account(
                text(node, "id"),
                text(node, "name"),
                Word.of(Role.class, text(node, "role")),
                Instant.parse(text(node, "madeAt")),
                closed.isEmpty() ? null : Instant.parse(closed));
        return new StoredAccount(account, text(node, "signIn"), text(node, "password"));
    }

    private static String text(JsonNode node, String field) {
        String text = node.path(field).asText("");
        if (text.isEmpty()) {
            throw new IllegalArgumentException("an account without \"" + field + "\"");
        }
        return text;
    }
}
