package boardside.app.cli;

import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.record.Games;
import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Game;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Records a run from the terminal. */
@Command(name = "record", description = "Record a run from the terminal, each round as in-on-off.")
final class RecordCommand implements Callable<Integer> {
    private static final Pattern ROUND = Pattern.compile("(\\d{1,3})-(\\d{1,3})-(\\d{1,3})");
    private static final Pattern ONLY_IN = Pattern.compile("(\\d{1,3})/(\\d{1,3})");
    private static final int USUAL_ROUNDS = 10;

    private final Context context;

    @Parameters(
            index = "0",
            paramLabel = "DRILL",
            description = "What the run is a go at, such as total, race or volume.")
    private String drill = "";

    @Parameters(
            index = "1..*",
            arity = "1..*",
            paramLabel = "ROUND",
            description = "Bags in, on and off, such as 3-1-0; or bags in of those thrown, such as 13/20.")
    private List<String> rounds = List.of();

    @Option(names = "--bag", paramLabel = "NAME", description = "The bag set; a new name makes one.")
    private String bag = "";

    @Option(names = "--face", paramLabel = "FACE", description = "The face down: slow or fast.")
    private String face = "";

    @Option(names = "--approach", paramLabel = "APPROACH", description = "conservative or aggressive.")
    private String approach = "";

    @Option(names = "--board", paramLabel = "BOARD", description = "regulation (usual) or narrow.")
    private String board = BoardKind.REGULATION.word();

    @Option(names = "--setting", paramLabel = "SETTING", description = "practice (usual), league or tournament.")
    private String setting = Setting.PRACTICE.word();

    @Option(
            names = "--conditions",
            paramLabel = "CONDITIONS",
            description = "How the boards play: slow, normal or fast.")
    private String conditions = "";

    @Option(names = "--ghost", paramLabel = "POINTS", description = "The ghost's points a round, 0 to 12.")
    private @Nullable Integer ghost;

    @Option(names = "--target", paramLabel = "POINTS", description = "Points that win a race; 21 unless said.")
    private @Nullable Integer target;

    @Option(names = "--opponent", paramLabel = "NAME", description = "Who was played.")
    private String opponent = "";

    @Option(names = "--warm-up", description = "Keep the run, but do not count it.")
    private boolean warmUp;

    @Option(names = "--started-at", paramLabel = "TIME", description = "ISO-8601 with offset; now unless said.")
    private @Nullable String startedAt;

    RecordCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        List<String> faults = new ArrayList<>();
        Drill kind = word(faults, "DRILL", Drill.class, drill);
        Face faceDown = word(faults, "--face", Face.class, face);
        Approach taken = word(faults, "--approach", Approach.class, approach);
        BoardKind thrownAt = word(faults, "--board", BoardKind.class, board);
        Setting stake = word(faults, "--setting", Setting.class, setting);
        Conditions play = word(faults, "--conditions", Conditions.class, conditions);
        OffsetDateTime now = OffsetDateTime.now(context.surroundings().clock()).truncatedTo(ChronoUnit.MILLIS);
        String start = startedAt == null ? now.toString() : startedAt;
        try {
            Moment.of(start);
        } catch (IllegalArgumentException e) {
            faults.add("--started-at: " + e.getMessage());
        }
        if (ghost != null && !(ghost >= 0 && ghost <= 12)) {
            faults.add("--ghost: a ghost scores 0 to 12 a round, not " + ghost);
        }
        if (target != null && !(target >= 1 && target <= 999)) {
            faults.add("--target: 1 to 999 points to reach, not " + target);
        }
        if (kind != null && kind.needsGhost() && ghost == null) {
            faults.add("a " + kind.word() + " is thrown against a ghost; add --ghost with its points a round, 0 to 12");
        }
        List<Counts> counts = new ArrayList<>();
        for (String round : rounds) {
            count(faults, round).ifPresent(counts::add);
        }
        if (!faults.isEmpty() || kind == null || thrownAt == null || stake == null) {
            throw new Failure.BadInput(faults);
        }

