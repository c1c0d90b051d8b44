package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.Climbing;
import boardside.app.record.Ladder;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.rules.Game;
import boardside.engine.skill.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where a climb stands, beside what all bags say of the player's level. */
public final class LadderView {
    private static final int MOST_DRAWN = 30;

    private final Web web;

    LadderView(Web web) {
        this.web = web;
    }

    /**
     * What it shows.
     *
     * @param next the rung of the next race
     * @param proposed whether that is a proposal for the first race
     * @param said where the ladder stands and what is next, one sentence each
     * @param picture the races so far, or null before the first
     */
    public record View(
            int next,
            boolean proposed,
            List<String> said,
            @Nullable Picture picture) {}

    View view(Player player) {
        Climbing climbing =
                Climbing.of(Ladder.of(web.records(), player.id()), web.skills().skill(player.id(), web.today()));
        List<String> said = new ArrayList<>();
        said.add(next(climbing));
        climbing.likely().ifPresent(likely -> {
            if (!climbing.proposed()) {
                said.add(web.texts().of("ladder.win", climbing.next(), Numbers.percent(likely.win())));
            }
            said.add(web.texts()
                    .of(
                            "ladder.level",
                            Numbers.range(likely.level()),
                            Numbers.one(likely.level().estimate())));
            said.add(web.texts()
                    .of(
                            "ladder.hover",
                            Numbers.range(likely.mean()),
                            Numbers.one(likely.mean().estimate())));
        });
        return new View(climbing.next(), climbing.proposed(), said, picture(climbing));
    }

    private String next(Climbing climbing) {
        Optional<Ladder.Race> latest = climbing.ladder().latest();
        if (latest.isPresent()) {
            Ladder.Race race = latest.get();
            return web.texts()
                    .of(
                            race.result() == Game.Result.WON ? "ladder.next.won" : "ladder.next.lost",
                            race.ghost(),
                            web.describe().day(race.day()),
                            climbing.next());
        }
        return climbing.likely()
                .map(likely -> web.texts()
                        .of(
                                likely.win().estimate() >= Climbing.START_CHANCE ? "ladder.start" : "ladder.start.low",
                                climbing.next(),
                                Numbers.percent(likely.win()),
                                Math.round(100 * Climbing.START_CHANCE)))
                .orElseGet(() -> web.texts().of("ladder.start.unknown", climbing.next()));
    }

    private @Nullable Picture picture(Climbing climbing) {
        List<Ladder.Race> latest = climbing.ladder().races().stream()
                .filter(race -> race.result() != Game.Result.OPEN)
                .limit(MOST_DRAWN)
                .toList();
        if (latest.isEmpty()) {
            return null;
        }
        List<Pictures.Rung> rungs = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (Ladder.Race race : latest) {
            boolean won = race.result() == Game.Result.WON;
            rungs.add(0, new Pictures.Rung(race.ghost(), won));
            rows.add(List.of(
                    race.day(),
                    String.valueOf(race.ghost()),
                    web.texts().of(won ? "ladder.table.won" : "ladder.table.lost")));
        }
        Interval level = climbing.likely().map(Climbing.Likely::level).orElse(null);
        List<Double> shares = new ArrayList<>();
        climbing.likely().ifPresent(likely -> {
            for (double share : likely.climb().stationary()) {
                shares.add(share);
            }
        });
        return Pictures.ladder(
                web.texts().of("ladder.picture"),
                web.texts().of(level == null ? "ladder.picture.about.alone" : "ladder.picture.about", rungs.size()),
                new DataTable(
                        List.of(
                                web.texts().of("form.table.day"),
                                web.texts().of("ladder.table.ghost"),
                                web.texts().of("ladder.table.result")),
                        rows),
                rungs,
                level,
                shares);
    }
}
