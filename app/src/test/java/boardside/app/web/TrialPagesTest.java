package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.cli.Cli;
import boardside.app.cli.Surroundings;
import boardside.app.practice.BagSet;
import boardside.app.practice.TrialPlan;
import boardside.app.record.TrialDetail;
import boardside.engine.trial.Ending;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A trial from its set-up to its result, at the boards without network, over two days. */
class TrialPagesTest extends Recorder {
    private void setUp() {
        BagSet blue = bag("Mill Pond");
        BagSet red = bag("Dry Ridge");
        page.navigate(url("/"));
        page.locator("a[href=\"/start/trial\"]").click();
        assertThat(page.locator("h1")).hasText("Trials");
        picture("trials-none");
        assertAccessible();
        page.locator("a[href=\"/trials/new\"]").click();
        choose("bag", blue.id());
        page.locator("#work-out").click();
        assertThat(page.locator("[role=alert]")).containsText("Tick two or more");
        choose("bag", red.id());
        page.locator("#work-out").click();
        assertThat(page.locator("#sentence")).containsText("rounds with each");
        picture("trial-outlook");
        assertAccessible();
        choose("longest", "25");
        page.locator("#again").click();
        assertThat(page.locator("#sentence")).containsText("This trial ends after 50");
        assertThat(page.locator("#name")).hasValue("Mill Pond against Dry Ridge");
        page.locator("#start").click();
        page.waitForURL("**/trials/*");
        assertThat(page.locator("#sentence")).containsText("Nothing to say yet");
        picture("trial-new");
        assertAccessible();
    }

    private TrialDetail trial() {
        return records.trials().named(me(), "Mill Pond against Dry Ridge");
    }

    /** The longer a phone was away, the longer it waits between tries. */
    private void allSent() {
        assertThat(page.locator("#sent"))
                .hasText("all stored", new LocatorAssertions.HasTextOptions().setTimeout(60_000));
    }

    private void toTheBoards() {
        page.locator("#throw").click();
        page.waitForURL("**/runs/*");
    }

    /** Throws a round of whoever is called, the one set far better than the other. */
    private String round() {
        String called = page.locator("#call b").textContent();
        tap(called.equals("Mill Pond") ? "3-1-0" : "1-1-2");
        return called;
    }

    @Test
    void aTrialGoesOnOverTwoDaysAndWithoutNetwork() throws Exception {
        setUp();
        String home = page.url().substring(page.url().indexOf("/trials/"));
        toTheBoards();
        picture("trial-block");
        assertAccessible();
        phone.setOffline(true);
        List<String> called = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            assertThat(page.locator("#call")).containsText("round " + (1 + i % 2) + " of 2");
            called.add(round());
        }
        // Both once, two rounds each; then the next block, in the other order.
        assertThat(called.get(0)).isEqualTo(called.get(1)).isNotEqualTo(called.get(2));
        assertThat(called.get(2)).isEqualTo(called.get(3));
        assertThat(page.locator("#call")).containsText("Block 2 of at most 25");
        assertThat(page.locator("#needed")).containsText("open, it may be luck");
        picture("trial-after-block");
        page.locator("#undo").click();
        assertThat(page.locator("#call")).containsText("Block 1 of at most 25");
        assertThat(page.locator("#needed")).containsText("One more round makes the block");
        round();
        assertThat(page.locator("#call b")).hasText(called.get(2));
        for (int i = 0; i < 5; i++) {
            round();
        }
        phone.setOffline(false);
        allSent();
        // The block under way is left unfinished for today.
        page.locator("#more").click();
        page.locator("#finish").click();
        page.waitForURL("**/summary");
        assertThat(page.locator("#said")).containsText("After 2 of at most 25 blocks");
        picture("trial-summary");
        page.locator("#trial").click();
        assertThat(page.locator("#next")).containsText("Block 3 begins with");
        picture("trial-under-way");
        assertAccessible();
        assertThat(trial().state().unused()).isZero();

