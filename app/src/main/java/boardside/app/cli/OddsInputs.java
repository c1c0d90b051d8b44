package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Opponents;
import boardside.app.record.Skills;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.Skill;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;

/** Options that questions about odds share. */
final class OddsInputs {
    private OddsInputs() {}

    /** A value, or the engine's words on what is wrong with it, behind the options it came from. */
    static <T> T checked(String options, Supplier<T> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput(options + ": " + e.getMessage());
        }
    }

    /** The player's own bag. */
    static final class Mine {
        @ArgGroup(exclusive = false)
        private @Nullable Given given;

        @Option(
                names = "--as-of",
                paramLabel = "DATE",
                description = "Without --in and --on, the chances are those that your records show, and figures have"
                        + " their range: nine times in ten the truth lies within. This is the last day that counts,"
                        + " such as 2026-05-31; today unless said.")
        private @Nullable LocalDate asOf;

        private static final class Given {
            @Option(
                    names = "--in",
                    required = true,
                    paramLabel = "P",
                    description = "Chance that one bag of yours goes in, 0 to 1.")
            private double in;

            @Option(
                    names = "--on",
                    required = true,
                    paramLabel = "P",
                    description = "Chance that it stays on the board; off is the rest.")
            private double on;
        }

        /** Where nobody's records are asked for but one's own. */
        OddsChances chances(Context context) {
            return chances(context, false);
        }

        /** The chances given, else those of the player's records; {@code versusRecords} if the opponent's come from there. */
        OddsChances chances(Context context, boolean versusRecords) {
            Given bag = given;
            if (bag != null) {
                if (asOf != null && !versusRecords) {
                    throw new Failure.BadInput(
                            "--as-of is the last day of the records that count, and --in and --on ask"
                                    + " no records; leave out one or the other");
                }
                return new OddsChances.Given(checked("--in, --on", () -> new BagChances(bag.in, bag.on)));
            }
            Player player = context.player();
            Skill skill = skill(context, player);
            return new OddsChances.Found(
                    skill,
                    skill.chances()
                            .orElseThrow(() -> new Failure.NotFound("There are no counted rounds of " + player.name()
                                    + " up to " + today(context)
                                    + " to take chances from; record some, or say --in and --on.")));
        }

        private LocalDate today(Context context) {
            return Objects.requireNonNullElseGet(
                    asOf, () -> LocalDate.now(context.surroundings().clock()));
        }

        private Skill skill(Context context, Player player) {
            return Skills.of(context.records(), player.id(), today(context));
        }
    }

    /** Who is on the other side, in words such as "ghost 7", and what they throw. */
    record Opponent(String name, RoundDistribution rounds) {}

    /** Who is on the other side. */
    static final class Versus {
        @Option(names = "--ghost", paramLabel = "POINTS", description = "Against a ghost's points a round, 0 to 12.")
        private @Nullable Integer ghost;

        @Option(names = "--versus-in", paramLabel = "P", description = "Or against an opponent: the chance of in.")
        private @Nullable Double in;

        @Option(names = "--versus-on", paramLabel = "P", description = "The opponent's chance of on.")
        private @Nullable Double on;

        @Option(
                names = "--versus-player",
                paramLabel = "NAME",
                description = "Or against another player of the store, at the likeliest chances.")
        private @Nullable String player;

        @Option(
                names = "--versus-month",
                paramLabel = "YYYY-MM",
                description = "Or against your own past: your full rounds of that month, such as 2026-05.")
        private @Nullable String month;

        boolean given() {
            return !kinds().isEmpty();
        }

        /** Whether records are asked for this opponent. */
        boolean fromRecords() {
            return player != null || month != null;
        }

        private List<String> kinds() {
            List<String> kinds = new ArrayList<>();
            if (ghost != null) {
                kinds.add("--ghost");
            }
            if (in != null || on != null) {
                kinds.add("--versus-in, --versus-on");
            }
            if (player != null) {
                kinds.add("--versus-player");
            }
            if (month != null) {
                kinds.add("--versus-month");
            }
            return kinds;
        }

        Opponent opponent(Context context, Mine mine) {
            List<String> kinds = kinds();
            if (kinds.isEmpty()) {
                throw new Failure.BadInput("say against whom: add --ghost N, --versus-in P and --versus-on P,"
                        + " --versus-player NAME, or --versus-month YYYY-MM");
            }
            if (kinds.size() > 1) {
                throw new Failure.BadInput(
                        kinds.get(0) + " and " + kinds.get(1) + " are two opponents; leave one of them out");
            }
            Integer points = ghost;
            String name = player;
            String past = month;
            if (points != null) {
                return new Opponent("ghost " + points, checked("--ghost", () -> RoundDistribution.ghost(points)));
            }
            if (name != null) {
                return player(context, mine, name);
            }
            return past != null ? month(context, mine, past) : chances();
        }

        private Opponent chances() {
            Double versusIn = in;
            Double versusOn = on;
            if (versusIn == null || versusOn == null) {
                throw new Failure.BadInput("an opponent takes both --versus-in and --versus-on; add the other");
            }
            return new Opponent(
                    "that opponent",
                    checked(
                            "--versus-in, --versus-on",
                            () -> RoundDistribution.of(new BagChances(versusIn, versusOn))));
        }

        private static Opponent player(Context context, Mine mine, String name) {
            Player other = context.player(name);
            if (mine.given == null && other.id() == context.player().id()) {
                throw new Failure.BadInput(
                        "--versus-player: " + other.name()
                                + " is whose odds these are; name another player, or ask for your own past with --versus-month");
            }
            return new Opponent(other.name(), Opponents.player(other, mine.skill(context, other)));
        }

        private static Opponent month(Context context, Mine mine, String text) {
            YearMonth month;
            try {
                month = YearMonth.parse(text);
            } catch (DateTimeException e) {
                throw new Failure.BadInput("--versus-month: \"" + text + "\" is no month; write it like 2026-05");
            }
            Player player = context.player();
            return new Opponent("yourself in " + month, Opponents.month(player, mine.skill(context, player), month));
        }
    }

    /** How a race is won. */
    static final class Variants {
        @Option(names = "--target", paramLabel = "POINTS", description = "Points that win a race; 21 unless said.")
        private @Nullable Integer target;

        @Option(names = "--exact", description = "The target must be hit exactly; who passes it falls back.")
        private boolean exact;

        @Option(
                names = "--fall-back",
                paramLabel = "SCORE",
                description = "Where a side falls back to; 15 unless said, or 6 below a target of 15 or less.")
        private @Nullable Integer fallBack;

        @Option(names = "--skunk", paramLabel = "POINTS", description = "A lead to nil that ends a race early.")
        private @Nullable Integer skunk;

        boolean given() {
            return target != null || exact || fallBack != null || skunk != null;
        }

        GameRules rules() {
            if (fallBack != null && !exact) {
                throw new Failure.BadInput("--fall-back goes with an exact target; add --exact");
            }
            GameRules rules = GameRules.STANDARD;
            Integer points = target;
            if (points != null) {
                rules = checked("--target", () -> GameRules.STANDARD.withTarget(points));
            }
            if (exact && rules.target() > Race.MOST_EXACT) {
                throw new Failure.BadInput(
                        "--target: with --exact it is at most " + Race.MOST_EXACT + " points, not " + rules.target());
            }
            if (exact) {
                GameRules open = rules;
                int score = fallBack == null ? rules.fallBack() : fallBack;
                rules = checked("--fall-back", () -> open.withExact(score));
            }
            Integer lead = skunk;
            if (lead != null) {
                GameRules open = rules;
                rules = checked("--skunk", () -> open.withSkunk(lead));
            }
            return rules;
        }
    }
}
