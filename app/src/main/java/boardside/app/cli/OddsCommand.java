package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Climb;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.odds.Level;
import boardside.engine.odds.Match;
import boardside.engine.odds.Race;
import boardside.engine.odds.RaceAnswer;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.odds.Worth;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import com.fasterxml.jackson.databind.node.NullNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Exact chances from given chances of one bag; knows no records and opens no store. */
@Command(
        name = "odds",
        synopsisSubcommandLabel = "QUESTION",
        description =
                "Exact chances: races, totals, the climb, league matches, head starts, what a better bag is worth.")
final class OddsCommand implements Callable<Integer> {
    @Spec
    private @Nullable CommandSpec spec;

    private OddsCommand() {}

    /** The command with its questions. */
    static CommandLine in(Context context) {
        CommandLine line = new CommandLine(new OddsCommand());
        for (Callable<Integer> question : List.of(
                new RaceQuestion(context),
                new TotalQuestion(context),
                new ClimbQuestion(context),
                new MatchQuestion(context),
                new HeadStartQuestion(context),
                new WorthQuestion(context))) {
            line.addSubcommand(question);
        }
        return line;
    }

    @Override
    public Integer call() {
        CommandLine line = java.util.Objects.requireNonNull(spec).commandLine();
        throw new CommandLine.ParameterException(
                line,
                "say which odds: one of "
                        + String.join(", ", line.getSubcommands().keySet()));
    }

