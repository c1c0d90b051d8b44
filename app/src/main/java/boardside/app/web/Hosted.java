package boardside.app.web;

import boardside.app.practice.Account;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonRules;
import io.javalin.http.Context;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** What the pages of seasons that are run here share: which season, who may see it, what times look like. */
final class Hosted {
    private final Web web;
    private final SeasonWords words;

    Hosted(Web web) {
        this.web = web;
        this.words = new SeasonWords(web.texts());
    }

    SeasonWords words() {
        return words;
    }

    static String path(Season season) {
        return "/seasons/" + Numbers.path(season.id());
    }

    static String path(Season season, SeasonMatch match) {
        return path(season) + "/matches/" + Numbers.path(match.id());
    }

    /** The season asked for, by whoever may run it. */
    Season season(Context ctx) {
        return any(ctx, season -> mayRun(ctx, season.id()));
    }

    /** The season asked for; whether whoever asks has anything to do with it is still to be looked at. */
    Season any(Context ctx) {
        return any(ctx, season -> true);
    }

    private Season any(Context ctx, Predicate<Season> let) {
        return web.records()
                .seasons()
                .find(ctx.pathParam("season"))
                .filter(let)
                // The same as for one that does not exist, so that nobody learns which there are.
                .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.nothing")));
    }

    /**
     * Whether a request comes from somebody who may run a season: in a household whoever may record; in hosted mode the
     * organiser it belongs to, those they let run it too, and hosts.
     */
    boolean mayRun(Context ctx, String season) {
        if (!web.guard().organises(ctx)) {
            return false;
        }
        Account account = web.account(ctx);
        return !web.options().hosted()
                || account != null
                        && (account.role() == Role.HOST
                                || web.records().seasons().runs(account.id(), season));
    }

    /** Who a player is in a season, if they are in it. */
    static Optional<Entrant> entrant(Season season, Player player) {
        return season.entrants().stream()
                .filter(one -> one.player() != null && one.player() == player.id())
                .findFirst();
    }

    private boolean plays(Season season, Context ctx) {
        return web.guard().letIn(ctx) && entrant(season, web.player(ctx)).isPresent();
    }

    /** The season asked for, where it is open to everybody, or whoever asks runs seasons or plays in it. */
    Season visible(Context ctx) {
        return any(ctx, season -> season.open() || mayRun(ctx, season.id()) || plays(season, ctx));
    }

    SeasonMatch match(Season season, Context ctx) {
        return season.match(ctx.pathParam("match"))
                .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.match.nothing")));
    }

    /** A time as typed, or null with a fault where it is none. */
    @Nullable
    LocalDateTime time(Fields fields, String name, String fault) {
        String text = fields.value(name);
        if (text.isEmpty()) {
            return null;
        }
        try {
            return LocalDateTime.parse(text.contains("T") ? text : text + "T00:00");
        } catch (DateTimeParseException e) {
            fields.fault(name, web.texts().of(fault));
            return null;
        }
    }

    /** A time of day as typed; midnight for none. */
    LocalTime timeOfDay(Fields fields, String name) {
        String text = fields.value(name);
        try {
            return text.isEmpty() ? LocalTime.MIDNIGHT : LocalTime.parse(text.length() == 4 ? "0" + text : text);
        } catch (DateTimeParseException e) {
            fields.fault(name, web.texts().of("hosted.turn.fault"));
            return LocalTime.MIDNIGHT;
        }
    }

    /** A total as typed, or null for none, or with a fault where it cannot be thrown. */
    @Nullable
    Integer total(SeasonRules rules, Fields fields, String name) {
        String text = fields.value(name);
        if (text.isEmpty()) {
            return null;
        }
        if (text.matches("\\d{1,4}") && rules.possible(Integer.parseInt(text))) {
            return Integer.valueOf(text);
        }
        fields.fault(
                name,
                web.texts().of("hosted.match.total.fault", rules.rounds(), rules.mostPoints(), rules.mostPoints() - 1));
        return null;
    }

    /** Time zones to choose from. */
    static List<String> zones() {
        return ZoneId.getAvailableZoneIds().stream()
                .filter(zone -> zone.matches("[A-Z][A-Za-z]+/.+") && !zone.startsWith("Etc/"))
                .sorted()
                .toList();
    }
}