        server.close();
        server = Server.start(
                records, ServerOptions.local(0), Clock.offset(Clock.systemDefaultZone(), Duration.ofDays(1)));
        page.navigate(url(home));
        toTheBoards();
        phone.setOffline(true);
        assertThat(page.locator("#call")).containsText("Block 3 of at most 25");
        int rounds = 0;
        while (page.locator("#done-said").count() == 0 && rounds < 40) {
            round();
            rounds++;
        }
        assertThat(page.locator("#done-said")).containsText("Settled: throw Mill Pond");
        picture("trial-done");
        // The last round taken back opens the trial again; thrown once more, it is settled.
        page.locator("#undo").click();
        assertThat(page.locator("#call")).isVisible();
        round();
        assertThat(page.locator("#done-said")).containsText("Settled: throw Mill Pond");
        phone.setOffline(false);
        allSent();
        page.locator("#summary").click();
        page.waitForURL("**/summary");
        TrialDetail settled = trial();
        assertThat(settled.state().ending()).isInstanceOf(Ending.Winner.class);
        assertThat(settled.runs()).hasSize(2);
        assertThat(settled.runs().get(0).session().id())
                .isNotEqualTo(settled.runs().get(1).session().id());
        assertThat(page.locator("#said")).hasText(settled.state().sentence());
        page.locator("#trial").click();
        assertThat(page.locator("#sentence")).containsText("Throw Mill Pond.");
        assertThat(page.locator("#throw")).hasCount(0);
        picture("trial-settled");
        assertAccessible();
        // The command line says the same, and the export counted again gives the same sums.
        String shown = page.locator("#sentence").textContent();
        assertThat(cli("trial", "status", "Mill Pond against Dry Ridge")).startsWith(shown + "\n");
        recount(settled);
    }

    /** Points a round of each candidate's blocks, by the CSV alone. */
    private void recount(TrialDetail trial) throws Exception {
        Map<String, List<Integer>> runs = new HashMap<>();
        Map<String, Integer> points = new HashMap<>();
        for (String line : cli("export").split("\n")) {
            String[] cells = line.split(",", -1);
            if (cells[3].equals("trial")) {
                assertThat(cells[cells.length - 2]).isEqualTo(trial.plan().id());
                int number = Integer.parseInt(cells[4]);
                int whole = trial.runs().stream()
                                .filter(run -> run.run().id().equals(cells[1]))
                                .mapToInt(run -> run.rounds().size())
                                .sum()
                        / 4
                        * 4;
                if (number <= whole) {
                    points.merge(cells[6], 3 * Integer.parseInt(cells[12]) + Integer.parseInt(cells[13]), Integer::sum);
                    runs.computeIfAbsent(cells[6], bag -> new ArrayList<>()).add(number);
                }
            }
        }
        trial.state().standings().forEach(standing -> {
            String name = trial.names().get(standing.candidate());
            assertThat(runs.get(name)).hasSize(standing.rounds());
            assertThat(points.getOrDefault(name, 0) / (double) standing.rounds())
                    .isEqualTo(name.equals("Mill Pond") ? 10 : 4);
        });
    }

    private String cli(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<String> all =
                new ArrayList<>(List.of("--data", folder.resolve("store.db").toString()));
        all.addAll(List.of(args));
        int status = new Cli(new Surroundings(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new ByteArrayInputStream(new byte[0]),
                        Map.of(),
                        Clock.systemDefaultZone(),
                        false))
                .run(all.toArray(String[]::new));
        assertThat(status).as(out.toString(StandardCharsets.UTF_8)).isZero();
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void aTrialIsLaidAsideGoneOnWithDeletedAndBroughtBack() {
        setUp();
        String address = page.url();
        page.locator("#pause").click();
        assertThat(page.locator("#throw")).hasCount(0);
        assertThat(trial().plan().state()).isEqualTo(TrialPlan.State.PAUSED);
        page.locator("#resume").click();
        assertThat(page.locator("#throw")).isVisible();
        open("Give it another name");
        page.locator("#name").fill(" ");
        page.locator("#rename button").click();
        assertThat(page.locator("#name-fault")).hasText("A trial needs a name.");
        assertAccessible();
        page.locator("#name").fill("Pond or ridge");
        page.locator("#rename button").click();
        assertThat(page.locator("h1")).hasText("Pond or ridge");
        open("Give it another name");
        page.locator("#name").fill("Mill Pond against Dry Ridge");
        page.locator("#rename button").click();
        assertThat(page.locator("h1")).hasText("Mill Pond against Dry Ridge");
        page.locator("#stop").click();
        assertThat(trial().plan().state()).isEqualTo(TrialPlan.State.STOPPED);
        page.locator(".danger button").click();
        page.waitForURL("**/trials?**");
        assertThat(records.trials().all(me())).isEmpty();
        page.locator("form[action$=restore] button").click();
        page.waitForURL("**/trials/*");
        assertThat(page.url()).startsWith(address);
        assertThat(records.trials().all(me())).hasSize(1);
    }

    @Test
    void aSetUpIsSharedAsAFileAndTakenByAnother() throws Exception {
        setUp();
        assertThat(page.locator("#qr")).isVisible();
        String shared = page.locator("pre.share").textContent();
        Path file = folder.resolve("trial.json");
        Files.writeString(file, shared);
        records.trials().delete(me(), trial().plan().id(), true);
        page.navigate(url("/trials"));
        page.locator("#file").setInputFiles(file);
        page.getByText("Set it up", new Page.GetByTextOptions().setExact(true)).click();
        page.waitForURL("**/trials/*");
        TrialPlan taken = trial().plan();
        Map<String, String> names = records.bags(me()).stream().collect(Collectors.toMap(BagSet::id, BagSet::name));
        assertThat(taken.candidates())
                .extracting(way -> names.get(way.bag()))
                .containsExactly("Mill Pond", "Dry Ridge");
        assertThat(taken.longest()).isEqualTo(25);
        page.navigate(url("/trials"));
        page.locator("#text").fill("{\"bags\":[]}");
        page.getByText("Set it up", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.locator("[role=alert]")).containsText("it holds no candidates");
    }
}
