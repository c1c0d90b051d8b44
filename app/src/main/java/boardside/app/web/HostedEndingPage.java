package boardside.app.web;

import boardside.app.record.HostedSeasons;
import boardside.app.report.Picture;
import boardside.engine.league.SeasonForecast;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonOutlook;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;

/** How a season that is run here may end. */
public final class HostedEndingPage {
    private final Web web;
    private final Hosted hosted;
    private final Remembered<View> remembered;

    HostedEndingPage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
        this.remembered = web.remembered();
    }

    /** What may come, by division. */
    public record View(
            String path, String name, String sentence, boolean playOff, List<Division> divisions, String about) {}

    /** A division, by the place reached on average, and a picture of it; the name is empty where there is only one. */
    public record Division(String name, List<Line> lines, Picture picture) {}

    /**
     * A player.
     *
     * @param likeliest place
     * @param places that are reached nine times in ten
     * @param first in how many of a hundred seasons they come first
     * @param playOff in how many they are in the play-off
     */
    public record Line(String name, int likeliest, String places, String first, String playOff) {}

    void show(Context ctx) {
        Season season = hosted.visible(ctx);
        web.showFound(
                ctx,
                "hosted_ending",
                web.texts().of("hosted.ending"),
                remembered.soon(web.records().seasons().version(season.id()).count(), season.id(), () -> view(season)));
    }

    private View view(Season season) {
        List<Division> divisions = new ArrayList<>();
        int open = 0;
        int totals = 0;
        int seasons = 0;
        for (int division = 0; division < season.divisions().size(); division++) {
            SeasonOutlook outlook = SeasonOutlook.of(season, division, HostedSeasons.SEED);
            open += outlook.open();
            totals = outlook.totals();
            seasons = outlook.forecast().seasons();
            List<String> order = outlook.forecast().order();
            divisions.add(new Division(
                    season.divisions().size() == 1 ? "" : season.divisions().get(division),
                    order.stream().map(name -> line(outlook, name)).toList(),
                    SeasonPage.picture(web.texts(), outlook.forecast(), order)));
        }
        String sentence = open == 0
                ? web.texts().of("hosted.ending.over")
                : totals == 0
                        ? web.texts().of("hosted.ending.nobody")
                        : web.texts().of("hosted.ending.sentence", open, totals);
        return new View(
                Hosted.path(season),
                season.name(),
                sentence,
                season.rules().qualifiers() > 0,
                divisions,
                web.texts().of("hosted.ending.about", seasons));
    }

    private static Line line(SeasonOutlook outlook, String name) {
        SeasonForecast forecast = outlook.forecast();
        return new Line(
                name,
                forecast.likeliest(name),
                SeasonPage.places(forecast, name),
                Numbers.inHundred(forecast.among(name, 1)),
                Numbers.inHundred(outlook.playOff(name)));
    }
}
