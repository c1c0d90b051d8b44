package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Planning;
import boardside.app.record.Playbooks;
import boardside.app.record.Records;
import boardside.app.record.Skills;
import boardside.app.web.PlanWords;
import boardside.app.web.Texts;
import boardside.engine.plan.Block;
import boardside.engine.plan.Energy;
import boardside.engine.plan.Means;
import boardside.engine.plan.Plan;
import boardside.engine.plan.Planner;
import boardside.engine.plan.PlayerState;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import boardside.engine.skill.Skill;
import com.fasterxml.jackson.databind.node.NullNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What to practise in the minutes there are. */
@Command(name = "plan", description = "The best use of the minutes you have: a session, block by block, with reasons.")
final class PlanCommand implements Callable<Integer> {
    private final Context context;

    @Option(names = "--minutes", paramLabel = "N", required = true, description = "Minutes you have, 5 to 240.")
    private int minutes;

    @Option(names = "--energy", paramLabel = "E", description = "low, normal (unless said) or high.")
    private String energy = Energy.NORMAL.word();

    @Option(names = "--bag-sets", paramLabel = "N", description = "Bag sets at hand; all in use unless said.")
    private @Nullable Integer bagSets;

    @Option(
            names = "--boards",
            paramLabel = "KIND",
            split = ",",
            description = "Boards at hand: regulation, narrow, or both with a comma; those you have unless said.")
    private @Nullable List<String> boards;

    @Option(names = "--company", description = "Somebody throws along.")
    private boolean company;

    @Option(names = "--as-of", paramLabel = "DATE", description = "The day that is today, such as 2026-05-31.")
    private @Nullable LocalDate asOf;

    PlanCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        Records records = context.records();
        LocalDate today = Objects.requireNonNullElseGet(
                asOf, () -> LocalDate.now(context.surroundings().clock()));
        Means means = means(records, player);
        Skill skill = Skills.of(records, player.id(), today);
        PlayerState state = Planning.state(records, player, skill, today);
        if (Planning.asksForPlaybook(state)) {
            state = state.withWorths(Planning.worths(Playbooks.worked(records, player, today)));
        }
        Plan plan = Planner.plan(means, state);
        PlanWords words = new PlanWords(Texts.in("en"));
        context.answer(json(words, plan), text(words, plan));
        return Cli.DONE;
    }

    private Means means(Records records, Player player) {
        List<String> faults = new ArrayList<>();
        Energy fresh = Energy.NORMAL;
        try {
            fresh = Word.of(Energy.class, energy);
        } catch (IllegalArgumentException e) {
            faults.add("--energy: " + e.getMessage());
        }
        Set<BoardKind> kinds = EnumSet.noneOf(BoardKind.class);
        for (String word : boards == null ? List.<String>of() : boards) {
            try {
                kinds.add(Word.of(BoardKind.class, word));
            } catch (IllegalArgumentException e) {
                faults.add("--boards: " + e.getMessage());
            }
        }
        if (boards == null) {
            kinds.addAll(Planning.boards(records, player));
        }
        int sets = bagSets == null
                ? Math.max(
                        1,
                        Math.min(
                                Means.MOST_BAG_SETS,
                                Planning.bags(records, player).size()))
                : bagSets;
        if (faults.isEmpty()) {
            Means.faults(minutes, sets, kinds).forEach(fault -> faults.add("--" + fault));
        }
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
        return new Means(minutes, fresh, sets, kinds, company);
    }

    /** As design 5.4 has it, with more keys behind. */
    private static Map<String, Object> json(PlanWords words, Plan plan) {
        List<Map<String, Object>> blocks = new ArrayList<>();
        for (Block block : plan.blocks()) {
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("drill", block.activity().word());
            json.put("minutes", block.minutes());
            json.put("throws", block.throwsPlanned());
            json.put("bag", orNull(block.bags().isEmpty() ? null : block.bags().get(0)));
            json.put("approach", orNull(block.approach()));
            json.put("board", orNull(block.board()));
            json.put("ghost", orNull(block.ghost()));
            json.put("target", orNull(block.target()));
            json.put("reason", words.why(block));
            json.put("rounds", block.rounds());
            json.put("bags", block.bags());
            json.put("aim", orNull(block.aim().isEmpty() ? null : block.aim()));
            json.put("choice", block.choice());
            json.put("servesGoal", block.serves());
            blocks.add(json);
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("minutes", plan.minutes());
        answer.put("blocks", blocks);
        answer.put("limited", plan.limited());
        answer.put("notes", words.notes(plan));
        return answer;
    }

    private static Object orNull(@Nullable Object value) {
        return value == null ? NullNode.getInstance() : value;
    }

    private static String text(PlanWords words, Plan plan) {
        List<String> lines = new ArrayList<>(List.of(words.sum(plan)));
        for (Block block : plan.blocks()) {
            lines.add(String.format("  %3d min  %s: %s", block.minutes(), words.name(block), words.does(block)));
            lines.add("           " + words.why(block));
        }
        lines.addAll(words.notes(plan));
        return String.join("\n", lines);
    }
}
