package boardside.app.cli;

import boardside.app.cli.OddsChances.Answers;
import boardside.app.practice.Failure;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.odds.Match;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.odds.Worth;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.Interval;
import com.fasterxml.jackson.databind.node.NullNode;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What it adds to the chance of winning when one bag in a hundred moves. */
@Command(name = "worth", description = "What it adds to the chance of winning when one bag in a hundred moves.")
final class WorthQuestion implements Callable<Integer> {
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
        Asked asked = asked();
        OddsChances chances = mine.chances(context, versus.fromRecords());
        Answers<Worth> worths =
                OddsInputs.checked("--rounds, --games", () -> chances.ask(bag -> Worth.of(bag, asked.chance())));
        Worth worth = worths.likely();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("winProbability", worth.winProbability());
        json.put("offToOn", json(worth.offToOn()));
        json.put("onToIn", json(worth.onToIn()));
        json.put("offToIn", json(worth.offToIn()));
        if (!(chances instanceof OddsChances.Found found)) {
            context.answer(
                    json,
                    "If these chances hold, you " + won() + " with a chance of "
                            + OddsWords.percent(worth.winProbability())
                            + moves(words(worth.offToOn()), words(worth.onToIn()), words(worth.offToIn())));
            return Cli.DONE;
        }
        Interval win = worths.range(Worth::winProbability);
        Optional<Interval> offToOn = gain(worths, Worth::offToOn);
        Optional<Interval> onToIn = gain(worths, Worth::onToIn);
        Optional<Interval> offToIn = gain(worths, Worth::offToIn);
        Map<String, Object> ranges = new LinkedHashMap<>();
        ranges.put("winProbability", win);
        ranges.put("offToOn", json(offToOn));
        ranges.put("onToIn", json(onToIn));
        ranges.put("offToIn", json(offToIn));
        found.tell(json, ranges);
        context.answer(
                json,
                asked.whom() + won(OddsWords.percent(win)) + moves(words(offToOn), words(onToIn), words(offToIn)));
        return Cli.DONE;
    }

    private static String moves(String offToOn, String onToIn, String offToIn) {
        return ".\nWhen one bag in a hundred moves, that changes by (in percentage points):"
                + "\n  from off to on  " + offToOn
                + "\n  from on to in   " + onToIn
                + "\n  from off to in  " + offToIn;
    }

    private String won(String share) {
        return switch (of) {
            case "match" -> "come out ahead in " + share + " of matches, an even one counted half";
            case "total" ->
                "reach " + atLeast + " points or more in " + share + " of totals of " + Words.count(rounds(), "round");
            default -> "win " + share + " of races";
        };
    }

    /** What a move gains, over all chances that the records leave open; empty where it cannot be made at one of them. */
    private static Optional<Interval> gain(Answers<Worth> worths, Function<Worth, OptionalDouble> move) {
        return worths.all().stream().map(move).allMatch(OptionalDouble::isPresent)
                ? Optional.of(worths.range(worth -> move.apply(worth).orElseThrow()))
                : Optional.empty();
    }

    private String won() {
        return switch (of) {
            case "match" -> "come out ahead in the match, an even one counted half,";
            case "total" -> "reach " + atLeast + " points or more";
            default -> "win the race";
        };
    }

    /** The chance whose gain is asked for, and how a sentence about it begins. */
    private record Asked(String whom, ToDoubleFunction<BagChances> chance) {}

    private Asked asked() {
        switch (of) {
            case "race" -> {
                refuse(games != null || rounds != null || atLeast != null, "--games, --rounds and --at-least");
                OddsInputs.Opponent other = versus.opponent(context, mine);
                GameRules rules = variants.rules();
                return new Asked(
                        "Against " + other.name() + " you ",
                        bag -> Race.solve(rules, RoundDistribution.of(bag), other.rounds())
                                .winOrHalf(0, 0, true));
            }
            case "match" -> {
                refuse(variants.given() || atLeast != null, "--at-least and the variants of a race");
                OddsInputs.Opponent other = versus.opponent(context, mine);
                return new Asked(
                        "Against " + other.name() + " you ",
                        bag -> Match.of(
                                        RoundDistribution.of(bag),
                                        other.rounds(),
                                        rounds(),
                                        games == null ? 3 : games,
                                        LeaguePoints.STANDARD)
                                .ahead());
            }
            case "total" -> {
                refuse(
                        variants.given() || versus.given() || games != null,
                        "an opponent, --games and the variants of a race");
                Integer points = atLeast;
                if (points == null) {
                    throw new Failure.BadInput("a total is won by reaching some points; add --at-least N");
                }
                return new Asked(
                        "You ",
                        bag -> Total.of(RoundDistribution.of(bag), rounds()).atLeast(points));
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

    private static Object json(Optional<Interval> gain) {
        return gain.isPresent() ? gain.get() : NullNode.getInstance();
    }

    private static String words(Optional<Interval> gain) {
        return gain.map(range -> String.format(
                        Locale.ROOT,
                        "%+.2f (%+.2f to %+.2f)",
                        100 * range.estimate(),
                        100 * range.low(),
                        100 * range.high()))
                .orElse("(fewer than one in a hundred can)");
    }

    private static String words(OptionalDouble gain) {
        return gain.isPresent()
                ? String.format(Locale.ROOT, "%+.2f", 100 * gain.getAsDouble())
                : "(fewer than one in a hundred can)";
    }
}
