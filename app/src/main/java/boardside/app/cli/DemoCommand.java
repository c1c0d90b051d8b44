package boardside.app.cli;

import boardside.app.demo.Demo;
import boardside.app.practice.Player;
import boardside.app.record.Planning;
import boardside.app.record.Records;
import boardside.app.record.Skills;
import boardside.app.web.PlanWords;
import boardside.app.web.ServerOptions;
import boardside.app.web.Texts;
import boardside.engine.plan.Energy;
import boardside.engine.plan.Means;
import boardside.engine.plan.Plan;
import boardside.engine.plan.Planner;
import boardside.engine.skill.Skill;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Serves the example store; touches no other. */
@Command(name = "demo", description = "Serve eighteen months of an invented player's practice; touches no real data.")
final class DemoCommand implements Callable<Integer> {
    private final Context context;

    @Option(
            names = "--port",
            paramLabel = "N",
            description = "Port to serve on; " + ServeCommand.PORT + " unless said, 0 for any.")
    private int port = ServeCommand.PORT;

    DemoCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        ServerOptions options = new ServerOptions(ServeCommand.checkedPort(port), false, null, true);
        Path folder = folder();
        try {
            Records records = Records.open(folder.resolve("demo.db").toString());
            LocalDate today = LocalDate.now(context.surroundings().clock());
            follow(records, Demo.fill(records, today.minusDays(1)), today);
            return Serving.untilStopped(context, records, options, () -> remove(folder));
        } finally {
            remove(folder);
        }
    }

    /** A plan for today, a goal, and somebody who is shown both. */
    private static void follow(Records records, Player player, LocalDate today) {
        Demo.share(records, player, today);
        Means means = new Means(
                30, Energy.NORMAL, Planning.bags(records, player).size(), Planning.boards(records, player), false);
        Skill skill = Skills.of(records, player.id(), today);
        Plan plan = Planner.plan(means, Planning.state(records, player, skill, today));
        records.plans().follow(player.id(), new PlanWords(Texts.in("en")).kept(plan, today, skill.form(30)));
    }

    private static Path folder() {
        try {
            return Files.createTempDirectory("boardside-demo");
        } catch (IOException e) {
            throw new UncheckedIOException("no room for the example in the folder for temporary files", e);
        }
    }

    private static void remove(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
            for (Path file : deepestFirst) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the example was left behind in " + folder, e);
        }
    }
}
