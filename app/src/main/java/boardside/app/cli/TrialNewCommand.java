package boardside.app.cli;

import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Player;
import boardside.app.practice.TrialPlan;
import boardside.app.record.Records;
import boardside.app.record.SharedTrial;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import boardside.engine.trial.TrialDesign;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A new trial. */
@Command(name = "new", description = "Set up a trial; see what it will take first: boardside trial outlook.")
final class TrialNewCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "What it is called.")
    private @Nullable String name;

    @Option(
            names = "--candidate",
            paramLabel = "BAG[,FACE][,APPROACH]",
            description =
                    "A way to throw, such as \"Blue,fast\", \"Blue,slow,aggressive\" or \",fast\"; 2 to 8 of them. A new"
                            + " bag name makes a bag set.")
    private List<String> candidates = List.of();

    @Option(names = "--from", paramLabel = "FILE", description = "A set-up that somebody shared.")
    private @Nullable Path from;

    @Option(names = "--board", paramLabel = "BOARD", description = "regulation (usual) or narrow.")
    private String board = BoardKind.REGULATION.word();

    @Option(names = "--blocks", paramLabel = "N", description = "Most blocks: 25, 50 (usual), 100 or 200.")
    private int blocks = TrialDesign.USUAL_LENGTH;

    @Option(
            names = "--margin",
            paramLabel = "POINTS",
            description = "Points a round within which candidates count as equal; 0.5 unless said.")
    private double margin = TrialDesign.USUAL_MARGIN;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Where the order of blocks comes from; drawn unless said.")
    private @Nullable Long seed;

    TrialNewCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        SharedTrial shared = OddsInputs.checked("--candidate, --from", this::shared);
        Player player = context.writingPlayer();
        Records records = context.records();
        long start = seed == null ? new SecureRandom().nextLong() : seed;
        // Held against the rules before any bag set is made.
        OddsInputs.checked("--candidate, --blocks, --margin", () -> shared.plan(UnaryOperator.identity(), start));
        TrialPlan plan = shared.plan(bag -> bagNamed(records, player.id(), bag), start);
        TrialPlan made = records.trials().add(player.id(), plan);
        var detail = records.trials().find(player.id(), made.id()).orElseThrow();
        context.answer(
                TrialAnswers.plan(detail), "New trial: " + made.name() + "\n  " + String.join("\n  ", detail.names()));
        return Cli.DONE;
    }

    private SharedTrial shared() {
        Path file = from;
        if (file != null) {
            SharedTrial read = SharedTrial.read(text(file));
            return name == null
                    ? read
                    : new SharedTrial(name, read.candidates(), read.board(), read.longest(), read.margin());
        }
        return new SharedTrial(
                Objects.requireNonNullElse(name, ""),
                candidates(candidates),
                Word.of(BoardKind.class, board),
                blocks,
                margin);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new Failure.BadInput(file + ": cannot be read; give the file of a shared trial");
        }
    }

    /** Candidates as typed: bag set, face and approach between commas, in any order after the first. */
    static List<SharedTrial.Candidate> candidates(List<String> typed) {
        List<SharedTrial.Candidate> read = new ArrayList<>();
        for (String one : typed) {
            String[] parts = one.split(",", -1);
            Face face = null;
            Approach approach = null;
            for (int i = 1; i < parts.length; i++) {
                String word = parts[i].strip();
                if (Word.words(Face.class).contains(word)) {
                    face = Word.of(Face.class, word);
                } else if (!word.isEmpty()) {
                    approach = Word.of(Approach.class, word);
                }
            }
            String bag = parts[0].strip();
            read.add(new SharedTrial.Candidate(bag.isEmpty() ? null : bag, face, approach));
        }
        return read;
    }

    private static String bagNamed(Records records, int player, String name) {
        Ids ids = records.ids();
        return records.bags(player).stream()
                .filter(bag -> bag.name().equals(name))
                .findFirst()
                .map(BagSet::id)
                .orElseGet(() ->
                        records.saveBag(player, BagSet.named(ids.next(), name)).id());
    }
}
