package boardside.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import org.junit.jupiter.api.Test;

class TallyTest {
    /** 01-scoring-examples.csv: the bags of both sides of a round put together score what the sides score apart. */
    @Test
    void togetherTheyScoreWhatTheyScoreApart() {
        for (Row row : ReferenceTable.read("01-scoring-examples.csv")) {
            Tally a = new Tally(row.whole("a_in_hole"), row.whole("a_on_board"), 1);
            Tally b = new Tally(row.whole("b_in_hole"), row.whole("b_on_board"), 2);
            Tally both = a.plus(b);
            assertThat(both.points()).isEqualTo(row.whole("a_raw") + row.whole("b_raw"));
            assertThat(both.off()).isEqualTo(3);
            assertThat(both.thrown()).isEqualTo(a.thrown() + b.thrown());
        }
    }
}
