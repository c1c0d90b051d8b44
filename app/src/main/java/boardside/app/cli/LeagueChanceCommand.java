package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.Player;
import boardside.app.record.LeagueNight;
import boardside.app.record.LeagueState;
import boardside.engine.league.Reach;
import boardside.engine.skill.Interval;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a game of a match needs and how likely it is to be won. */
@Command(
        name = "chance",
        description = {
            "What a game of a match still needs, and the chance to win it.",
            "By your records before the match and the points thrown in it; without a posted total, by what the other"
                    + " side posted elsewhere."
        })
final class LeagueChanceCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "LEAGUE", description = "Name of the league.")
    private String league = "";

    @Mixin
    private final LeagueCommand.Against against = new LeagueCommand.Against();

    @Option(names = "--game", paramLabel = "N", description = "Which game; the next to throw unless said.")
    private @Nullable Integer game;

    @Option(names = "--thrown", paramLabel = "POINTS", description = "Points thrown so far; as recorded unless said.")
    private @Nullable Integer thrown;

    @Option(names = "--left", paramLabel = "ROUNDS", description = "Rounds still to throw; as recorded unless said.")
    private @Nullable Integer left;

    LeagueChanceCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        LeagueState state = LeagueCommand.named(context, player.id(), league);
        Fixture fixture = against.match(state);
        int number = number(state, fixture);
        FixtureRun run = state.thrown(fixture.id(), number).orElse(null);
        int rounds = state.league().rounds();
        int points = thrown != null ? thrown : run == null || run.points() == null ? 0 : run.points();
        int open = left != null ? left : rounds - (run == null ? 0 : run.rounds());
        if (!(open >= 0 && open <= rounds)) {
            throw new Failure.BadInput(
                    "--left: a game has " + rounds + " rounds, so 0 to " + rounds + " are left, not " + open);
        }
        LeagueNight night = LeagueNight.of(
                context.records(),
                player.id(),
                state,
                fixture.id(),
                LocalDate.now(context.surroundings().clock()));
        LeagueNight.Standing standing = night.standing(state, fixture, number, points, open)
                .orElseThrow(() -> new Failure.NotFound(
                        "there are no counted rounds of " + player.name() + " to take chances from; record some"));
        return tell(state, fixture, number, standing);
    }

    private int number(LeagueState state, Fixture fixture) {
        Integer asked = game;
        int games = state.league().games();
        if (asked != null) {
            if (!(asked >= 1 && asked <= games)) {
                throw new Failure.BadInput("--game: a match of this league has games 1 to " + games + ", not " + asked);
            }
            return asked;
        }
        for (int number = 1; number <= games; number++) {
            if (state.mine(fixture, number).first() == null) {
                return number;
            }
        }
        return games;
    }

    private Integer tell(LeagueState state, Fixture fixture, int number, LeagueNight.Standing standing) {
        String opponent = fixture.against(state.league().me());
        Integer posted = state.mine(fixture, number).second();
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("opponent", opponent);
        answer.put("game", number);
        answer.put("thrown", standing.thrown());
        answer.put("left", standing.left());
        answer.put("posted", posted);
        answer.put(
                "goingBy",
                standing.rival()
                        .source()
                        .name()
                        .toLowerCase(java.util.Locale.ROOT)
                        .replace('_', '-'));
        String words = "Game " + number + " against " + opponent + ": " + Words.count(standing.thrown(), "point") + ", "
                + Words.count(standing.left(), "round") + " left.";
        if (posted != null) {
            int need = Math.max(0, posted + 1 - standing.thrown());
            answer.put("need", need);
            answer.put("pace", standing.left() == 0 ? null : (Double) (need / (double) standing.left()));
            words += "\n" + opponent + " posted " + posted + ": " + Words.count(need, "more point") + " beat"
                    + (need == 1 ? "s" : "") + " it"
                    + (standing.left() == 0
                            ? "."
                            : ", " + OddsWords.number(need / (double) standing.left()) + " a round.");
        }
        Reach.Game chances = standing.chances();
        if (chances != null) {
            Interval win = interval(chances.win());
            answer.put("win", win);
            answer.put("tieOrWin", interval(chances.tieOrWin()));
            words += "\nYou win it " + OddsWords.percent(win) + " of the time"
                    + switch (standing.rival().source()) {
                        case POSTED -> ".";
                        case THEIRS ->
                            ", going by " + Words.count(standing.rival().totals(), "total") + " they posted.";
                        case LEAGUE -> ", if they throw like others in this league.";
                        case LIKE_ME -> ", if they throw like you.";
                    };
        }
        context.answer(answer, words);
        return Cli.DONE;
    }

    private static Interval interval(Reach.Chance chance) {
        return new Interval(chance.likely(), chance.low(), chance.high());
    }
}
