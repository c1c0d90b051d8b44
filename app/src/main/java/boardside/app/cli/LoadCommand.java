package boardside.app.cli;

import boardside.app.practice.Player;
import boardside.app.record.Load;
import boardside.app.web.CalendarPage;
import boardside.app.web.Texts;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** How many bags are thrown, and whether that rises sharply. */
@Command(
        name = "load",
        description =
                "Bags of today and of the last seven days against the four weeks before: general advice, no diagnosis.")
final class LoadCommand implements Callable<Integer> {
    private final Context context;

    LoadCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        LocalDate today = LocalDate.now(context.surroundings().clock());
        Load load = context.records().deeds().load(player.id(), today);
        Texts texts = Texts.in("en");
        String caution = CalendarPage.caution(texts, load);
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("today", load.today());
        answer.put("week", load.week());
        answer.put("usualWeek", load.usual());
        answer.put("caution", caution);
        context.answer(answer, CalendarPage.says(texts, load) + (caution == null ? "" : "\n" + caution));
        return Cli.DONE;
    }
}
