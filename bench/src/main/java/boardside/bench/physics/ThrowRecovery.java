package boardside.bench.physics;

import boardside.engine.physics.Board;
import boardside.engine.physics.MadeUpThrows;
import boardside.engine.physics.Range;
import boardside.engine.physics.TappedDay;
import boardside.engine.physics.ThrowCount;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowFit.Parameter;
import boardside.engine.physics.ThrowModel;
import boardside.engine.physics.ThrowPrior;
import boardside.engine.physics.ThrowRecords;
import boardside.engine.rules.BoardKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * How often the 90 % ranges of a throw model hold simulated players drawn from the prior, and how wide they are against it,
 * from four kinds of records: counts, + a narrow board's counts, + where misses went, + taps. Records are made by throws
 * through the simulator.
 *
 * <pre>java -cp bench/target/bench.jar boardside.bench.physics.ThrowRecovery [players] [seed]</pre>
 */
public final class ThrowRecovery {
    private static final Board REGULATION = Board.of(BoardKind.REGULATION);
    private static final Board NARROW = Board.of(BoardKind.NARROW);
    private static final ThrowPrior PRIOR = ThrowPrior.of(5, null);
    private static final List<String> KINDS = List.of("counts", "+ narrow board", "+ misses", "+ taps");

    private ThrowRecovery() {}

    private record Held(boolean[] holds, double[] widths) {}

    /** Prints a table for each kind of records. */
    public static void main(String[] args) {
        int players = args.length > 0 ? Integer.parseInt(args[0]) : 1000;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 20_261_125;
        System.out.println(players + " players, seed " + seed + "; held / width against the prior's");
        for (int kind = 0; kind < KINDS.size(); kind++) {
            int chosen = kind;
            List<Held> all = IntStream.range(0, players)
                    .parallel()
                    .mapToObj(player -> held(seed + player, chosen))
                    .toList();
            StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-15s", KINDS.get(kind)));
            for (Parameter parameter : Parameter.values()) {
                int k = parameter.ordinal();
                long holds = all.stream().filter(held -> held.holds()[k]).count();
                double width = all.stream()
                        .mapToDouble(held -> held.widths()[k])
                        .average()
                        .orElse(0);
                line.append(
                        String.format(Locale.ROOT, "  %s %.1f %% / %.2f", parameter, 100.0 * holds / players, width));
            }
            System.out.println(line);
        }
    }

    private static Held held(long seed, int kind) {
        ThrowModel player = PRIOR.player(seed);
        ThrowFit fit = ThrowFit.of(PRIOR, records(player, seed * 1_000_003, kind));
        Parameter[] parameters = Parameter.values();
        boolean[] holds = new boolean[parameters.length];
        double[] widths = new double[parameters.length];
        for (Parameter parameter : parameters) {
            Range range = fit.range(parameter);
            holds[parameter.ordinal()] = range.contains(parameter.of(player));
            widths[parameter.ordinal()] =
                    range.width() / fit.before().range(parameter).width();
        }
        return new Held(holds, widths);
    }

    private static ThrowRecords records(ThrowModel player, long seed, int kind) {
        MadeUpThrows throwing = new MadeUpThrows(player, seed);
        List<ThrowCount> counts = new ArrayList<>();
        List<TappedDay> days = new ArrayList<>();
        counts.add(throwing.count(REGULATION, 400, kind >= 2));
        ThrowCount narrow = throwing.count(NARROW, 200, kind >= 2);
        if (kind >= 1) {
            counts.add(narrow);
        }
        if (kind >= 3) {
            for (int day = 0; day < 4; day++) {
                days.add(throwing.taps(null, throwing.day(null), 15));
            }
            days.add(throwing.test(null, throwing.day(null), 6));
        }
        return new ThrowRecords(counts, days);
    }
}
