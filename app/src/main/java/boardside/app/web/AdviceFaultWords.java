package boardside.app.web;

import boardside.app.record.AdviceFault;
import boardside.app.record.AdviceQuestion;
import boardside.engine.physics.Board;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Target;
import boardside.engine.tactics.advice.RoundFault;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What is wrong with a position, in sentences for its page: which bag or field, and what to do. */
final class AdviceFaultWords {
    private final Texts texts;
    private final TryWords words;

    AdviceFaultWords(Texts texts) {
        this.texts = texts;
        words = new TryWords(texts, List.of(), Map.of());
    }

    /**
     * All of it.
     *
     * @param values of the form's fields, by name
     */
    AdvisePage.Wrong wrong(AdviceQuestion.Parsed.Faulty faulty, Map<String, String> values) {
        Set<String> said = new LinkedHashSet<>();
        Set<String> fields = new LinkedHashSet<>();
        Set<Integer> bags = new LinkedHashSet<>();
        for (AdviceFault fault : faulty.faults()) {
            said.add(sentence(fault, values));
            fields.addAll(fields(fault));
            if (fault instanceof AdviceFault.Overlap overlap) {
                bags.add(faulty.bags().indexOf(overlap.one()));
                bags.add(faulty.bags().indexOf(overlap.other()));
            }
        }
        return new AdvisePage.Wrong(new ArrayList<>(said), fields, bags);
    }

    private String sentence(AdviceFault fault, Map<String, String> values) {
        if (fault instanceof AdviceFault.Overlap overlap) {
            return texts.of("advise.fault.overlap", ShotWords.capital(bag(overlap.one())), bag(overlap.other()));
        }
        if (fault instanceof AdviceFault.Round round) {
            return sentence(round.fault());
        }
        if (fault instanceof AdviceFault.NoneLeft) {
            return texts.of("advise.fault.left", texts.of("advise.left"));
        }
        if (fault instanceof AdviceFault.OutOfRange range) {
            String name = field(range.of(), range.side());
            String field = texts.of("advise.fault.field", texts.of("advise." + range.of()), side(range.side()));
            String given = values.getOrDefault(name, "");
            return range.of().equals("score")
                    ? texts.of("advise.fault.score", field, range.most(), GameRules.STANDARD.target(), given)
                    : texts.of("advise.fault.range", field, range.most(), given);
        }
        if (fault instanceof AdviceFault.Chances) {
            return texts.of("advise.fault.versus", texts.of("advise.versus.in"), texts.of("advise.versus.on"));
        }
        return fault instanceof AdviceFault.Misplaced misplaced
                ? texts.of("advise.fault.misplaced", misplaced.number())
                : texts.of("advise.fault.bags");
    }

    private String sentence(RoundFault fault) {
        if (fault instanceof RoundFault.TooMany many) {
            return texts.of(
                    "advise.fault.many." + many.side().word(),
                    many.on() + many.in() + many.left(),
                    many.on(),
                    many.in(),
                    many.left(),
                    many.over());
        }
        RoundFault.OutOfTurn turn = (RoundFault.OutOfTurn) fault;
        return texts.of("advise.fault.turn", turn.leftMe(), turn.leftVersus(), texts.of("advise.left"));
    }

    private String bag(Lying bag) {
        return texts.of(
                "situations.bag." + bag.side().word(), words.target(Target.at(bag.spot(), Board.REGULATION_WIDTH)));
    }

    private String side(Side side) {
        return texts.of("advise." + side.word());
    }

    private static String field(String of, Side side) {
        return of + "-" + side.word();
    }

    /** Names of the fields that a fault is about; none where it is about bags alone. */
    private static Set<String> fields(AdviceFault fault) {
        if (fault instanceof AdviceFault.OutOfRange range) {
            return Set.of(field(range.of(), range.side()));
        }
        if (fault instanceof AdviceFault.NoneLeft) {
            return Set.of(field("left", Side.ME));
        }
        if (fault instanceof AdviceFault.Chances) {
            return Set.of("versus-in", "versus-on");
        }
        if (fault instanceof AdviceFault.Round round) {
            return round.fault() instanceof RoundFault.TooMany many
                    ? Set.of(field("in", many.side()), field("left", many.side()))
                    : Set.of(field("left", Side.ME), field("left", Side.VERSUS));
        }
        return Set.of();
    }
}
