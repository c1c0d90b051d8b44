package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Player;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FirstPlayerTest {
    @TempDir
    private Path folder;

    /** Several phones open a new store at the same moment. */
    @ParameterizedTest
    @EnumSource
    void manyFirstVisitsAtOnceMakeOnePlayer(Stores kind) throws Exception {
        int visitors = 4;
        ExecutorService threads = Executors.newFixedThreadPool(visitors);
        try (Records records = Stores.open(kind.location(folder), 1)) {
            CyclicBarrier together = new CyclicBarrier(visitors);
            List<Future<Player>> visits = new ArrayList<>();
            for (int i = 0; i < visitors; i++) {
                visits.add(threads.submit(() -> {
                    together.await();
                    return records.firstPlayer();
                }));
            }
            for (Future<Player> visit : visits) {
                assertThat(visit.get().id()).isEqualTo(1);
            }
            assertThat(records.players()).hasSize(1);
        } finally {
            threads.shutdown();
        }
    }
}
