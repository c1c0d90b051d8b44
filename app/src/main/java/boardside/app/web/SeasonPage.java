package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.LeagueSeason;
import boardside.app.record.LeagueState;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.SeasonPictures;
import boardside.engine.league.SeasonForecast;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** How the season of a league may end. */
public final class SeasonPage {
    private final Web web;
    private final LeaguesPage leagues;

    SeasonPage(Web web, LeaguesPage leagues) {
        this.web = web;
        this.leagues = leagues;
    }

    /**
     * What may come.
     *
     * @param sentence about the player, or why there is nothing to say
     * @param lines by the place reached on average; empty if there is nothing to say
     * @param picture of the same, or null
     */
    public record View(
            String path,
            String name,
            String sentence,
            List<Line> lines,
            @Nullable Picture picture,
            String about) {}

    /**
     * A player.
     *
     * @param likeliest place
     * @param places that are reached nine times in ten
     * @param first in how many of a hundred seasons they come first
     */
    public record Line(String name, boolean me, int likeliest, String places, String first) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        LeagueState state = leagues.state(ctx, player);
        Optional<LeagueSeason> season = LeagueSeason.of(web.records(), player.id(), state, web.today());
        String me = state.league().me();
        List<Line> lines = new ArrayList<>();
        season.ifPresent(known ->
                known.forecast().order().forEach(name -> lines.add(line(known.forecast(), name, me))));
        View view = new View(
                LeaguesPage.path(state.league()),
                state.league().name(),
                season.map(known -> sentence(known, me)).orElse(web.texts().of("season.nothing")),
                lines,
                season.map(known -> picture(
                                web.texts(), known.forecast(), known.forecast().order()))
                        .orElse(null),
                season.map(known ->
                                web.texts().of("season.about", known.forecast().seasons()))
                        .orElse(""));
        web.show(ctx, "season", web.texts().of("season.title"), Map.of("view", view));
    }

    private Line line(SeasonForecast forecast, String name, String me) {
        return new Line(
                name,
                name.equals(me),
                forecast.likeliest(name),
                places(forecast, name),
                Numbers.inHundred(forecast.among(name, 1)));
    }

    static String places(SeasonForecast forecast, String name) {
        int low = forecast.quantile(name, 0.05);
        int high = forecast.quantile(name, 0.95);
        return low == high ? String.valueOf(low) : low + "\u2013" + high;
    }

    /** Who may end where; its data are the chances in hundredths. */
    static Picture picture(Texts texts, SeasonForecast forecast, List<String> order) {
        List<String> heads = new ArrayList<>();
        heads.add(texts.of("league.table.name"));
        for (int place = 1; place <= order.size(); place++) {
            heads.add(String.valueOf(place));
        }
        List<SeasonPictures.Ending> endings = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (String name : order) {
            List<Double> chances = Objects.requireNonNull(forecast.chances().get(name));
            endings.add(new SeasonPictures.Ending(name, chances, forecast.likeliest(name)));
            List<String> row = new ArrayList<>();
            row.add(name);
            chances.forEach(chance -> row.add(chance == 0 ? "0" : Numbers.inHundred(chance)));
            rows.add(row);
        }
        return SeasonPictures.endings(
                texts.of("season.picture"),
                texts.of("season.picture.about"),
                new DataTable(heads, rows),
                endings,
                texts.of("season.picture.place"));
    }

    private String sentence(LeagueSeason season, String me) {
        SeasonForecast forecast = season.forecast();
        return season.open() == 0
                ? web.texts().of("season.over", forecast.likeliest(me))
                : web.texts()
                        .of(
                                "season.sentence",
                                season.open(),
                                forecast.likeliest(me),
                                places(forecast, me),
                                Numbers.inHundred(forecast.among(me, 1)));
    }
}
