package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Skills;
import boardside.app.report.DataTable;
import boardside.app.report.Pdf;
import boardside.app.report.Report;
import boardside.app.web.Reports;
import boardside.app.web.Texts;
import boardside.engine.rules.Word;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reports as text, JSON or PDF. */
@Command(
        name = "report",
        description =
                "Put answers together to read or to print: the match card, the bag report, the season, a session.",
        footerHeading = "%n",
        footer = {
            "Without --out the report is written as text. A file is PDF; one that is there is not replaced.",
            "",
            "Exit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input."
        })
final class ReportCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "REPORT", description = "card, bags, season or session.")
    private String kind = "";

    @Option(names = "--out", paramLabel = "FILE", description = "Write a PDF there.")
    private @Nullable Path out;

    @Option(names = "--paper", paramLabel = "SIZE", description = "a4 or letter; a4 unless said.")
    private String paper = "a4";

    @Option(
            names = "--day",
            paramLabel = "DATE",
            description =
                    "The last day that counts, such as 2026-05-31; today unless said. Of a session, the day of it;"
                            + " the last one unless said.")
    private @Nullable LocalDate day;

    @Option(names = "--units", paramLabel = "UNITS", description = "in or cm; in unless said.")
    private String units = "in";

    ReportCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() throws IOException {
        if (!Word.words(Reports.Kind.class).contains(kind)) {
            throw new Failure.BadInput("REPORT: there is no report \"" + kind + "\"; say one of "
                    + String.join(", ", Word.words(Reports.Kind.class)));
        }
        if (!List.of("a4", "letter").contains(paper)) {
            throw new Failure.BadInput("--paper: say a4 or letter, not \"" + paper + "\"");
        }
        if (!List.of("in", "cm").contains(units)) {
            throw new Failure.BadInput("--units: say in or cm, not \"" + units + "\"");
        }
        if (out != null && Files.exists(out)) {
            throw new Failure.BadInput("--out: there is a file " + out + " already; name another, or remove it");
        }
        Reports.Kind asked = Word.of(Reports.Kind.class, kind);
        Reports reports = new Reports(
                context.records(), Texts.in("en"), (player, date) -> Skills.of(context.records(), player, date));
        Player player = context.player();
        LocalDate today = LocalDate.now(context.surroundings().clock());
        LocalDate on = Objects.requireNonNullElseGet(
                day,
                () -> asked == Reports.Kind.SESSION
                        ? reports.lastDay(player, today).orElse(today)
                        : today);
        Optional<Report> found = reports.of(asked, player, on, units);
        if (found.isEmpty()) {
            context.surroundings()
                    .err()
                    .println(
                            asked == Reports.Kind.SESSION
                                    ? "Nothing was thrown on " + on + "."
                                    : "There are no counted records up to " + on + " to report.");
            return Cli.NO;
        }
        Report report = found.get();
        if (out == null) {
            context.answer(json(report), report.toText());
            return Cli.DONE;
        }
        Files.write(
                out,
                Pdf.of(report, Pdf.Paper.valueOf(paper.toUpperCase(Locale.ROOT)), reports.language(), reports.foot()));
        context.say("Written to " + out + ".");
        return Cli.DONE;
    }

    private static Map<String, Object> json(Report report) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("title", report.title());
        json.put("about", report.about());
        json.put("sections", report.sections().stream().map(ReportCommand::json).toList());
        json.put("notes", report.notes());
        return json;
    }

    private static Map<String, Object> json(Report.Section section) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("heading", section.heading());
        json.put("sentences", section.sentences());
        DataTable table = section.table();
        if (table != null) {
            json.put("columns", table.heads());
            json.put("rows", table.rows());
        }
        return json;
    }
}
