package boardside.app.cli;

import boardside.app.practice.BagSet;
import boardside.app.practice.Contest;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Try;
import boardside.app.record.Climbing;
import boardside.app.record.Games;
import boardside.app.record.Ladder;
import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import boardside.app.record.Skills;
import boardside.app.record.TrialDetail;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Game;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Tally;
import boardside.engine.rules.Word;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
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
    private static final Pattern SCORE = Pattern.compile("(\\d{1,3})-(\\d{1,3})");
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
            description =
                    "Bags in, on and off, such as 3-1-0; or bags in of those thrown, such as 13/20. In a duel or a"
                            + " game with the other side's bags behind a colon, such as 3-1-0:1-2-1; in a game these may be"
                            + " left out. In a placement a try: the target and where the bag ended, such as 2-left:3-left,"
                            + " or yes or no. In a situation a shot and whether it worked, such as cut-left:yes; where the"
                            + " bag ended may follow, such as block@1-middle:no:short.")
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

    @Option(
            names = "--ghost",
            paramLabel = "POINTS",
            description = "The ghost's points a round, 0 to 12; a climb goes on at its next rung unless said.")
    private @Nullable Integer ghost;

    @Option(names = "--target", paramLabel = "POINTS", description = "Points that win a race; 21 unless said.")
    private @Nullable Integer target;

    @Option(names = "--opponent", paramLabel = "NAME", description = "Who was played.")
    private String opponent = "";

    @Option(
            names = "--other-bag",
            paramLabel = "NAME",
            description = "In a duel against yourself: the bag set of side b; a new name makes one.")
    private String otherBag = "";

    @Option(names = "--other-face", paramLabel = "FACE", description = "The face down of side b.")
    private String otherFace = "";

    @Option(names = "--other-approach", paramLabel = "APPROACH", description = "The approach of side b.")
    private String otherApproach = "";

    @Option(
            names = "--score",
            paramLabel = "MINE-THEIRS",
            description = "A game's final score, such as 21-17, where theirs is not known round by round.")
    private String score = "";

    @Option(
            names = "--situation",
            paramLabel = "NAME",
            description =
                    "What lies on the board in a situation: one of your own by its name, or a common one such as gate.")
    private String situation = "";

    @Option(names = "--mirrored", description = "The situation's mirror image.")
    private boolean mirrored;

    @Option(names = "--thrown", description = "The bags on the board were thrown there rather than laid by hand.")
    private boolean thrown;

    @Option(
            names = "--trial",
            paramLabel = "NAME",
            description =
                    "In a trial: which one; the only open one unless said. Its order says what each round is thrown with.")
    private @Nullable String trial;

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
        if (kind == Drill.RACE && ghost == null) {
            faults.add("a " + kind.word() + " is thrown against a ghost; add --ghost with its points a round, 0 to 12");
        }
        if (kind == Drill.TRIAL && !(bag + face + approach).isEmpty()) {
            faults.add(
                    "--bag, --face and --approach: what a trial is thrown with was fixed when it began; leave them out");
        }
        if (kind != Drill.TRIAL && trial != null) {
            faults.add("--trial: a trial is thrown with: boardside record trial; leave it out");
        }
        boolean alone = kind == Drill.DUEL && opponent.isBlank();
        Face faceOfB = word(faults, "--other-face", Face.class, otherFace);
        Approach approachOfB = word(faults, "--other-approach", Approach.class, otherApproach);
        if (!alone && !(otherBag + otherFace + otherApproach).isEmpty()) {
            faults.add(
                    "--other-bag, --other-face and --other-approach say how side b of a duel against yourself throws;"
                            + " leave them out");
        }
        boolean tried = kind == Drill.PLACEMENT || kind == Drill.SITUATION;
        if (kind != Drill.SITUATION && (!situation.isEmpty() || mirrored || thrown)) {
            faults.add("--situation, --mirrored and --thrown belong to tries in a situation; leave them out");
        }
        if (tried && rounds.stream().noneMatch(RecordCommand::counted)) {
            if (!faults.isEmpty() || kind == null || thrownAt == null || stake == null) {
                throw new Failure.BadInput(faults);
            }
            TriesRun run = new TriesRun(context, kind, rounds, situation, mirrored, thrown);
            return run.record(
                    bag, new Try.How("", faceDown, taken, thrownAt, stake, play), start, warmUp, opponent, now);
        }
        Run.Score told = score(faults, kind);
        List<Counts> counts = new ArrayList<>();
        List<Optional<Counts>> theirs = new ArrayList<>();
        for (String round : rounds) {
            String[] sides = round.split(":", -1);
            boolean two = kind == Drill.DUEL || kind == Drill.GAME;
            if (sides.length > (two ? 2 : 1) || kind == Drill.DUEL && sides.length < 2) {
                faults.add("round \"" + round + "\": "
                        + (kind == Drill.DUEL
                                ? "write both sides of a duel, such as 3-1-0:1-2-1"
                                : two
                                        ? "write one side or both, such as 3-1-0:1-2-1"
                                        : "a " + drill + " has one side; write it such as 3-1-0"));
                continue;
            }
            count(faults, sides[0]).ifPresent(counts::add);
            theirs.add(sides.length == 2 ? count(faults, sides[1]) : Optional.empty());
        }
        if (!faults.isEmpty() || kind == null || thrownAt == null || stake == null) {
            throw new Failure.BadInput(faults);
        }

        Records records = context.records();
        Player player = context.writingPlayer();
        Ids ids = records.ids();
        List<Operation> operations = new ArrayList<>();
        String bagId = bagId(records, player.id(), ids, operations, bag);
        String bagOfB =
                otherBag.strip().equals(bag.strip()) ? bagId : bagId(records, player.id(), ids, operations, otherBag);
        Integer rung = kind == Drill.CLIMB && ghost == null ? (Integer) nextRung(records, player.id(), now) : ghost;
        Contest contest = kind == Drill.DUEL || kind == Drill.GAME
                ? new Contest(
                        alone,
                        alone || theirs.stream().anyMatch(Optional::isPresent),
                        false,
                        true,
                        FirstThrow.KEEP,
                        0,
                        alone ? new Contest.Way(bagOfB, faceOfB, approachOfB) : null)
                : null;
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
                    setup.ghost = rung;
                    setup.contest = contest;
                    setup.target = target;
                    setup.onlyIn = counts.get(0).on() == null;
                })));
        List<Contest.Way> ways = kind == Drill.TRIAL
                ? trialWays(operations, ids, run, counts)
                : Collections.nCopies(counts.size(), new Contest.Way(bagId, faceDown, taken));
        Contest.Way other = alone ? new Contest.Way(bagOfB, faceOfB, approachOfB) : new Contest.Way("", null, null);
        for (int i = 0; i < counts.size(); i++) {
            int number = i + 1;
            put(
                    operations,
                    ids,
                    run,
                    number,
                    alone ? Side.A : Side.ME,
                    counts.get(i),
                    ways.get(i),
                    thrownAt,
                    stake,
                    play,
                    rung);
            theirs.get(i)
                    .ifPresent(bags -> put(
                            operations,
                            ids,
                            run,
                            number,
                            alone ? Side.B : Side.VERSUS,
                            bags,
                            other,
                            thrownAt,
                            stake,
                            play,
                            null));
        }
        if (told != null) {
            operations.add(new Operation.ScoreRun(ids.next(), run, told));
        }
        records.applyAll(player.id(), operations, now.toInstant());
        finish(records, player.id(), run, kind, now);
        tell(records.run(player.id(), run).orElseThrow());
        return Cli.DONE;
    }

    private static boolean counted(String round) {
        return ROUND.matcher(round).matches() || ONLY_IN.matcher(round).matches();
    }

    /** How each round of a trial is thrown: its order says. */
    private List<Contest.Way> trialWays(List<Operation> operations, Ids ids, String run, List<Counts> counts) {
        TrialDetail detail = TrialCommand.named(context, trial);
        operations.add(new Operation.ThrowTrial(ids.next(), detail.plan().id(), run));
        List<Integer> candidates =
                detail.thrownBy(counts.stream().map(Counts::tally).toList());
        if (candidates.size() < counts.size()) {
            throw new Failure.BadInput("the trial is decided after " + Words.count(candidates.size(), "round")
                    + " of these; leave the rest out");
        }
        return candidates.stream()
                .map(candidate -> detail.plan().candidates().get(candidate))
                .toList();
    }

    private void put(
            List<Operation> operations,
            Ids ids,
            String run,
            int number,
            Side side,
            Counts bags,
            Contest.Way way,
            BoardKind thrownAt,
            Setting stake,
            @Nullable Conditions play,
            @Nullable Integer against) {
        Line line;
        try {
            line = new Line(
                    way.bag(),
                    way.face(),
                    way.approach(),
                    thrownAt,
                    stake,
                    play,
                    against,
                    bags.thrown(),
                    bags.in(),
                    bags.on(),
                    bags.off(),
                    Line.Misses.NONE,
                    "",
                    "");
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput("round " + number + ", " + rounds.get(number - 1) + ": " + e.getMessage());
        }
        operations.add(new Operation.PutRound(run, new Round(number, side, ids.next(), List.of(line), List.of())));
    }

    private static int nextRung(Records records, int player, OffsetDateTime now) {
        return Climbing.of(Ladder.of(records, player), Skills.of(records, player, now.toLocalDate()))
                .next();
    }

    private Run.@Nullable Score score(List<String> faults, @Nullable Drill kind) {
        if (score.isEmpty()) {
            return null;
        }
        if (kind != Drill.GAME) {
            faults.add("--score: a final score is told of a game; leave it out");
            return null;
        }
        Matcher both = SCORE.matcher(score);
        if (!both.matches()) {
            faults.add("--score: write it as my points and theirs, such as 21-17");
            return null;
        }
        try {
            return new Run.Score(Integer.parseInt(both.group(1)), Integer.parseInt(both.group(2)));
        } catch (IllegalArgumentException e) {
            faults.add("--score: " + e.getMessage());
            return null;
        }
    }

    private record Counts(
            int thrown,
            int in,
            @Nullable Integer on,
            @Nullable Integer off) {
        Tally tally() {
            return new Tally(in, on == null ? 0 : on, off == null ? thrown - in : off);
        }
    }

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

    static String bagId(Records records, int player, Ids ids, List<Operation> operations, String typed) {
        String name = typed.strip();
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
        if (Games.played(detail.run().drill())) {
            Games.Played played = Games.after(detail.run(), detail.rounds());
            Game game = played.game();
            Run.Score told = game.over() ? null : detail.run().score();
            boolean known = played.known() || told != null;
            int mine = told == null ? game.mine() : told.mine();
            int theirs = told == null ? game.theirs() : told.theirs();
            if (detail.run().drill().needsGhost()) {
                answer.put("ghost", detail.run().setup().ghost());
            }
            answer.put("score", known ? List.of(mine, theirs) : null);
            answer.put("result", played.result().name().toLowerCase(java.util.Locale.ROOT));
            words += (known ? ", " + mine + "-" + theirs : ", score not known")
                    + switch (played.result()) {
                        case WON -> ", won";
                        case LOST -> ", lost";
                        case OPEN -> ", not over yet";
                    };
        }
        context.answer(answer, words);
    }
}
