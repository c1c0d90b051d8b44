package boardside.app.cli;

import boardside.app.json.Json;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Records;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.PrintStream;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** What every subcommand shares: the global options, the store they name, and where answers go. */
final class Context implements AutoCloseable {
    private final Surroundings surroundings;
    private @Nullable Records records;

    @Option(
            names = "--data",
            paramLabel = "STORE",
            scope = ScopeType.INHERIT,
            description = "The store: path of a file (a missing one is created) or a jdbc:postgresql: URL.")
    private @Nullable String data;

    @Option(
            names = "--player",
            paramLabel = "NAME",
            scope = ScopeType.INHERIT,
            description = "Whose records; needed only where the store holds several players.")
    private @Nullable String player;

    @Option(names = "--json", scope = ScopeType.INHERIT, description = "Answer in JSON, alone on standard output.")
    private boolean json;

    @Option(names = "--quiet", scope = ScopeType.INHERIT, description = "Say nothing but answers and faults.")
    private boolean quiet;

    Context(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    Surroundings surroundings() {
        return surroundings;
    }

    PrintStream out() {
        return surroundings.out();
    }

    boolean json() {
        return json;
    }

    boolean quiet() {
        return quiet;
    }

    /** Whether to show how far a long work has got. */
    boolean showsProgress() {
        return surroundings.terminal() && !quiet;
    }

    /** Says something to the person, unless they want quiet. */
    void say(String text) {
        if (!quiet) {
            surroundings.err().println(text);
        }
    }

    /** Answers in words, or with --json as the value. */
    void answer(Object value, String words) {
        if (!json) {
            if (!words.isEmpty()) {
                out().println(words);
            }
            return;
        }
        try {
            out().println(Json.MAPPER.writeValueAsString(value));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Location of the store the options name. */
    String location() {
        return data == null ? Records.defaultLocation(surroundings.environment()) : data;
    }

    /** The store, opened on first use and closed with the command. */
    Records records() {
        if (records == null) {
            records = Records.open(location());
        }
        return records;
    }

    /**
     * The same, after a look whether its file is whole.
     *
     * @throws Failure.StoreUnusable if it is damaged; the file is as it was
     */
    Records soundRecords() {
        Records.verify(location());
        return records();
    }

    /**
     * The player the options name, for reading.
     *
     * @throws Failure.BadInput if there is none of that name, or several and none was named
     */
    Player player() {
        List<Player> players = records().players();
        String name = player;
        if (name == null) {
            if (players.size() > 1) {
                throw new Failure.BadInput("the store holds several players; add --player with one of " + names());
            }
            return players.isEmpty() ? records().firstPlayer() : players.get(0);
        }
        return player(name);
    }

    /**
     * The player of a name.
     *
     * @throws Failure.BadInput if there is none
     */
    Player player(String name) {
        return records()
                .player(name)
                .orElseThrow(() -> new Failure.BadInput(
                        names().isEmpty()
                                ? "the store is empty; there is no player \"" + name + "\" yet"
                                : "there is no player \"" + name + "\"; the store holds " + names()));
    }

    /** The same for writing: a new name makes a player. */
    Player writingPlayer() {
        String name = player;
        if (name == null || records().player(name).isPresent()) {
            return player();
        }
        Player added = records().addPlayer(name, Player.Hand.RIGHT, Player.Hand.LEFT);
        say("New player: " + added.name());
        return added;
    }

    private String names() {
        return String.join(", ", records().playerNames());
    }

    @Override
    public void close() {
        if (records != null) {
            records.close();
        }
    }
}
