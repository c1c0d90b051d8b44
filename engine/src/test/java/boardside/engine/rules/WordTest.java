package boardside.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class WordTest {
    @Test
    void everyWordLeadsBackToItsConstant() {
        assertThat(Arrays.stream(Drill.values()).map(drill -> Word.of(Drill.class, drill.word())))
                .containsExactly(Drill.values());
        assertThat(Word.words(Side.class)).containsExactly("me", "a", "b", "versus");
        assertThat(Word.words(Conditions.class)).containsExactly("slow", "normal", "fast");
    }

    @Test
    void refusesAnUnknownWordAndListsThoseThereAre() {
        assertThatThrownBy(() -> Word.of(Face.class, "Slow"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("\"Slow\" is none of slow, fast; use one of these");
    }

    /** Design: placement, situation and casual never feed the skill model; a round has four bags but where sets share it. */
    @Test
    void drillsSayWhatTheyCountFor() {
        assertThat(Arrays.stream(Drill.values()).filter(drill -> !drill.counted()))
                .containsExactly(Drill.PLACEMENT, Drill.SITUATION, Drill.CASUAL);
        assertThat(Arrays.stream(Drill.values()).filter(drill -> drill.mostBags() == 100))
                .containsExactly(Drill.VOLUME, Drill.CASUAL);
        assertThat(Arrays.stream(Drill.values()).filter(Drill::needsGhost)).containsExactly(Drill.RACE, Drill.CLIMB);
    }

    @Test
    void onlyVersusIsSomebodyElse() {
        assertThat(Arrays.stream(Side.values()).filter(side -> !side.mine())).containsExactly(Side.VERSUS);
    }
}
