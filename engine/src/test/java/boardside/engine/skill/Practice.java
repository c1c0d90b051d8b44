package boardside.engine.skill;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/** Records made up for tests. */
final class Practice {
    static final LocalDate TODAY = LocalDate.of(2026, 6, 30);

    private Practice() {}

    static RunCount run(int daysAgo, String bag, BoardKind board, Tally known, List<Integer> finishes) {
        int rounds = finishes.stream().mapToInt(Integer::intValue).sum();
        return new RunCount(
                TODAY.minusDays(daysAgo),
                "run" + daysAgo + bag,
                Drill.TOTAL,
                bag,
                Face.SLOW,
                bag.isEmpty() ? null : Approach.CONSERVATIVE,
                board,
                Setting.PRACTICE,
                null,
                rounds,
                known,
                0,
                0,
                finishes);
    }

    /** A run that is nothing but repetitions of one finish. */
    static RunCount run(int daysAgo, String bag, Finish finish, int rounds) {
        List<Integer> finishes = none();
        finishes.set(finish.index(), rounds);
        return run(
                daysAgo,
                bag,
                BoardKind.REGULATION,
                new Tally(finish.in() * rounds, finish.on() * rounds, finish.off() * rounds),
                finishes);
    }

    /** Rounds of independent bags with these chances. */
    static RunCount thrown(UniformRandomProvider random, int daysAgo, String bag, double in, double on, int rounds) {
        List<Integer> finishes = none();
        Tally sum = Tally.NONE;
        for (int round = 0; round < rounds; round++) {
            int i = 0;
            int o = 0;
            for (int b = 0; b < Finish.BAGS; b++) {
                double u = random.nextDouble();
                if (u < in) {
                    i++;
                } else if (u < in + on) {
                    o++;
                }
            }
            Finish finish = new Finish(i, o, Finish.BAGS - i - o);
            finishes.set(finish.index(), finishes.get(finish.index()) + 1);
            sum = sum.plus(new Tally(i, o, Finish.BAGS - i - o));
        }
        return run(daysAgo, bag, BoardKind.REGULATION, sum, finishes);
    }

    static List<Integer> none() {
        List<Integer> finishes = new ArrayList<>();
        for (int i = 0; i < Finish.values().size(); i++) {
            finishes.add(0);
        }
        return finishes;
    }
}
