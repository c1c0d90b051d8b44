package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Try;
import boardside.app.record.OfferedSituation;
import boardside.app.record.Records;
import boardside.app.record.TryRates;
import boardside.app.record.TryStanding;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Position;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A placement or situation run recorded from the terminal.
 *
 * @param typed the tries, see {@link TypedTries}
 * @param situation name of what lies on the board, or empty
 * @param mirrored whether its mirror image is played
 * @param thrown whether the bags on the board were thrown there rather than laid by hand
 */
record TriesRun(Context context, Drill drill, List<String> typed, String situation, boolean mirrored, boolean thrown) {

    /**
     * Records and tells it.
     *
     * @param bag name of the bag set, or empty
     * @param how what was thrown how, but for the bag set
     * @throws Failure.BadInput naming every fault; nothing is stored then
     */
    Integer record(String bag, Try.How how, String start, boolean warmUp, String opponent, OffsetDateTime now) {
        Records records = context.records();
        Player player = context.writingPlayer();
        Ids ids = records.ids();
        List<Operation> operations = new ArrayList<>();
        OfferedSituation chosen = drill == Drill.SITUATION
                ? situation(records, player)
                : new OfferedSituation("", "", null, Position.EMPTY);
        Position position = mirrored ? chosen.position().mirrored() : chosen.position();
        String bagId = RecordCommand.bagId(records, player.id(), ids, operations, bag);
        Try.How own = new Try.How(bagId, how.face(), how.approach(), how.board(), how.setting(), how.conditions());
        boolean byHand = !thrown && !position.bags().isEmpty();
        TypedTries reading = new TypedTries(drill, position, chosen.id(), byHand, own);
        List<String> faults = new ArrayList<>();
        List<Try.Played> tries = reading.read(typed, faults);
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
        String name = chosen.common() == null ? chosen.name() : chosen.common().word();
        Setup setup = Setup.plain().with(draft -> {
            draft.bags = bagId.isEmpty() ? List.of() : List.of(bagId);
            draft.face = how.face();
            draft.approach = how.approach();
            draft.board = how.board();
            draft.setting = how.setting();
            draft.conditions = how.conditions();
            draft.exercise = reading.exercise(tries, name);
        });
        String run = ids.next();
        operations.add(
                new Operation.StartRun(ids.next(), run, ids.next(), drill, start, warmUp, opponent, null, null, setup));
        for (int i = 0; i < tries.size(); i++) {
            operations.add(new Operation.PutTry(ids.next(), run, i + 1, tries.get(i)));
        }
        operations.add(new Operation.FinishRun(ids.next(), run, now.toString()));
        records.applyAll(player.id(), operations, now.toInstant());
        tell(records, player.id(), records.run(player.id(), run).orElseThrow().run(), now.toLocalDate());
        return Cli.DONE;
    }

    private OfferedSituation situation(Records records, Player player) {
        String wanted = situation.strip();
        List<OfferedSituation> offered = OfferedSituation.of(records, player);
        return offered.stream()
                .filter(one -> name(one).equals(wanted))
                .findFirst()
                .orElseThrow(() -> new Failure.BadInput("--situation: "
                        + (wanted.isEmpty() ? "say what lies on the board" : "there is no situation \"" + wanted + "\"")
                        + "; use one of "
                        + offered.stream().map(TriesRun::name).collect(Collectors.joining(", "))));
    }

    private static String name(OfferedSituation one) {
        return one.common() == null ? one.name() : one.common().word();
    }

    /** What the summary says: how many worked in this run, and how often each works over all tries. */
    private void tell(Records records, int player, Run run, LocalDate day) {
        List<Try> tries = records.tries(player, run.id());
        TryStanding.Sum sum = TryStanding.after(run.setup(), tries).of(Side.ME);
        TryJson wording = new TryJson(records, player);
        List<Map<String, Object>> rates = new ArrayList<>();
        List<String> words = new ArrayList<>();
        words.add(drill.word() + ": " + sum.worked() + " of " + (sum.tries() == 1 ? "1 try" : sum.tries() + " tries")
                + " worked");
        for (TryRates.Row row :
                TryRates.of(records, player, drill, day, Set.of()).rows()) {
            int counted = 0;
            int worked = 0;
            for (Try tried : tries) {
                Try.Played played = tried.played();
                if (played != null && row.counts(drill, played)) {
                    counted++;
                    worked += played.worked() ? 1 : 0;
                }
            }
            if (counted > 0 && !run.warmUp()) {
                Map<String, Object> rate = wording.rate(drill, row);
                rate.put("run", new InRun(counted, worked));
                rates.add(rate);
                words.add(TryJson.name(rate) + ": " + worked + " of " + counted + "; over all tries "
                        + TryJson.percent(row.rate()));
            }
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("run", run.id());
        answer.put("session", run.session());
        answer.put("drill", drill.word());
        answer.put("tries", sum.tries());
        answer.put("worked", sum.worked());
        answer.put("finished", run.finishedAt() != null);
        answer.put("rates", rates);
        context.answer(answer, String.join("\n", words));
    }

    private record InRun(int tries, int worked) {}
}
