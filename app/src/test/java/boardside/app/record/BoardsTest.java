package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Board;
import boardside.app.practice.Change;
import boardside.app.practice.Failure;
import boardside.engine.rules.BoardKind;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BoardsTest {
    @TempDir
    private Path folder;

    private static Board board(String id, String name, BoardKind kind, double width, double front) {
        return new Board(id, name, kind, width, front, "", false);
    }

    @ParameterizedTest
    @EnumSource(Stores.class)
    void aBoardIsKeptEditedAndBroughtBack(Stores kind) {
        try (Records records = Stores.open(kind.location(folder), 1)) {
            int player = records.firstPlayer().id();
            Board garden = records.saveBoard(player, board("", " Garden ", BoardKind.REGULATION, 24, 3.5));
            assertThat(garden.name()).isEqualTo("Garden");
            Board slim = records.saveBoard(player, board("", "Slim", BoardKind.NARROW, 12, 4));
            assertThat(records.boards(player)).containsExactly(garden, slim);

            Board retired = new Board(garden.id(), "Old garden", BoardKind.REGULATION, 24, 2.5, "worn", true);
            records.saveBoard(player, retired);
            assertThat(records.boards(player)).containsExactly(slim, retired);
            List<Change> changes = records.changes(player, garden.id());
            assertThat(changes).hasSize(1);
            assertThat(changes.get(0).says())
                    .contains("name before: \"Garden\", after: \"Old garden\"")
                    .contains("inches high in front before: \"3.5\", after: \"2.5\"")
                    .contains("now retired");

            records.undo(player, changes.get(0).id(), Instant.parse("2026-06-01T12:00:00Z"));
            assertThat(records.boards(player)).containsExactly(garden, slim);
        }
    }

    @ParameterizedTest
    @EnumSource(Stores.class)
    void whatIsNoBoardIsRefusedAndNothingKept(Stores kind) {
        try (Records records = Stores.open(kind.location(folder), 1)) {
            int player = records.firstPlayer().id();
            for (Board wrong : List.of(
                    board("", "  ", BoardKind.REGULATION, 24, 3.5),
                    board("", "a", BoardKind.REGULATION, 20, 3.5),
                    board("", "a", BoardKind.NARROW, 24.5, 3.5),
                    board("", "a", BoardKind.NARROW, 0, 3.5),
                    board("", "a", BoardKind.NARROW, Double.NaN, 3.5),
                    board("", "a", BoardKind.NARROW, 12, 1.9),
                    board("", "a", BoardKind.NARROW, 12, 6.1))) {
                assertThatThrownBy(() -> records.saveBoard(player, wrong))
                        .as(wrong.toString())
                        .isInstanceOf(Failure.BadInput.class);
            }
            assertThat(records.boards(player)).isEmpty();
            records.saveBoard(player, board("", "a", BoardKind.NARROW, 12, 3.5));
            assertThatThrownBy(() -> records.saveBoard(player, board("", "a", BoardKind.NARROW, 12, 3.5)))
                    .hasMessageContaining("is taken");
        }
    }
}
