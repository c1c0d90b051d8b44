package boardside.app.web;

import boardside.app.practice.Challenge;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.record.Challenges;
import boardside.app.record.Dealer;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.skill.Interval;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Surprise challenges at about even odds: dealt, dealt again, taken up, and what became of them. */
public final class ChallengePage {
    private static final int LATEST = 10;

    private final Web web;
    private final Remembered<Optional<Challenge>> remembered;

    ChallengePage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /**
     * What the page shows.
     *
     * @param says the challenge in words, or null where nothing tells what is even
     * @param chance how likely it is, in a sentence
     * @param deal which deal this is
     */
    public record View(@Nullable String says, String chance, int deal, List<Past> past) {}

    /** A challenge that was taken up. */
    public record Past(String says, String day, String run) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        int deal = deal(ctx.queryParam("deal"));
        Challenge challenge = dealt(player, deal).orElse(null);
        View view = new View(
                challenge == null ? null : says(web.texts(), challenge),
                challenge == null ? "" : web.texts().of("challenge.chance", chance(challenge)),
                deal,
                web.records().challenges().latest(player.id(), LATEST).stream()
                        .map(told -> new Past(
                                outcome(web.texts(), told),
                                web.describe().day(told.challenge().day()),
                                Numbers.path(told.challenge().run())))
                        .toList());
        Map<String, Object> values = new HashMap<>();
        values.put("view", view);
        web.show(ctx, "challenge", web.texts().of("challenge.title"), values);
    }

    private static int deal(@Nullable String text) {
        return text != null && text.matches("\\d{1,4}") ? Integer.parseInt(text) : 0;
    }

    private Optional<Challenge> dealt(Player player, int deal) {
        return remembered
                .get(
                        player,
                        web.today(),
                        String.valueOf(deal),
                        () -> Dealer.deal(web.records(), player.id(), web.today(), deal))
                .value();
    }

    static String chance(Challenge challenge) {
        return Numbers.percent(new Interval(challenge.chance(), challenge.low(), challenge.high()));
    }

    /** What has to be done. */
    public static String says(Texts texts, Challenge challenge) {
        if (challenge.kind() == Challenge.Kind.RACE) {
            return texts.of("challenge.race", challenge.ghost());
        }
        boolean one = challenge.need() == 1 && challenge.kind() == Challenge.Kind.FOUR_BAGGERS
                || challenge.need() == 0 && challenge.kind() == Challenge.Kind.FEW_OFF;
        return texts.of(
                "challenge." + challenge.kind().word() + (one ? ".one" : ""), challenge.need(), challenge.rounds());
    }

    /** What became of it. */
    public static String outcome(Texts texts, Challenges.Told told) {
        String says = says(texts, told.challenge());
        Integer reached = told.reached();
        return switch (told.outcome()) {
            case DONE -> texts.of("challenge.done", says, chance(told.challenge()));
            case OPEN -> texts.of("challenge.open", says);
            case MISSED ->
                reached == null
                        ? texts.of("challenge.missed", says)
                        : texts.of("challenge.missed.reached", says, reached);
        };
    }

    /** Takes up the challenge of a deal: starts its drill, set up for it. */
    void take(Context ctx) {
        Player player = web.player(ctx);
        int deal = deal(ctx.formParam("deal"));
        Challenge challenge = dealt(player, deal).orElse(null);
        if (challenge == null) {
            ctx.redirect("/challenge");
            return;
        }
        boolean race = challenge.kind() == Challenge.Kind.RACE;
        Drill drill = race ? Drill.RACE : Drill.TOTAL;
        Setup setup = web.nextSetup(player.id(), drill).with(draft -> {
            draft.rounds = race ? null : (Integer) challenge.rounds();
            draft.ghost = race ? (Integer) challenge.ghost() : null;
            draft.target = race ? (Integer) 21 : null;
            draft.board = BoardKind.REGULATION;
            draft.setting = Setting.PRACTICE;
            draft.exact = false;
            draft.skunk = null;
            draft.ghostPlay = null;
            draft.contest = null;
            draft.stakes = null;
        });
        String run = web.startRun(player, drill, setup, false, "");
        web.records()
                .challenges()
                .take(
                        player.id(),
                        new Challenge(
                                "",
                                challenge.day(),
                                challenge.kind(),
                                challenge.rounds(),
                                challenge.ghost(),
                                challenge.need(),
                                challenge.chance(),
                                challenge.low(),
                                challenge.high(),
                                run));
        ctx.redirect("/runs/" + run);
    }
}
