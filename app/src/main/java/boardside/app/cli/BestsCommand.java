package boardside.app.cli;

import boardside.app.practice.Player;
import boardside.app.record.Deeds;
import boardside.app.web.BestsPage;
import boardside.app.web.Texts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Personal bests and milestones. */
@Command(name = "bests", description = "Your bests and milestones, from finished runs that count.")
final class BestsCommand implements Callable<Integer> {
    private final Context context;

    BestsCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        Deeds deeds = context.records().deeds();
        Texts texts = Texts.in("en");
        List<Map<String, Object>> bests = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (Deeds.Best best : deeds.bests(player.id())) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("what", BestsPage.name(texts, best.kind()));
            one.put("value", best.held().value());
            one.put("day", best.held().day());
            one.put("run", best.held().run());
            bests.add(one);
            words.add(BestsPage.name(texts, best.kind()) + ": " + BestsPage.value(texts, best) + ", "
                    + best.held().day());
        }
        Deeds.Milestones milestones = deeds.milestones(player.id());
        List<Map<String, Object>> reached = new ArrayList<>();
        for (Deeds.Milestone milestone : milestones.reached()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("what", BestsPage.says(texts, milestone));
            one.put("day", milestone.day());
            reached.add(one);
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("bests", bests);
        answer.put("milestones", reached);
        answer.put("bags", milestones.bags());
        answer.put("nextMilestone", milestones.next() == 0 ? null : (Integer) milestones.next());
        words.add(Words.count(milestones.bags(), "bag") + " thrown in all");
        context.answer(answer, String.join("\n", words));
        return bests.isEmpty() ? Cli.NO : Cli.DONE;
    }
}