        Records records = context.records();
        Player player = context.writingPlayer();
        Ids ids = records.ids();
        List<Operation> operations = new ArrayList<>();
        String bagId = bagId(records, player.id(), ids, operations);
        String run = ids.next();
        operations.add(new Operation.StartRun(
                ids.next(),
                run,
                ids.next(),
                kind,
                start,
                warmUp,
                opponent,
                target,
                null,
                Setup.plain().with(setup -> {
                    setup.bags = bagId.isEmpty() ? List.of() : List.of(bagId);
                    setup.bagsPerSet = Math.max(1, Math.min(100, counts.get(0).thrown()));
                    setup.face = faceDown;
                    setup.approach = taken;
                    setup.board = thrownAt;
                    setup.setting = stake;
                    setup.conditions = play;
                    setup.rounds = kind == Drill.TOTAL ? (Integer) Math.max(USUAL_ROUNDS, counts.size()) : null;
                    setup.ghost = ghost;
                    setup.target = target;
                    setup.onlyIn = counts.get(0).on() == null;
                })));
        for (int i = 0; i < counts.size(); i++) {
            Counts count = counts.get(i);
            Line line;
            try {
                line = new Line(
                        bagId,
                        faceDown,
                        taken,
                        thrownAt,
                        stake,
                        play,
                        ghost,
                        count.thrown(),
                        count.in(),
                        count.on(),
                        count.off(),
                        Line.Misses.NONE,
                        "",
                        "");
            } catch (IllegalArgumentException e) {
                throw new Failure.BadInput("round " + (i + 1) + ", " + rounds.get(i) + ": " + e.getMessage());
            }
            operations.add(
                    new Operation.PutRound(run, new Round(i + 1, Side.ME, ids.next(), List.of(line), List.of())));
        }
        records.applyAll(player.id(), operations, now.toInstant());
        finish(records, player.id(), run, kind, now);
        tell(records.run(player.id(), run).orElseThrow());
        return Cli.DONE;
    }

    private record Counts(
            int thrown,
            int in,
            @Nullable Integer on,
            @Nullable Integer off) {}

    private static Optional<Counts> count(List<String> faults, String round) {
        Matcher full = ROUND.matcher(round);
        if (full.matches()) {
            int in = Integer.parseInt(full.group(1));
            int on = Integer.parseInt(full.group(2));
            int off = Integer.parseInt(full.group(3));
            return Optional.of(new Counts(in + on + off, in, on, off));
        }
        Matcher onlyIn = ONLY_IN.matcher(round);
        if (onlyIn.matches()) {
            return Optional.of(
                    new Counts(Integer.parseInt(onlyIn.group(2)), Integer.parseInt(onlyIn.group(1)), null, null));
        }
        faults.add("round \"" + round + "\": write it as bags in, on and off, such as 3-1-0");
        return Optional.empty();
    }

    private static <E extends Enum<E> & Word> @Nullable E word(
            List<String> faults, String option, Class<E> kind, String word) {
        if (word.isEmpty()) {
            return null;
        }
        try {
            return Word.of(kind, word);
        } catch (IllegalArgumentException e) {
            faults.add(option + ": " + e.getMessage());
            return null;
        }
    }

    private String bagId(Records records, int player, Ids ids, List<Operation> operations) {
        String name = bag.strip();
        if (name.isEmpty()) {
            return "";
        }
        Optional<BagSet> known = records.bags(player).stream()
                .filter(set -> set.name().equals(name))
                .findFirst();
        if (known.isPresent()) {
            return known.get().id();
        }
        String id = ids.next();
        operations.add(new Operation.NameBag(ids.next(), id, name));
        return id;
    }

    /** A race goes on until somebody has won, a total until its rounds are thrown; the rest is done. */
    private static void finish(Records records, int player, String run, Drill drill, OffsetDateTime now) {
        RunDetail detail = records.run(player, run).orElseThrow();
        Integer planned = detail.run().setup().rounds();
        boolean done = Games.played(drill)
                ? Games.after(detail.run(), detail.rounds()).over()
                : planned == null || detail.rounds().size() >= planned;
        if (done) {
            Instant instant = now.toInstant();
            records.applyAll(
                    player, List.of(new Operation.FinishRun(records.ids().next(), run, now.toString())), instant);
        }
    }

    private void tell(RunDetail detail) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("run", detail.run().id());
        answer.put("session", detail.run().session());
        answer.put("drill", detail.run().drill().word());
        answer.put("rounds", detail.run().sum().rounds());
        answer.put("thrown", detail.run().sum().thrown());
        answer.put("in", detail.run().sum().in());
        Integer points = detail.run().sum().points();
        answer.put("points", points);
        answer.put("finished", detail.run().finishedAt() != null);
        String words = detail.run().drill().word() + ": "
                + Words.count(detail.run().sum().rounds(), "round")
                + (points == null
                        ? ", " + detail.run().sum().in() + " of "
                                + Words.count(detail.run().sum().thrown(), "bag") + " in"
                        : ", " + Words.count(points, "point"));
        if (detail.run().drill().needsGhost()) {
            Game game = Games.after(detail.run(), detail.rounds()).game();
            answer.put("score", List.of(game.mine(), game.theirs()));
            answer.put("result", game.result().name().toLowerCase(java.util.Locale.ROOT));
            words += ", " + game.mine() + "-" + game.theirs()
                    + switch (game.result()) {
                        case WON -> ", won";
                        case LOST -> ", lost";
                        case OPEN -> ", not over yet";
                    };
        }
        context.answer(answer, words);
    }
}
