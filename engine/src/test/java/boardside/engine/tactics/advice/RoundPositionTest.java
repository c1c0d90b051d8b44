package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Situation;
import java.util.List;
import org.junit.jupiter.api.Test;

class RoundPositionTest {
    private static final Position TWO =
            new Position(List.of(new Lying(0, 33, Side.VERSUS), new Lying(8, 20, Side.VERSUS)));

    @Test
    void whoThrewFirstFollowsFromTheBagsLeft() {
        assertThat(new RoundPosition(Position.EMPTY, 0, 0, 4, 4, Side.ME).meFirst())
                .isTrue();
        assertThat(new RoundPosition(Position.EMPTY, 0, 0, 4, 3, Side.ME).meFirst())
                .isFalse();
        assertThat(new RoundPosition(Position.EMPTY, 0, 0, 3, 4, Side.VERSUS).meFirst())
                .isTrue();
        assertThat(new RoundPosition(Position.EMPTY, 0, 0, 3, 3, Side.VERSUS).meFirst())
                .isFalse();
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> new RoundPosition(TWO, 0, 2, 2, 1, Side.ME))
                .hasMessage("a side has four bags, but versus has 2 on the board, 2 in and 1 left; take 1 away");
        assertThatThrownBy(() -> new RoundPosition(TWO, 0, 0, 1, 2, Side.ME))
                .hasMessageStartingWith("left: sides throw in turn");
        assertThatThrownBy(() -> new RoundPosition(TWO, 5, 0, 0, 0, Side.ME)).hasMessage("in.me is 0 to 4 bags, not 5");
        assertThatThrownBy(() -> new RoundPosition(TWO, 0, 0, -1, 0, Side.ME))
                .hasMessage("left.me is 0 to 4 bags, not -1");
    }

    @Test
    void tellsAllThatIsWrongAtOnce() {
        assertThat(RoundPosition.faults(2, 1, 1, 0, 2, 4, Side.ME))
                .containsExactly(
                        new RoundFault.TooMany(Side.ME, 2, 1, 2),
                        new RoundFault.TooMany(Side.VERSUS, 1, 0, 4),
                        new RoundFault.OutOfTurn(Side.ME, 2, 4));
        assertThat(new RoundFault.TooMany(Side.ME, 2, 1, 3).over()).isEqualTo(2);
        assertThat(RoundPosition.faults(0, 0, 4, 4, 0, 0, Side.ME)).isEmpty();
    }

    @Test
    void commonSituationsAreRoundsThatCanBe() {
        for (Situation situation : Situation.values()) {
            RoundPosition position = RoundPosition.of(situation.position());
            assertThat(position.leftMe()).isEqualTo(position.leftVersus()).isBetween(1, 3);
            assertThat(position.meFirst()).isTrue();
        }
    }
}
