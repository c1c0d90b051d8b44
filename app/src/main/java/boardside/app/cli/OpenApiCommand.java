package boardside.app.cli;

import boardside.app.json.Json;
import boardside.app.web.OpenApi;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What the web interface is, for programs; the same as a server answers at {@code /openapi.json}. */
@Command(
        name = "openapi",
        description = "The web interface described for programs (OpenAPI 3.1): JSON, in one line with --json.")
final class OpenApiCommand implements Callable<Integer> {
    private final Context context;

    @Option(names = "--hosted", description = "As it is in hosted mode; in a household unless said.")
    private boolean hosted;

    OpenApiCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() throws JsonProcessingException {
        Map<String, Object> document = OpenApi.document(hosted);
        context.answer(document, Json.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(document));
        return Cli.DONE;
    }
}
