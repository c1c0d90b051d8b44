package boardside.app.transfer;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** Sound logs of every kind, from a seed. */
final class RandomLogs {
    private static final List<String> NAMES =
            List.of("", "Blue", "Red, old", "say \"cheese\"", "Grün\nzwei", " spaced ", "日本", "'=1+1");

    private final UniformRandomProvider random;
    private final List<String> bags;

    RandomLogs(long seed) {
        random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        bags = NAMES;
    }

    private boolean chance(double p) {
        return random.nextDouble() < p;
    }

    private <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private <E extends Enum<E> & Word> String word(Class<E> kind, double blank) {
        return chance(blank) ? "" : one(Word.words(kind));
    }

    /** A log, header first, rows in no order. */
    String next() {
        List<String> columns = new ArrayList<>(LogColumns.ALL);
        List<List<String>> rows = new ArrayList<>();
        int runs = 1 + random.nextInt(6);
        for (int run = 0; run < runs; run++) {
            run(run, rows);
        }
        shuffle(rows);
        StringBuilder log = new StringBuilder();
        Csv.write(log, columns);
        rows.forEach(row -> Csv.write(log, row));
        return log.toString();
    }

    private void run(int run, List<List<String>> rows) {
        Drill drill = one(List.of(Drill.values()));
        String session = "session " + random.nextInt(3);
        String id = one(List.of("r", "R ", "é,", "\"q\"")) + run;
        String start = "2026-%02d-%02dT%02d:%02d:00%s"
                .formatted(
                        1 + random.nextInt(12),
                        1 + random.nextInt(28),
                        random.nextInt(24),
                        random.nextInt(60),
                        one(List.of("Z", "+02:00", "-05:00", "+05:30")));
        List<String> ofRun = List.of(
                one(NAMES),
                chance(0.8) ? "" : String.valueOf(1 + random.nextInt(50)),
                chance(0.8) ? "" : String.valueOf(1 + random.nextInt(3)),
                chance(0.8) ? "" : "trial 1",
                chance(0.8) ? "" : "yes");
        int rounds = 1 + random.nextInt(8);
        for (int round = 1; round <= rounds; round++) {
            for (Side side : Side.values()) {
                if (chance(side == Side.ME ? 0.9 : 0.2)) {
                    round(List.of(session, id, start, drill.word()), drill, round * 3, side, ofRun, rows);
                }
            }
        }
    }

    private void round(
            List<String> head, Drill drill, int round, Side side, List<String> ofRun, List<List<String>> rows) {
        int left = drill.mostBags();
        List<String> keys = new ArrayList<>();
        for (int i = 0; i < 3 && left > 0; i++) {
            String bag = one(bags);
            String face = word(Face.class, 0.3);
            if (keys.contains(bag + face)) {
                continue;
            }
            keys.add(bag + face);
            int thrown = random.nextInt(left + 1);
            left -= thrown;
            int in = random.nextInt(thrown + 1);
            int on = random.nextInt(thrown - in + 1);
            boolean onlyIn = chance(0.2);
            boolean nothing = onlyIn && drill == Drill.CASUAL && chance(0.5);
            List<String> row = new ArrayList<>(head);
            row.addAll(List.of(
                    String.valueOf(round),
                    side.word(),
                    bag,
                    face,
                    word(Approach.class, 0.3),
                    word(BoardKind.class, 0),
                    word(Setting.class, 0),
                    drill.needsGhost() || chance(0.1) ? String.valueOf(random.nextInt(13)) : "",
                    nothing ? "" : String.valueOf(in),
                    onlyIn ? "" : String.valueOf(on),
                    onlyIn ? "" : String.valueOf(thrown - in - on),
                    onlyIn || chance(0.1) ? String.valueOf(thrown) : "",
                    word(Conditions.class, 0.5)));
            row.addAll(ofRun);
            row.add(chance(0.7) ? "" : "2026-06-01T10:00:0" + random.nextInt(10) + "Z");
            for (int miss = 0; miss < 4; miss++) {
                row.add(chance(0.8) ? "" : String.valueOf(random.nextInt(5)));
            }
            row.add(chance(0.8) ? "" : one(NAMES));
            rows.add(row);
        }
    }

    private void shuffle(List<List<String>> rows) {
        for (int i = rows.size() - 1; i > 0; i--) {
            java.util.Collections.swap(rows, i, random.nextInt(i + 1));
        }
    }
}
