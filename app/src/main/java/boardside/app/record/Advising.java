package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.Run;
import boardside.app.practice.TryCounts;
import boardside.engine.odds.BagChances;
import boardside.engine.physics.ThrowMatch;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.GameRules;
import boardside.engine.tactics.advice.Matchup;
import boardside.engine.tactics.advice.Thrower;
import boardside.engine.tactics.advice.Tried;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A player as the adviser knows them: the throw model of a bag's face, the tries, the approach. */
public final class Advising {
    private Advising() {}

    /**
     * Who asks, and what they throw.
     *
     * @param matchup the two throwers
     * @param bag name of the bag set, or empty
     * @param face the face down, or null
     * @param bags thrown bags that the throw model was learned from; 0 where it is what is believed of any player
     * @param given whether the chances were given with the question
     */
    public record Asked(
            Matchup matchup, String bag, @Nullable Face face, int bags, boolean given) {}

    /** Who asks a question. */
    public static Asked of(Records records, int player, LocalDate today, AdviceQuestion question) {
        return of(
                records,
                player,
                today,
                question.bag(),
                question.face(),
                question.approach(),
                question.me(),
                question.versus(),
                question.theirApproach());
    }

    /**
     * Who asks; what is null is as in the last run, of the opponent as good as me and conservative.
     *
     * @throws Failure.BadInput if the bag set is not known
     */
    public static Asked of(
            Records records,
            int player,
            LocalDate today,
            @Nullable String bag,
            @Nullable Face face,
            @Nullable Approach approach,
            @Nullable BagChances me,
            @Nullable BagChances versus,
            @Nullable Approach theirApproach) {
        Run last = records.lastRun(player, null).orElse(null);
        Throws all = Throws.of(records, player, today);
        Throws.Group group = group(records, player, all, last, bag, face);
        Approach usual = last == null ? null : last.setup().approach();
        Approach base = Objects.requireNonNullElse(approach, Objects.requireNonNullElse(usual, Approach.CONSERVATIVE));
        ThrowModel mean = group.fit().mean();
        List<Tried> tries = tries(records, player, today);
        Thrower mine = me == null
                ? Thrower.believed(mean, group.fit().draws(), base, tries)
                : Thrower.told(me, mean, group.fit().draws(), base, tries);
        ThrowModel theirs = versus == null ? mine.usual() : ThrowMatch.of(mean, versus.in(), versus.on());
        return new Asked(
                new Matchup(
                        mine,
                        Thrower.known(theirs, Objects.requireNonNullElse(theirApproach, Approach.CONSERVATIVE)),
                        GameRules.STANDARD),
                group.name(),
                group.key().face(),
                group.fit().records().bags(),
                me != null);
    }

    private static Throws.Group group(
            Records records, int player, Throws all, @Nullable Run last, @Nullable String bag, @Nullable Face face) {
        if (bag != null) {
            return all.find(bag, face)
                    .or(() -> all.find(bag, null))
                    .orElseThrow(() -> new Failure.BadInput("bag: no throws of \"" + bag
                            + "\" in the last year, and no speed of it is known; there are: "
                            + String.join(
                                    ", ",
                                    all.groups().stream()
                                            .map(Throws.Group::name)
                                            .filter(name -> !name.isEmpty())
                                            .distinct()
                                            .toList())));
        }
        if (last != null && !last.setup().bags().isEmpty()) {
            String id = last.setup().bags().get(0);
            Face side = face == null ? last.setup().face() : face;
            String name = records.bags(player).stream()
                    .filter(set -> set.id().equals(id))
                    .map(BagSet::name)
                    .findFirst()
                    .orElse("");
            return all.find(name, side).or(() -> all.find(name, null)).orElse(all.usual());
        }
        return all.find(all.usual().name(), face).orElse(all.usual());
    }

    private static List<Tried> tries(Records records, int player, LocalDate today) {
        return Stream.of(Drill.PLACEMENT, Drill.SITUATION)
                .flatMap(drill -> records.tryCounts(player, drill, today.toString()).stream())
                .filter(counts -> counts.board() == BoardKind.REGULATION)
                .map(Advising::tried)
                .toList();
    }

    private static Tried tried(TryCounts counts) {
        return new Tried(counts.shot(), counts.target(), counts.position(), counts.tries(), counts.worked());
    }
}
