package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.report.Pdf;
import boardside.app.report.Report;
import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** Reports to read on the screen, and the same on paper. */
public final class ReportsPage {
    private final Web web;
    private final Reports reports;
    private final Remembered<Optional<Report>> remembered;

    ReportsPage(Web web) {
        this.web = web;
        this.reports = new Reports(web.records(), web.texts(), web.skills()::skill);
        this.remembered = web.remembered();
    }

    /** A report to choose, by its word. */
    public record Choice(String kind, String name, String about) {}

    /**
     * What a report's page shows.
     *
     * @param address of the same on paper, to which a size is added
     */
    public record View(Report report, String address) {}

    void list(Context ctx) {
        Texts texts = web.texts();
        List<Choice> choices = Word.words(Reports.Kind.class).stream()
                .map(kind -> new Choice(kind, texts.of("report." + kind), texts.of("report." + kind + ".about")))
                .toList();
        web.show(ctx, "reports", texts.of("report.title"), Map.of("choices", choices));
    }

    void show(Context ctx) {
        Reports.Kind kind = kind(ctx);
        LocalDate day = day(ctx, kind);
        web.showFound(
                ctx,
                "report",
                web.texts().of("report." + kind.word()),
                found(ctx, kind, day)
                        .map(found -> new Remembered.Found<>(
                                new View(
                                        there(found.value(), kind, day),
                                        "/reports/" + kind.word() + "/paper?day=" + day + "&size="),
                                found.behind())));
    }

    void paper(Context ctx) {
        Reports.Kind kind = kind(ctx);
        LocalDate day = day(ctx, kind);
        String size = Objects.requireNonNullElse(ctx.queryParam("size"), "a4");
        Pdf.Paper paper = size.equals("letter") ? Pdf.Paper.LETTER : Pdf.Paper.A4;
        Optional<Remembered.Found<Optional<Report>>> found = found(ctx, kind, day);
        if (found.isEmpty()) {
            ctx.redirect("/reports/" + kind.word() + "?day=" + day);
            return;
        }
        Report report = there(found.get().value(), kind, day);
        ctx.contentType("application/pdf")
                .header("Content-Disposition", "inline; filename=\"boardside-" + kind.word() + "-" + day + ".pdf\"")
                .result(Pdf.of(report, paper, reports.language(), reports.foot()));
    }

    private Optional<Remembered.Found<Optional<Report>>> found(Context ctx, Reports.Kind kind, LocalDate day) {
        Player player = web.player(ctx);
        String units = web.look(ctx).units();
        return remembered.soon(
                player, web.today(), kind + " " + day + " " + units, () -> reports.of(kind, player, day, units));
    }

    private Report there(Optional<Report> report, Reports.Kind kind, LocalDate day) {
        return report.orElseThrow(() -> new Refusal(
                404,
                web.texts()
                        .of(
                                kind == Reports.Kind.SESSION ? "report.none.day" : "report.none",
                                web.texts().day(day))));
    }

    private Reports.Kind kind(Context ctx) {
        String word = ctx.pathParam("kind");
        if (!Word.words(Reports.Kind.class).contains(word)) {
            throw new Refusal(404, web.texts().of("fault.nothing"));
        }
        return Word.of(Reports.Kind.class, word);
    }

    /** The day asked for; of a session, without one, the last on which something was thrown; else today. */
    private LocalDate day(Context ctx, Reports.Kind kind) {
        String asked = ctx.queryParam("day");
        if (asked == null) {
            return kind == Reports.Kind.SESSION
                    ? reports.lastDay(web.player(ctx), web.today()).orElse(web.today())
                    : web.today();
        }
        try {
            return LocalDate.parse(asked);
        } catch (DateTimeException e) {
            throw new Refusal(404, web.texts().of("card.day.fault", asked));
        }
    }
}
