package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class StrengthTest {
    private static final List<Situation> WHERE = List.of(Situation.GATE, Situation.SENTRY, Situation.SHOULDER);

    private static int worked(SplittableRandom random, int tries, double chance) {
        int worked = 0;
        for (int i = 0; i < tries; i++) {
            worked += random.nextDouble() < chance ? 1 : 0;
        }
        return worked;
    }

    /** Tries of a player whose odds on the left are those on the right times e^edge. */
    private static List<Tried> player(SplittableRandom random, double edge, int most) {
        List<Tried> tries = new ArrayList<>();
        for (Situation situation : WHERE) {
            double logit = -1 + random.nextDouble() * 1.5;
            Position position = situation.position();
            int left = random.nextInt(most + 1);
            int right = random.nextInt(most + 1);
            tries.add(new Tried(Shot.CUT_LEFT, null, position, left, worked(random, left, logistic(logit + edge))));
            tries.add(new Tried(
                    Shot.CUT_RIGHT, null, position.mirrored(), right, worked(random, right, logistic(logit))));
        }
        for (Depth depth : List.of(Depth.ONE, Depth.TWO)) {
            double logit = -1.5 + random.nextDouble();
            for (Lane lane : List.of(Lane.LEFT, Lane.RIGHT)) {
                int n = random.nextInt(most + 1);
                tries.add(new Tried(
                        Shot.BLOCK, new Target(depth, lane), Position.EMPTY, n, worked(random, n, logistic(logit))));
            }
        }
        return tries;
    }

    private static double logistic(double logit) {
        return 1 / (1 + Math.exp(-logit));
    }

    @Test
    void ofTwoThousandPlayersWithoutAnyFewAreToldOfOne() {
        SplittableRandom random = new SplittableRandom(71);
        int players = 2000;
        int told = 0;
        for (int i = 0; i < players; i++) {
            told += Strength.of(player(random, 0, 30)).isEmpty() ? 0 : 1;
        }
        double error = Math.sqrt(0.05 * 0.95 / players);
        assertThat((double) told / players).isLessThanOrEqualTo(0.05 + error);
    }

    @Test
    void whoCutsOneWayIsTold() {
        SplittableRandom random = new SplittableRandom(72);
        int found = 0;
        for (int i = 0; i < 200; i++) {
            List<Strength> told = Strength.of(player(random, 2.5, 60));
            found += told.stream().anyMatch(one -> one.what() == Strength.Pair.CUTS && one.left()) ? 1 : 0;
            assertThat(told).noneMatch(one -> one.what() == Strength.Pair.CUTS && !one.left());
        }
        assertThat(found).isGreaterThan(180);
    }

    @Test
    void harderBoardsOnOneSideAreNoStrength() {
        // Left cuts only at easy boards, right cuts only at hard ones: nothing compares.
        List<Tried> tries = List.of(
                new Tried(Shot.CUT_LEFT, null, Situation.SHOULDER.position(), 50, 45),
                new Tried(Shot.CUT_RIGHT, null, Situation.WALL.position(), 50, 2));
        assertThat(Strength.of(tries)).isEmpty();
    }
}
