package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.Deeds;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;

/** Personal bests and milestones. */
public final class BestsPage {
    private final Web web;
    private final Remembered<View> remembered;

    BestsPage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** What the page shows. */
    public record View(List<Best> bests, List<Milestone> milestones, String bags) {}

    /** A best. */
    public record Best(String name, String value, String day, String run) {}

    /** A milestone. */
    public record Milestone(String says, String day) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        Remembered.Found<View> found = remembered.get(player, web.today(), "", () -> view(player));
        web.show(ctx, "bests", web.texts().of("bests.title"), Map.of("view", found.value()));
    }

    private View view(Player player) {
        Texts texts = web.texts();
        Deeds deeds = web.records().deeds();
        Deeds.Milestones milestones = deeds.milestones(player.id());
        return new View(
                deeds.bests(player.id()).stream()
                        .map(best -> new Best(
                                name(texts, best.kind()),
                                value(texts, best),
                                web.describe().day(best.held().day()),
                                Numbers.path(best.held().run())))
                        .toList(),
                milestones.reached().stream()
                        .map(one ->
                                new Milestone(says(texts, one), web.describe().day(one.day())))
                        .toList(),
                milestones.next() == 0
                        ? texts.of("bests.bags", milestones.bags())
                        : texts.of(
                                "bests.bags.next",
                                milestones.bags(),
                                milestones.next() - milestones.bags(),
                                milestones.next()));
    }

    public static String name(Texts texts, Deeds.Kind kind) {
        if (kind instanceof Deeds.Kind.Total total) {
            return texts.of("bests.total", total.rounds());
        } else if (kind instanceof Deeds.Kind.Fewest) {
            return texts.of("bests.fewest");
        } else if (kind instanceof Deeds.Kind.Ghost) {
            return texts.of("bests.ghost");
        } else if (kind instanceof Deeds.Kind.Streak) {
            return texts.of("bests.streak");
        } else if (kind instanceof Deeds.Kind.Tries tries) {
            return texts.of("bests.tries", texts.of("drill." + tries.drill().word()));
        }
        return texts.of(
                "bests.twenty",
                texts.of("drill." + ((Deeds.Kind.Twenty) kind).drill().word()));
    }

    public static String value(Texts texts, Deeds.Best best) {
        int value = best.held().value();
        Deeds.Kind kind = best.kind();
        if (kind instanceof Deeds.Kind.Total || kind instanceof Deeds.Kind.Twenty) {
            return texts.of("bests.points", value);
        } else if (kind instanceof Deeds.Kind.Ghost) {
            return texts.of("bests.ghost.value", value);
        } else if (kind instanceof Deeds.Kind.Tries) {
            return texts.of("bests.tries.value", value);
        }
        return texts.of(value == 1 ? "bests.round" : "bests.rounds", value);
    }

    public static String says(Texts texts, Deeds.Milestone milestone) {
        if (milestone instanceof Deeds.Milestone.Bags bags) {
            return texts.of("milestone.bags", bags.bags());
        } else if (milestone instanceof Deeds.Milestone.Days days) {
            return texts.of("milestone.days", days.days());
        } else if (milestone instanceof Deeds.Milestone.Total total) {
            return texts.of("milestone.total", total.points());
        } else if (milestone instanceof Deeds.Milestone.Streak streak) {
            return texts.of(streak.rounds() == 1 ? "milestone.four" : "milestone.streak", streak.rounds());
        } else if (milestone instanceof Deeds.Milestone.Ghost ghost) {
            return texts.of("milestone.ghost", ghost.points());
        }
        return texts.of("milestone.league");
    }
}
