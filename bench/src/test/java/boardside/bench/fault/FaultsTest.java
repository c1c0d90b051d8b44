package boardside.bench.fault;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of what docs/faults.md tells, with the program as it was just built. */
class FaultsTest {
    @TempDir
    private Path folder;

    private Faults faults() {
        return new Faults(
                new Program(Built.command(), folder.resolve("faults.db").toString(), folder.resolve("log")), 7);
    }

    private static void assertNothingLost(Faults.Result result) {
        assertThat(result.differences()).as(result.done()).isEmpty();
        assertThat(result.done()).doesNotContain(" 0 rounds");
    }

    @Test
    void killedInTheMiddleNothingAcknowledgedIsLostOrDoubled() throws Exception {
        assertNothingLost(faults().kills(3));
    }

    @Test
    void overABadNetworkEverythingArrivesOnce() throws Exception {
        assertNothingLost(faults().network(60));
    }

    @Test
    void ofTwoPhonesInOneRunTheLaterWordHolds() throws Exception {
        assertNothingLost(faults().twoPhones(100));
    }

    @Test
    void differencesAreFound() {
        Model model = new Model();
        model.put("r", 1, "op1", 2, 1);
        model.put("r", 2, "op2", 2, 1);
        model.put("r", 3, "op3", 2, 1);
        assertThat(model.differences("run,round,in,on\nr,1,2,1\nr,1,2,1\nr,2,0,1\nr,9,2,1\n"))
                .containsExactlyInAnyOrder("doubled: r,1", "other counts: r,2", "never recorded: r,9", "lost: r,3");
    }
}