    /** A chance for people: never 0 or 100 % unless it is. */
    private static String percent(double chance) {
        double percent = 100 * chance;
        if (percent > 0 && percent < 0.1) {
            return "less than 0.1 %";
        }
        if (percent > 99.9 && percent < 100 - 1e-9) {
            return "more than 99.9 %";
        }
        return number(percent) + " %";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    @Command(name = "race", description = "The chance to win a race, from any score.")
    private static final class RaceQuestion implements Callable<Integer> {
        private static final Pattern SCORE = Pattern.compile("(\\d{1,3})-(\\d{1,3})");

        private final Context context;

        @Mixin
        private final OddsInputs.Mine mine = new OddsInputs.Mine();

        @Mixin
        private final OddsInputs.Versus versus = new OddsInputs.Versus();

        @Mixin
        private final OddsInputs.Variants variants = new OddsInputs.Variants();

        @Option(names = "--from", paramLabel = "A-B", description = "The score, mine first; 0-0 unless said.")
        private String from = "0-0";

        RaceQuestion(Context context) {
            this.context = context;
        }

        @Override
        public Integer call() {
            BagChances bag = mine.bag();
            RoundDistribution me = mine.round();
            RoundDistribution other = versus.round();
            GameRules rules = variants.rules();
            Matcher score = SCORE.matcher(from);
            if (!score.matches()) {
                throw new Failure.BadInput(
                        "--from: write the score as mine-theirs, such as 14-9, not \"" + from + "\"");
            }
            RaceAnswer answer = OddsInputs.checked(
                    "--from",
                    () -> Race.solve(rules, me, other)
                            .from(Integer.parseInt(score.group(1)), Integer.parseInt(score.group(2)), true));
            if (answer instanceof RaceAnswer.Endless endless) {
                throw new Failure.BadInput("this race may never end: " + endless.reason()
                        + "; ask with other chances, another opponent or other rules");
            }
            RaceAnswer.Ends ends = (RaceAnswer.Ends) answer;
            double level = Level.of(rules, me).value();
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("winProbability", ends.winProbability());
            json.put("expectedRounds", ends.expectedRounds());
            json.put("pointsPerRound", bag.pointsPerRound());
            json.put("level", level);
            context.answer(
                    json,
                    "If these chances hold, you win this race with a chance of " + percent(ends.winProbability())
                            + "; it takes " + number(ends.expectedRounds()) + " more rounds on average.\n"
                            + "You make " + number(bag.pointsPerRound())
                            + " points a round; you would be even with a ghost of " + number(level) + ".");
            return Cli.DONE;
        }
    }

    @Command(name = "total", description = "What a number of rounds gives, and how unusual a total is.")
    private static final class TotalQuestion implements Callable<Integer> {
        private static final double[] QUANTILES = {0.05, 0.25, 0.5, 0.75, 0.95};

        private final Context context;

        @Mixin
        private final OddsInputs.Mine mine = new OddsInputs.Mine();

        @Option(names = "--rounds", paramLabel = "N", description = "Rounds of four; 10 unless said.")
        private int rounds = 10;

        @Option(names = "--at-least", paramLabel = "POINTS", description = "How often so many points or more come up.")
        private @Nullable Integer atLeast;

        TotalQuestion(Context context) {
            this.context = context;
        }

        @Override
        public Integer call() {
            RoundDistribution round = mine.round();
            Total total = OddsInputs.checked("--rounds", () -> Total.of(round, rounds));
            Map<String, Integer> quantiles = new LinkedHashMap<>();
            for (double q : QUANTILES) {
                quantiles.put(Double.toString(q), total.quantile(q));
            }
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("mean", total.mean());
            json.put("standardDeviation", total.standardDeviation());
            json.put("quantiles", quantiles);
            String words = "If these chances hold, " + (rounds == 1 ? "1 round gives " : rounds + " rounds give ")
                    + number(total.mean()) + " points on average, give or take " + number(total.standardDeviation())
                    + ".\nHalf the time it is " + total.quantile(0.25) + " to " + total.quantile(0.75)
                    + ", nine times in ten " + total.quantile(0.05) + " to " + total.quantile(0.95) + ".";
            Integer points = atLeast;
            if (points != null) {
                double chance = total.atLeast(points);
                Map<String, Object> answer = new LinkedHashMap<>();
                answer.put("points", points);
                answer.put("probability", chance);
                json.put("atLeast", answer);
                words += "\n" + points + " or more comes up with a chance of " + percent(chance) + ".";
            }
            context.answer(json, words);
            return Cli.DONE;
        }
    }

    @Command(name = "climb", description = "Where races up and down the ghost ladder settle.")
    private static final class ClimbQuestion implements Callable<Integer> {
        private final Context context;

        @Mixin
        private final OddsInputs.Mine mine = new OddsInputs.Mine();

        @Mixin
        private final OddsInputs.Variants variants = new OddsInputs.Variants();

        @Option(names = "--lowest", paramLabel = "POINTS", description = "Ghost of the lowest rung; 0 unless said.")
        private int lowest = 0;

        @Option(names = "--highest", paramLabel = "POINTS", description = "Ghost of the highest rung; 12 unless said.")
        private int highest = RoundDistribution.MOST;

        ClimbQuestion(Context context) {
            this.context = context;
        }

        @Override
        public Integer call() {
            RoundDistribution me = mine.round();
            GameRules rules = variants.rules();
            Climb climb = OddsInputs.checked("--lowest, --highest", () -> Climb.of(rules, me, lowest, highest));
            double level = Level.of(rules, me).value();
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("level", level);
            json.put("stationary", climb.stationary());
            json.put("mean", climb.mean());
            json.put("mode", climb.mode());
            context.answer(json, words(climb, level));
            return Cli.DONE;
        }

        private String words(Climb climb, double level) {
            String words = "If these chances hold, you would be even with a ghost of " + number(level)
                    + "; the climb settles around ghost " + number(climb.mean()) + " and meets ghost " + climb.mode()
                    + " most often.\n";
            double first = climb.gamesToFirstLoss();
            words += first < 1e6
                    ? "From ghost " + lowest + " the first loss comes after " + number(first) + " games on average."
                    : "From ghost " + lowest + " no loss is in sight.";
            OptionalInt pin = climb.gamesToPin(level, 1, 0.9);
            return pin.isEmpty()
                    ? words
                    : words + "\nThe mean ghost of the next " + pin.getAsInt()
                            + " games lies within one of your level nine times in ten.";
        }
    }

    @Command(name = "match", description = "A league match: games of a number of rounds, the higher total wins.")
    private static final class MatchQuestion implements Callable<Integer> {
        private final Context context;

        @Mixin
        private final OddsInputs.Mine mine = new OddsInputs.Mine();

        @Mixin
        private final OddsInputs.Versus versus = new OddsInputs.Versus();

        @Option(names = "--games", paramLabel = "N", description = "Games of the match; 3 unless said.")
        private int games = 3;

        @Option(names = "--rounds", paramLabel = "N", description = "Rounds of a game; 10 unless said.")
        private int rounds = 10;

        @Option(names = "--win", paramLabel = "POINTS", description = "League points for a win; 2 unless said.")
        private int win = LeaguePoints.STANDARD.win();

        @Option(names = "--tie", paramLabel = "POINTS", description = "League points for a tie; 1 unless said.")
        private int tie = LeaguePoints.STANDARD.tie();

        @Option(names = "--loss", paramLabel = "POINTS", description = "League points for a loss; 0 unless said.")
        private int loss = LeaguePoints.STANDARD.loss();

        MatchQuestion(Context context) {
            this.context = context;
        }

        @Override
        public Integer call() {
            RoundDistribution me = mine.round();
            RoundDistribution other = versus.round();
            LeaguePoints points = OddsInputs.checked("--win, --tie, --loss", () -> new LeaguePoints(win, tie, loss));
            Match match = OddsInputs.checked("--rounds, --games", () -> Match.of(me, other, rounds, games, points));
            Map<String, Double> game = new LinkedHashMap<>();
            game.put("win", match.win());
            game.put("tie", match.tie());
            game.put("loss", match.loss());
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("game", game);
            json.put("expectedPoints", match.expectedPoints());
            json.put("points", match.byPoints());
            StringBuilder words = new StringBuilder("If these chances hold, you win a game with a chance of "
                    + percent(match.win()) + ", tie it with " + percent(match.tie()) + " and lose it with "
                    + percent(match.loss()) + ".\nThe match gives you " + number(match.expectedPoints())
                    + " league points on average:");
            match.byPoints()
                    .forEach((sum, chance) -> words.append("\n  ")
                            .append(sum)
                            .append(sum == 1 ? " point: " : " points: ")
                            .append(percent(chance)));
            context.answer(json, words.toString());
            return Cli.DONE;
        }
    }

    @Command(name = "head-start", description = "Points for the weaker side that bring a race nearest to even.")
    private static final class HeadStartQuestion implements Callable<Integer> {
        private final Context context;

        @Mixin
        private final OddsInputs.Mine mine = new OddsInputs.Mine();

        @Mixin
        private final OddsInputs.Versus versus = new OddsInputs.Versus();

        @Mixin
        private final OddsInputs.Variants variants = new OddsInputs.Variants();

        HeadStartQuestion(Context context) {
            this.context = context;
        }

        @Override
        public Integer call() {
            HeadStart start = HeadStart.of(Race.solve(variants.rules(), mine.round(), versus.round()));
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("headStart", start.points());
            json.put("to", start.to().word());
            json.put("winProbability", start.winProbability());
            String chance = "you win with a chance of " + percent(start.winProbability()) + ".";
            context.answer(
                    json,
                    start.points() == 0
                            ? "If these chances hold, no head start comes nearer to even than none: " + chance
                            : "If these chances hold, " + start.points() + (start.points() == 1 ? " point" : " points")
                                    + " for " + (start.to() == Side.ME ? "you" : "the other side")
                                    + " from the start come nearest to even: " + chance);
            return Cli.DONE;
        }
    }

    @Command(name = "worth", description = "What it adds to the chance of winning when one bag in a hundred moves.")
    private static final class WorthQuestion implements Callable<Integer> {
        private final Context context;

        @Mixin
        private final OddsInputs.Mine mine = new OddsInputs.Mine();

        @Mixin
        private final OddsInputs.Versus versus = new OddsInputs.Versus();

        @Mixin
        private final OddsInputs.Variants variants = new OddsInputs.Variants();

        @Option(names = "--of", paramLabel = "WHAT", description = "race (unless said), match or total.")
        private String of = "race";

        @Option(names = "--games", paramLabel = "N", description = "Games of a match; 3 unless said.")
        private @Nullable Integer games;

        @Option(names = "--rounds", paramLabel = "N", description = "Rounds of a game or total; 10 unless said.")
        private @Nullable Integer rounds;

        @Option(names = "--at-least", paramLabel = "POINTS", description = "The total that counts as won.")
        private @Nullable Integer atLeast;

        WorthQuestion(Context context) {
            this.context = context;
        }

        @Override
        public Integer call() {
            BagChances bag = mine.bag();
            Worth worth = OddsInputs.checked("--rounds, --games", () -> Worth.of(bag, chance()));
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("winProbability", worth.winProbability());
            json.put("offToOn", json(worth.offToOn()));
            json.put("onToIn", json(worth.onToIn()));
            json.put("offToIn", json(worth.offToIn()));
            context.answer(
                    json,
                    "If these chances hold, you " + won() + " with a chance of " + percent(worth.winProbability())
                            + ".\nWhen one bag in a hundred moves, that changes by (in percentage points):"
                            + "\n  from off to on  " + words(worth.offToOn())
                            + "\n  from on to in   " + words(worth.onToIn())
                            + "\n  from off to in  " + words(worth.offToIn()));
            return Cli.DONE;
        }

        private String won() {
            return switch (of) {
                case "match" -> "come out ahead in the match, an even one counted half,";
                case "total" -> "reach " + atLeast + " points or more";
                default -> "win the race";
            };
        }

        private ToDoubleFunction<BagChances> chance() {
            switch (of) {
                case "race" -> {
                    refuse(games != null || rounds != null || atLeast != null, "--games, --rounds and --at-least");
                    RoundDistribution other = versus.round();
                    GameRules rules = variants.rules();
                    return bag ->
                            Race.solve(rules, RoundDistribution.of(bag), other).winOrHalf(0, 0, true);
                }
                case "match" -> {
                    refuse(variants.given() || atLeast != null, "--at-least and the variants of a race");
                    RoundDistribution other = versus.round();
                    return bag -> Match.of(
                                    RoundDistribution.of(bag),
                                    other,
                                    rounds(),
                                    games == null ? 3 : games,
                                    LeaguePoints.STANDARD)
                            .ahead();
                }
                case "total" -> {
                    refuse(
                            variants.given() || versus.given() || games != null,
                            "an opponent, --games and the variants of a race");
                    Integer points = atLeast;
                    if (points == null) {
                        throw new Failure.BadInput("a total is won by reaching some points; add --at-least N");
                    }
                    return bag -> Total.of(RoundDistribution.of(bag), rounds()).atLeast(points);
                }
                default ->
                    throw new Failure.BadInput("--of: \"" + of + "\" is none of race, match, total; use one of these");
            }
        }

        private void refuse(boolean given, String options) {
            if (given) {
                throw new Failure.BadInput(options + " do not go with --of " + of + "; leave them out");
            }
        }

        private int rounds() {
            return rounds == null ? 10 : rounds;
        }

        private static Object json(OptionalDouble gain) {
            return gain.isPresent() ? gain.getAsDouble() : NullNode.getInstance();
        }

        private static String words(OptionalDouble gain) {
            return gain.isPresent()
                    ? String.format(Locale.ROOT, "%+.2f", 100 * gain.getAsDouble())
                    : "(fewer than one in a hundred can)";
        }
    }
}
