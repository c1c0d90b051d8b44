package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.HostedSeasons;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Who plays in a season. */
@Command(name = "players", description = "Who plays in a season; let somebody go or in, or give a place another name.")
final class SeasonPlayersCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @ArgGroup
    private @Nullable What what;

    @Option(
            names = "--division",
            paramLabel = "NAME",
            description = "Where a newcomer comes in; the first unless said.")
    private @Nullable String division;

    /** What happens to whom. */
    static final class What {
        @Option(
                names = "--leave",
                paramLabel = "NAME",
                description = "Leaves the season: before half their matches nothing of theirs counts, later the rest is"
                        + " forfeited.")
        private @Nullable String leave;

        @Option(names = "--join", paramLabel = "NAME", description = "Comes late, in the place of the bye.")
        private @Nullable String join;

        @Option(
                names = "--rename",
                arity = "2",
                paramLabel = "NAME",
                description = "A player's name and the new one; also for somebody who takes over.")
        private @Nullable List<String> rename;

        @Option(
                names = "--account",
                arity = "2",
                paramLabel = "NAME",
                description =
                        "In hosted mode: a player's name and whose account they are, who then tells their totals; \"\""
                                + " for nobody's.")
        private @Nullable List<String> account;
    }

    SeasonPlayersCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = changed(SeasonCommand.named(context, name));
        context.answer(
                season.entrants().stream().map(one -> json(season, one)).toList(),
                season.entrants().stream()
                        .map(one -> one.name()
                                + (season.divisions().size() > 1
                                        ? ", " + season.divisions().get(one.division())
                                        : "")
                                + (one.in() ? "" : " (" + one.standing().word() + ")")
                                + (one.seed() > 0 ? ", seed " + one.seed() : "")
                                + (one.player() == null ? "" : "; tells their own totals"))
                        .collect(Collectors.joining("\n")));
        return Cli.DONE;
    }

    private static Map<String, Object> json(Season season, Entrant entrant) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("player", entrant.name());
        one.put("division", season.divisions().get(entrant.division()));
        one.put("number", entrant.number());
        one.put("standing", entrant.standing().word());
        one.put("seed", entrant.seed());
        one.put("tellsTotals", entrant.player() != null);
        return one;
    }

    private Season changed(Season season) {
        HostedSeasons seasons = context.records().seasons();
        What asked = what;
        if (asked == null) {
            return season;
        }
        if (asked.leave != null) {
            return seasons.leave(
                    season.id(), SeasonCommand.entrant(season, asked.leave).id());
        }
        if (asked.join != null) {
            return seasons.join(season.id(), division(season), asked.join);
        }
        if (asked.account != null) {
            String account = asked.account.get(1);
            seasons.link(
                    season.id(),
                    SeasonCommand.entrant(season, asked.account.get(0)).id(),
                    account.isEmpty() ? null : (Integer) player(account));
            return SeasonCommand.named(context, name);
        }
        List<String> names = asked.rename;
        return names == null
                ? season
                : seasons.rename(
                        season.id(), SeasonCommand.entrant(season, names.get(0)).id(), names.get(1));
    }

    /** The first player of an account. */
    private int player(String account) {
        return context.records()
                .accounts()
                .named(account)
                .flatMap(found -> context.records().players(found.id()).stream().findFirst())
                .map(Player::id)
                .orElseThrow(() -> new Failure.NotFound("there is no account \"" + account + "\" with a player"));
    }

    private int division(Season season) {
        String of = division;
        int found = of == null ? 0 : season.divisions().indexOf(of);
        if (found < 0) {
            throw new Failure.NotFound(
                    "there is no division \"" + of + "\"; there are " + String.join(", ", season.divisions()));
        }
        return found;
    }
}
