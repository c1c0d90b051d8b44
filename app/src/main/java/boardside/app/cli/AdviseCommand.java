package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.AdviceQuestion;
import boardside.app.record.Advising;
import boardside.engine.tactics.advice.Advice;
import boardside.engine.tactics.advice.Adviser;
import boardside.engine.tactics.advice.ShotAdvice;
import com.fasterxml.jackson.databind.node.NullNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Which shot to throw. */
@Command(
        name = "advise",
        description = "Rank the shots of a position by your chance to win, by your own numbers.",
        footerHeading = "%n",
        footer = {
            "A position is JSON, places in inches on the board (the hole's centre is 0, 39):",
            "  {\"bags\":[{\"x\":0,\"y\":33,\"side\":\"versus\"}],\"in\":{\"me\":0,\"versus\":1},",
            "   \"left\":{\"me\":3,\"versus\":2},\"next\":\"me\",\"score\":{\"me\":12,\"versus\":15}}",
            "and, where you like, \"me\":{\"in\":0.3,\"on\":0.4} and \"versus\" (the chances of a bag; yours from the"
                    + " records, an opponent as good as you), \"bag\", \"face\", \"approach\" (as in your last run),",
            "\"theirApproach\" (conservative: they slide at the hole, whatever lies there; aggressive: through or over it).",
            "",
            "A win chance's range is what is not known of you; what sampling adds stands beside it. docs/tactics.md says how.",
            "",
            "Exit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input."
        })
final class AdviseCommand implements Callable<Integer> {
    private static final long LONGEST_FILE = 100_000;

    private final Context context;

    @Option(
            names = "--position",
            required = true,
            paramLabel = "FILE",
            description = "The position; - is standard input.")
    private String file = "";

    @Option(
            names = "--samples",
            paramLabel = "N",
            description = "Rests of the round to play out; 40000 unless said. More make the errors smaller.")
    private long samples = 40_000;

    @Option(names = "--seed", paramLabel = "N", description = "The same seed gives the same answer; 1 unless said.")
    private long seed = 1;

    AdviseCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        if (!(samples >= 1 && samples <= 10_000_000)) {
            throw new Failure.BadInput("--samples: 1 to 10000000, not " + samples);
        }
        AdviceQuestion question = AdviceQuestion.read(text());
        long start = System.nanoTime();
        Advising.Asked asked = Advising.of(
                context.records(),
                context.player().id(),
                LocalDate.now(context.surroundings().clock()),
                question);
        Advice advice = new Adviser(asked.matchup()).advise(question.position(), question.game(), samples, seed);
        double milliseconds = (System.nanoTime() - start) / 1e6;
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("shots", advice.shots().stream().map(AdviseCommand::json).toList());
        json.put("sentence", AdviceWords.sentence(advice));
        json.put("samples", advice.samples());
        json.put("bags", asked.bags());
        json.put("milliseconds", milliseconds);
        context.answer(json, AdviceWords.words(asked, advice));
        return Cli.DONE;
    }

    private String text() {
        try {
            if (file.equals("-")) {
                return new String(context.surroundings().in().readAllBytes(), StandardCharsets.UTF_8);
            }
            Path path = Path.of(file);
            if (!Files.isRegularFile(path)) {
                throw new Failure.BadInput("--position: there is no file " + file);
            }
            if (Files.size(path) > LONGEST_FILE) {
                throw new Failure.BadInput("--position: " + file + " is too long for a position");
            }
            return Files.readString(path);
        } catch (IOException e) {
            throw new Failure.BadInput("--position: " + file + " cannot be read: " + e.getMessage());
        }
    }

    private static Map<String, Object> json(ShotAdvice shot) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("shot", shot.call().shot().word());
        json.put("aim", shot.call().aim());
        json.put("winProbability", shot.winProbability());
        json.put("simulationError", shot.simulationError());
        json.put("netPoints", shot.netPoints());
        json.put("breakEven", orNull(shot.breakEven().needed()));
        json.put("made", shot.breakEven().made());
        json.put("breakEvenCase", shot.breakEven().is().name().toLowerCase(Locale.ROOT));
        json.put("against", shot.breakEven().against().shot().word());
        json.put(
                "target",
                orNull(
                        shot.call().target() == null
                                ? null
                                : shot.call().target().text()));
        json.put("at", orNull(shot.call().bag() < 0 ? null : shot.call().bag() + 1));
        Map<String, Object> release = new LinkedHashMap<>();
        release.put("x", shot.release().x());
        release.put("y", shot.release().y());
        release.put("speed", shot.release().speed());
        json.put("release", release);
        json.put("risk", shot.risk());
        json.put("behind", shot.behind());
        json.put("behindError", shot.behindError());
        json.put("probabilityBehind", shot.probabilityBehind());
        json.put("asGood", shot.asGood());
        json.put("tries", shot.tries());
        return json;
    }

    private static Object orNull(@Nullable Object value) {
        return value == null ? NullNode.getInstance() : value;
    }
}
