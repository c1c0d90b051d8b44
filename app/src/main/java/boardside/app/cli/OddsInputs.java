package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
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

        BagChances bag() {
            return checked("--in, --on", () -> new BagChances(in, on));
        }

        RoundDistribution round() {
            return RoundDistribution.of(bag());
        }
    }

    /** Who is on the other side. */
    static final class Versus {
        @Option(names = "--ghost", paramLabel = "POINTS", description = "Against a ghost's points a round, 0 to 12.")
        private @Nullable Integer ghost;

        @Option(names = "--versus-in", paramLabel = "P", description = "Or against an opponent: the chance of in.")
        private @Nullable Double in;

        @Option(names = "--versus-on", paramLabel = "P", description = "The opponent's chance of on.")
        private @Nullable Double on;

        boolean given() {
            return ghost != null || in != null || on != null;
        }

        RoundDistribution round() {
            Integer points = ghost;
            Double versusIn = in;
            Double versusOn = on;
            if (points != null && (versusIn != null || versusOn != null)) {
                throw new Failure.BadInput(
                        "--ghost and --versus-in, --versus-on are two opponents; leave one of them out");
            }
            if (points != null) {
                return checked("--ghost", () -> RoundDistribution.ghost(points));
            }
            if (versusIn == null || versusOn == null) {
                throw new Failure.BadInput(
                        given()
                                ? "an opponent takes both --versus-in and --versus-on; add the other"
                                : "say against whom: add --ghost N, or --versus-in P and --versus-on P");
            }
            return checked("--versus-in, --versus-on", () -> RoundDistribution.of(new BagChances(versusIn, versusOn)));
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
