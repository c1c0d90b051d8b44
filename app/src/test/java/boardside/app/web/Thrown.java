package boardside.app.web;

import boardside.app.practice.Ids;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.record.Records;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/** Practice put straight into the store, for pages that need something to read. */
final class Thrown {
    private Thrown() {}

    /** A run of rounds of four so many days ago, each bag by chance; returns the run's id. */
    static String total(
            Records records, int player, UniformRandomProvider random, int daysAgo, int rounds, double in, double on) {
        Ids ids = records.ids();
        String start = OffsetDateTime.now()
                .minusDays(daysAgo)
                .truncatedTo(ChronoUnit.SECONDS)
                .toString();
        String run = ids.next();
        Setup plain = Setup.plain();
        List<Operation> operations = new ArrayList<>();
        operations.add(new Operation.StartRun(
                ids.next(), run, ids.next(), Drill.TOTAL, start, false, "", null, null, rounds(plain, rounds)));
        for (int round = 1; round <= rounds; round++) {
            Line line = line(random, in, on);
            operations.add(
                    new Operation.PutRound(run, new Round(round, Side.ME, ids.next(), List.of(line), List.of())));
        }
        operations.add(new Operation.FinishRun(ids.next(), run, start));
        records.applyAll(player, operations, Instant.now());
        return run;
    }

    private static Line line(UniformRandomProvider random, double in, double on) {
        int i = 0;
        int o = 0;
        for (int bag = 0; bag < 4; bag++) {
            double u = random.nextDouble();
            i += u < in ? 1 : 0;
            o += u >= in && u < in + on ? 1 : 0;
        }
        return new Line(
                "",
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                4,
                i,
                o,
                4 - i - o,
                Line.Misses.NONE,
                "",
                "");
    }

    private static Setup rounds(Setup s, int rounds) {
        return s.with(setup -> setup.rounds = rounds);
    }
}
