package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.web.OpenApi;
import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

class OpenApiCommandTest {
    @Test
    void writesWhatAServerAnswers() {
        Ran household = Ran.of("--json", "openapi");
        assertThat(household.status()).isZero();
        assertThat(household.out().strip()).isEqualTo(Json.write(OpenApi.document(false)));

        Ran hosted = Ran.of("openapi", "--hosted");
        assertThat(hosted.out().lines().count()).isGreaterThan(1000);
        assertThat(Json.read(hosted.out(), JsonNode.class))
                .isEqualTo(Json.read(Json.write(OpenApi.document(true)), JsonNode.class));
    }
}
