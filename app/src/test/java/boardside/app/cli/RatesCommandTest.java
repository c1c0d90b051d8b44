package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.demo.Demo;
import boardside.app.record.Records;
import boardside.app.record.TryRates;
import boardside.engine.rules.Drill;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command says what the page says, from the same call. */
class RatesCommandTest {
    private static final LocalDate DAY = LocalDate.parse("2026-05-31");

    @TempDir
    Path folder;

    @Test
    void saysTheSameAsTheRecords() throws Exception {
        String store = folder.resolve("store.db").toString();
        TryRates.Answer answer;
        try (Records records = Records.open(store)) {
            int player = Demo.fill(records, DAY).id();
            answer = TryRates.of(records, player, Drill.SITUATION, DAY, EnumSet.of(TryRates.By.BAG));
        }
        Ran ran = Ran.of("rates", "situation", "--by", "bag", "--as-of", "2026-05-31", "--data", store, "--json");
        assertThat(ran.status()).isZero();
        JsonNode json = new JsonMapper().readTree(ran.out());
        assertThat(json.path("rates")).hasSize(answer.rows().size());
        for (int i = 0; i < answer.rows().size(); i++) {
            JsonNode rate = json.path("rates").get(i);
            assertThat(rate.path("rate").path("low").asDouble())
                    .isCloseTo(answer.rows().get(i).rate().low(), within(1e-12));
            assertThat(rate.path("tries").asInt())
                    .isEqualTo(answer.rows().get(i).tries());
            assertThat(rate.path("bag").asText()).isNotEmpty();
        }
        assertThat(json.path("preferences")).isNotEmpty();
        assertThat(json.path("chains").get(0).path("shots")).hasSize(3);
        Ran words = Ran.of("rates", "placement", "--as-of", "2026-05-31", "--data", store);
        assertThat(words.out()).contains("1-middle: ").contains(" worked");
    }

    @Test
    void saysWhatIsWrongAndWhenThereIsNothing() {
        String store = folder.resolve("empty.db").toString();
        Ran nothing = Ran.of("rates", "placement", "--data", store);
        assertThat(nothing.status()).isIn(1, 2);
        Ran wrong = Ran.of("rates", "total", "--data", store);
        assertThat(wrong.status()).isEqualTo(2);
        assertThat(wrong.err()).contains("placement or situation");
    }
}
