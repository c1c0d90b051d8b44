package boardside.app.cli;

import boardside.app.practice.Fixture;
import boardside.app.practice.Player;
import boardside.app.record.LeagueState;
import boardside.app.web.MatchText;
import boardside.app.web.Texts;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** A match as text for the league's chat. */
@Command(name = "chat", description = "A match as plain text, to paste into the league's chat.")
final class LeagueChatCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "LEAGUE", description = "Name of the league.")
    private String league = "";

    @Mixin
    private final LeagueCommand.Against against = new LeagueCommand.Against();

    LeagueChatCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        LeagueState state = LeagueCommand.named(context, player.id(), league);
        Fixture fixture = against.match(state);
        String text = new MatchText(Texts.in("en")).of(context.records(), player.id(), state, fixture);
        context.answer(Map.of("text", text), text);
        return Cli.DONE;
    }
}
