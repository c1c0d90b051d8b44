package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.tactics.Position;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import java.util.List;
import org.junit.jupiter.api.Test;

class EvidenceTest {
    private static final Position GATE = Situation.GATE.position();
    private static final Call AIRMAIL = new Call(Shot.AIRMAIL, Spot.HOLE, null, -1);

    private static Evidence of(Call call, Position position, Tried... tries) {
        return Evidence.of(call, position, List.of(tries));
    }

    @Test
    void fortyTriesOutweighTheSimulation() {
        Evidence forty = of(AIRMAIL, GATE, new Tried(Shot.AIRMAIL, null, GATE, 40, 32));
        // 20 tries' worth of 0.2, and 32 of 40: (4 + 32) / 60, nearer to 0.8 than to 0.2.
        assertThat(forty.rate(0.2)).isCloseTo(0.6, within(1e-12));
        assertThat(Math.abs(forty.rate(0.2) - 0.8)).isLessThan(Math.abs(forty.rate(0.2) - 0.2));
    }

    @Test
    void rangesAreThoseOfTheBetaDistribution() {
        // R 4.2.2: qbeta(c(.05, .95), 4, 16) and qbeta(c(.05, .95), 24, 36).
        Rate before = of(AIRMAIL, GATE).range(0.2);
        assertThat(before.low()).isCloseTo(0.0752938166, within(1e-9));
        assertThat(before.high()).isCloseTo(0.3594256496, within(1e-9));
        Rate after =
                of(AIRMAIL, GATE, new Tried(Shot.AIRMAIL, null, GATE, 40, 20)).range(0.2);
        assertThat(after.estimate()).isCloseTo(0.4, within(1e-12));
        assertThat(after.low()).isCloseTo(0.2986594650, within(1e-9));
        assertThat(after.high()).isCloseTo(0.5051636362, within(1e-9));
    }

    @Test
    void triesOnLikeBoardsCountAQuarterAndOthersNothing() {
        Position near = Situation.SENTRY.position();
        assertThat(near.family(24)).isEqualTo(GATE.family(24));
        Evidence alike = of(AIRMAIL, GATE, new Tried(Shot.AIRMAIL, null, near, 40, 20));
        assertThat(alike.tries()).isEqualTo(10);
        assertThat(alike.worked()).isEqualTo(5);
        assertThat(of(AIRMAIL, GATE, new Tried(Shot.AIRMAIL, null, Situation.OPEN.position(), 40, 20))
                        .tries())
                .isZero();
        assertThat(of(AIRMAIL, GATE, new Tried(Shot.ROLL, null, GATE, 40, 20)).tries())
                .isZero();
    }

    @Test
    void slidesAtAnEmptyBoardAreKnownFromRounds() {
        Evidence slide = of(new Call(Shot.SLIDE, Spot.HOLE, null, -1), Position.EMPTY);
        assertThat(slide.doubted()).isFalse();
        assertThat(slide.rate(0.37)).isEqualTo(0.37);
    }

    @Test
    void cutsRollsAndDragsBeginWithAStatedPrior() {
        Call cut = new Call(Shot.CUT_LEFT, Spot.HOLE, null, -1);
        assertThat(of(cut, GATE).rate(0.5)).isEqualTo(0.2);
        assertThat(of(cut, GATE, new Tried(Shot.CUT_LEFT, null, GATE, 40, 30)).rate(0.5))
                .isCloseTo(34.0 / 60, within(1e-12));
    }

    @Test
    void doubtsAreAroundTheRate() {
        double[] doubts = of(AIRMAIL, GATE).doubts(0.3, 64, 1);
        double sum = 0;
        for (double doubt : doubts) {
            sum += doubt / doubts.length;
        }
        assertThat(sum).isCloseTo(0, within(0.01));
    }
}
