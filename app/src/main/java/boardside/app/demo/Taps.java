package boardside.app.demo;

import boardside.app.practice.Ids;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.record.Records;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** A few runs of the invented player with a tap for each bag: a little left of the hole, a little short. */
final class Taps {
    private static final int[] DAYS_AGO = {16, 9, 5, 2};
    private static final int ROUNDS = 10;

    private final SplittableRandom random;
    private final Ids ids;
    private final String bag;

    private Taps(long seed, Ids ids, String bag) {
        this.random = new SplittableRandom(seed);
        this.ids = ids;
        this.bag = bag;
    }

    /** Adds the runs; the bag set exists. */
    static void add(Records records, int player, LocalDate last, long seed, String bag) {
        Taps taps = new Taps(seed, records.ids(), bag);
        List<Operation> operations = new ArrayList<>();
        for (int daysAgo : DAYS_AGO) {
            taps.run(operations, last.minusDays(daysAgo));
        }
        records.applyAll(player, operations, Instant.parse(last + "T20:00:00Z"));
    }

    private void run(List<Operation> operations, LocalDate day) {
        String run = ids.next();
        String start = day + "T12:10:00Z";
        operations.add(new Operation.StartRun(
                ids.next(),
                run,
                ids.next(),
                Drill.TOTAL,
                start,
                false,
                "",
                null,
                null,
                Setup.plain().with(setup -> setup.rounds = ROUNDS)));
        for (int number = 1; number <= ROUNDS; number++) {
            List<Round.Thrown> thrown = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                thrown.add(random.nextInt(6) == 0 ? airmail() : slide());
            }
            int in = count(thrown, Outcome.IN);
            int on = count(thrown, Outcome.ON);
            Line line = new Line(
                    bag,
                    Face.SLOW,
                    Approach.CONSERVATIVE,
                    BoardKind.REGULATION,
                    Setting.PRACTICE,
                    Conditions.NORMAL,
                    null,
                    4,
                    in,
                    on,
                    4 - in - on,
                    Line.Misses.NONE,
                    "",
                    "");
            operations.add(new Operation.PutRound(run, new Round(number, Side.ME, ids.next(), List.of(line), thrown)));
        }
        operations.add(new Operation.FinishRun(ids.next(), run, day + "T12:19:00Z"));
    }

    private static int count(List<Round.Thrown> thrown, Outcome outcome) {
        return (int) thrown.stream().filter(each -> each.outcome() == outcome).count();
    }

    private Round.Thrown slide() {
        double x = tenth(-1.3 + 3.1 * gaussian());
        double y = tenth(32.5 + 8 * gaussian());
        boolean in = Math.abs(x) <= 3 && y >= 36;
        return thrown("slide", in, x, y, null);
    }

    private Round.Thrown airmail() {
        double x = tenth(-0.6 + 2.6 * gaussian());
        double y = tenth(38.5 + 3.4 * gaussian());
        Round.Point land = Math.abs(x) <= 12 && y >= 0 && y <= 48 ? new Round.Point(x, y) : null;
        return thrown("airmail", Math.hypot(x, y - 39) <= 3, x, y, land);
    }

    private Round.Thrown thrown(String shot, boolean in, double x, double y, Round.@Nullable Point land) {
        boolean on = !in && Math.abs(x) <= 12 && y >= 0 && y <= 48;
        String miss = in || on ? "" : x < -12 ? "left" : x > 12 ? "right" : y < 0 ? "short" : "long";
        return new Round.Thrown(
                bag,
                Face.SLOW,
                in ? Outcome.IN : on ? Outcome.ON : Outcome.OFF,
                miss,
                shot,
                null,
                land,
                on ? new Round.Point(x, y) : null);
    }

    private static double tenth(double inches) {
        return Math.round(10 * inches) / 10.0;
    }

    private double gaussian() {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
