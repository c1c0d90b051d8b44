package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.SkillPictures;
import boardside.engine.skill.ForecastsAnswer;
import boardside.engine.skill.ForecastsAnswer.Forecasts;
import io.javalin.http.Context;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How good the program's own forecasts were. */
public final class ForecastsPage {
    private final Web web;
    private final Remembered<View> remembered;

    ForecastsPage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** What the page shows; without enough totals there is no picture. */
    public record View(String sentence, @Nullable Picture picture) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        web.showFound(
                ctx,
                "forecasts",
                web.texts().of("forecasts.title"),
                remembered.soon(player, web.today(), "", () -> view(player)));
    }

    private View view(Player player) {
        ForecastsAnswer answer = web.skills().skill(player.id(), web.today()).forecasts();
        return new View(answer.sentence(), answer instanceof Forecasts forecasts ? picture(forecasts) : null);
    }

    private Picture picture(Forecasts forecasts) {
        Texts texts = web.texts();
        List<List<String>> rows = forecasts.bins().stream()
                .map(bin -> List.of(
                        Numbers.inHundred(bin.stated()),
                        Numbers.inHundred(bin.happened().estimate()),
                        Numbers.inHundred(bin.happened().low()) + "\u2013"
                                + Numbers.inHundred(bin.happened().high()),
                        String.valueOf(bin.statements())))
                .toList();
        return SkillPictures.reliability(
                texts.of("forecasts.picture"),
                texts.of("forecasts.picture.about"),
                new DataTable(
                        List.of(
                                texts.of("forecasts.table.said"),
                                texts.of("forecasts.table.happened"),
                                texts.of("form.table.range"),
                                texts.of("forecasts.table.number")),
                        rows),
                forecasts.bins().stream()
                        .map(bin -> new SkillPictures.Kept(bin.stated(), bin.happened()))
                        .toList(),
                texts.of("forecasts.said"),
                texts.of("forecasts.happened"));
    }
}
