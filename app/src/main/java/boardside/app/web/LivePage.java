package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.season.MatchId;
import boardside.app.season.MatchNight;
import boardside.app.season.MatchSide;
import boardside.app.transfer.MatchRounds;
import io.javalin.http.Context;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A match as spectators have it: the page, one to lay over a video, and what keeps both up to date. Who may see the season may
 * see its matches.
 */
public final class LivePage {
    private final Web web;
    private final Hosted hosted;
    private final Live live;

    LivePage(Web web, Hosted hosted, Live live) {
        this.web = web;
        this.hosted = hosted;
        this.live = live;
    }

    static String path(String season, String match) {
        return "/seasons/" + Numbers.path(season) + "/matches/" + Numbers.path(match) + "/live";
    }

    /**
     * What a page draws a match with.
     *
     * @param state the match as JSON
     * @param texts the wording as JSON
     * @param events where changes come from
     */
    public record Drawn(String state, String texts, String events) {}

    /**
     * The page.
     *
     * @param seasonPath the season's tables
     * @param streams where the sides show themselves throwing
     */
    public record View(String seasonPath, String season, Drawn drawn, List<Stream> streams) {}

    /** Where somebody shows themselves throwing. */
    public record Stream(String name, String address, String host) {}

    private MatchNight asked(Context ctx) {
        MatchNight night = web.records()
                .matchNights()
                .find(ctx.pathParam("season"), ctx.pathParam("match"))
                .orElseThrow(this::nothing);
        if (!night.head().open()) {
            hosted.visible(ctx);
        }
        return night;
    }

    /** The same as for one that may not be seen, so that nobody learns which there are. */
    private Refusal nothing() {
        return new Refusal(404, web.texts().of("hosted.nothing"));
    }

    static Drawn drawn(Web web, MatchNight night) {
        return new Drawn(
                Json.write(MatchRounds.of(night)),
                Json.write(web.texts().startingWith("live.", "hosted.state.", "run.finish")),
                path(night.head().season(), night.head().match()) + "/events");
    }

    static List<Stream> streams(MatchNight night) {
        List<Stream> streams = new ArrayList<>();
        for (MatchSide side : MatchSide.values()) {
            String address = night.streams().get(side);
            if (address != null) {
                streams.add(new Stream(
                        side == MatchSide.FIRST
                                ? night.head().first()
                                : night.head().second(),
                        address,
                        String.valueOf(URI.create(address).getHost())));
            }
        }
        return streams;
    }

    private String title(MatchNight night) {
        return web.texts().of("league.match", night.head().first(), night.head().second());
    }

    void show(Context ctx) {
        MatchNight night = asked(ctx);
        View view = new View(
                "/seasons/" + Numbers.path(night.head().season()) + "/table",
                night.head().seasonName(),
                drawn(web, night),
                streams(night));
        web.show(ctx, "live", title(night), Map.of("view", view));
    }

    void overlay(Context ctx) {
        MatchNight night = asked(ctx);
        web.show(ctx, "overlay", title(night), Map.of("drawn", drawn(web, night)));
    }

    void json(Context ctx) {
        web.answer(ctx, MatchRounds.of(asked(ctx)));
    }

    void events(Context ctx) {
        MatchId match = new MatchId(ctx.pathParam("season"), ctx.pathParam("match"));
        // Many come back together where an instance went away: one statement is all that each of them costs.
        boolean open = web.records().matchNights().open(match).orElseThrow(this::nothing);
        if (!open) {
            hosted.visible(ctx);
        }
        live.open(ctx, match, web.guard().client(ctx), open && !web.guard().letIn(ctx));
    }
}
