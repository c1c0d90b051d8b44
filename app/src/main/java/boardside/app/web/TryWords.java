package boardside.app.web;

import boardside.app.practice.Board;
import boardside.app.practice.Exercise;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.Try;
import boardside.app.record.NamedPosition;
import boardside.app.record.OfferedSituation;
import boardside.app.record.TryRates;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import boardside.engine.tactics.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/** Targets, shots, situations and their rates in words. */
final class TryWords {
    private final Texts texts;
    private final List<KeptSituation> kept;
    private final Map<String, String> bags;

    TryWords(Texts texts, List<KeptSituation> kept, Map<String, String> bags) {
        this.texts = texts;
        this.kept = kept;
        this.bags = bags;
    }

    String shot(Shot shot) {
        return texts.of("shot." + shot.word());
    }

    String target(Target target) {
        String lane = texts.of("board.lane." + target.lane().word());
        return target.depth().inFront()
                ? texts.of("board.part", target.depth().word(), lane)
                : texts.of("board.part." + target.depth().word(), lane);
    }

    String situation(Situation common, boolean mirrored) {
        String name = texts.of("situation." + common.word());
        return mirrored ? texts.of("situations.mirrored", name) : name;
    }

    /** What a situation to choose is called. */
    String offered(OfferedSituation situation) {
        Situation common = situation.common();
        return common == null ? situation.name() : situation(common, false);
    }

    /** What a position is called, or where its bags lie. */
    String position(Position position, BoardKind board) {
        double width = Board.usualWidth(board);
        NamedPosition named = NamedPosition.of(position, width, kept);
        Situation common = named.common();
        if (!named.kept().isEmpty()) {
            return named.kept();
        }
        return common == null
                ? position.bags().stream()
                        .map(bag ->
                                texts.of("situations.bag." + bag.side().word(), target(Target.at(bag.spot(), width))))
                        .collect(Collectors.joining("; "))
                : situation(common, named.mirrored());
    }

    String step(Exercise.Step step) {
        Target target = step.target();
        return target == null ? shot(step.shot()) : texts.of("try.call.target", shot(step.shot()), target(target));
    }

    /** A shot with what lay on the board before it. */
    String situated(Try.Played played) {
        return texts.of(
                "tries.situated",
                position(played.position(), played.how().board()),
                step(new Exercise.Step(played.shot(), played.target(), played.position())));
    }

    /** Where a bag ended, or nothing where that was not kept. */
    String rest(Try.Played played) {
        Try.Rest rest = played.rest();
        if (rest == null) {
            return "";
        }
        Spot spot = rest.spot();
        return switch (rest.outcome()) {
            case IN -> texts.of("try.rest.in");
            case ON ->
                spot == null
                        ? texts.of("outcome.on")
                        : texts.of(
                                "try.rest.on",
                                target(Target.at(
                                        spot, Board.usualWidth(played.how().board()))));
            case OFF -> rest.miss().isEmpty() ? texts.of("try.rest.off") : texts.of("try.rest." + rest.miss());
        };
    }

    /** What a rate is the rate of: target, or situation and shot; then what it is told apart by. */
    String row(Drill drill, TryRates.Row row) {
        return question(drill, row)
                + (drill == Drill.SITUATION ? ": " + way(row) : rest(row).isEmpty() ? "" : ": " + rest(row));
    }

    String question(Drill drill, TryRates.Row row) {
        Target target = row.target();
        String asked =
                drill == Drill.PLACEMENT && target != null ? target(target) : position(row.position(), row.board());
        return row.board() == BoardKind.REGULATION
                ? asked
                : asked + ", " + texts.of("board." + row.board().word());
    }

    /** How something was tried: the shot, then what it is told apart by. */
    String way(TryRates.Row row) {
        Target target = row.target();
        String shot = target == null ? shot(row.shot()) : texts.of("try.call.target", shot(row.shot()), target(target));
        String rest = rest(row);
        return rest.isEmpty() ? shot : shot + ", " + rest;
    }

    private String rest(TryRates.Row row) {
        List<String> parts = new ArrayList<>();
        String bag = row.bag();
        if (bag != null) {
            parts.add(bag.isEmpty() ? texts.of("run.set.unnamed") : Objects.requireNonNullElse(bags.get(bag), bag));
        }
        Face face = row.face();
        if (face != null) {
            parts.add(texts.of("face." + face.word()));
        }
        Approach approach = row.approach();
        if (approach != null) {
            parts.add(texts.of("approach." + approach.word()));
        }
        Boolean byHand = row.byHand();
        if (byHand != null) {
            parts.add(texts.of(byHand ? "rates.by-hand" : "rates.thrown"));
        }
        return String.join(", ", parts);
    }

    /** "62 % (50–73)". */
    static String rate(Rate rate) {
        return Numbers.percent(rate.estimate()) + " (" + Math.round(100 * rate.low()) + "\u2013"
                + Math.round(100 * rate.high()) + ")";
    }

    /** The better of two ways and how sure that is, in a sentence. */
    String preference(Drill drill, TryRates.Answer answer, TryRates.Preference preference) {
        TryRates.Row better = answer.rows().get(preference.better());
        TryRates.Row worse = answer.rows().get(preference.worse());
        String key = preference.verdict() == Verdict.OPEN ? "rates.open" : "rates.prefer";
        return texts.of(
                key,
                question(drill, better),
                drill == Drill.PLACEMENT ? rest(better) : way(better),
                rate(better.rate()),
                drill == Drill.PLACEMENT ? rest(worse) : way(worse),
                rate(worse.rate()),
                texts.of("rates.verdict." + preference.verdict().word()));
    }
}
