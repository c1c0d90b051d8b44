package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.League;
import boardside.app.record.LeagueState;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Leagues that somebody else runs and the player throws in. */
@Command(
        name = "league",
        synopsisSubcommandLabel = "WHAT",
        description =
                "Leagues you throw in from home: fixtures, results, the table, what you need and how likely it is.")
final class LeagueCommand extends Family {
    private LeagueCommand() {
        super("say what about leagues");
    }

    /** The command with all it can do. */
    static CommandLine in(Context context) {
        return new LeagueCommand()
                .with(List.of(
                        new LeagueListCommand(context),
                        new LeagueNewCommand(context),
                        new LeaguePostCommand(context),
                        new LeagueTableCommand(context),
                        new LeagueForecastCommand(context),
                        new LeagueChanceCommand(context),
                        new LeagueChatCommand(context),
                        new LeagueScheduleCommand(context)));
    }

    /** The league of a name. */
    static LeagueState named(Context context, int player, String name) {
        List<LeagueState> all = context.records().leagues().all(player);
        return all.stream()
                .filter(state -> state.league().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Failure.NotFound("there is no league \"" + name + "\""
                        + (all.isEmpty()
                                ? "; make one with: boardside league new NAME"
                                : "; there are "
                                        + all.stream()
                                                .map(LeagueState::league)
                                                .map(League::name)
                                                .collect(Collectors.joining(", ")))));
    }

    /** Which match of one's own. */
    static final class Against {
        @Option(
                names = "--opponent",
                paramLabel = "NAME",
                description = "Which match: who is on the other side; the next to throw unless said.")
        private @Nullable String opponent;

        @Option(names = "--week", paramLabel = "N", description = "In which week, where there are several.")
        private @Nullable Integer week;

        Fixture match(LeagueState state) {
            String me = state.league().me();
            String other = opponent;
            List<Fixture> of = (other == null ? state.toThrow() : state.fixtures())
                    .stream()
                            .filter(fixture -> fixture.has(me)
                                    && (other == null || fixture.against(me).equalsIgnoreCase(other))
                                    && (week == null || fixture.week() == week))
                            .toList();
            if (of.isEmpty()) {
                throw new Failure.NotFound(
                        other == null
                                ? "no match of " + me + " is left to throw" + (week == null ? "" : " in week " + week)
                                : "there is no match of " + me + " against \"" + other + "\""
                                        + (week == null ? "" : " in week " + week));
            }
            if (other != null && of.size() > 1) {
                throw new Failure.BadInput("there are " + of.size() + " matches against " + other + "; add --week");
            }
            return of.get(0);
        }
    }
}
