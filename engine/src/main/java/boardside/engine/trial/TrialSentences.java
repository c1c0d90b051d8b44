package boardside.engine.trial;

import boardside.engine.skill.Interval;
import boardside.engine.skill.Trait;
import boardside.engine.trial.Ending.AsGoodAsEqual;
import boardside.engine.trial.Ending.NotSettled;
import boardside.engine.trial.Ending.UnderWay;
import boardside.engine.trial.Ending.Winner;
import boardside.engine.trial.TrialState.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** How a trial stands in plain words: who, by how much with its range, whether that may be luck, and what to do. */
final class TrialSentences {
    /** Points a round that no two candidates differ by. */
    private static final double MOST_APART = 6;

    private final TrialDesign design;
    private final List<String> names;
    private final Set<Trait> by;

    TrialSentences(TrialDesign design, List<String> names, Set<Trait> by) {
        this.design = design;
        this.names = names;
        this.by = by;
    }

    String of(TrialState state) {
        Ending ending = state.ending();
        if (ending instanceof Winner winner) {
            return winner(state, names.get(winner.candidate())) + gone(state, 2);
        } else if (ending instanceof AsGoodAsEqual equal) {
            return equal(state, equal) + gone(state, equal.candidates().size());
        } else if (ending instanceof NotSettled) {
            return notSettled(state) + gone(state, state.inPlay().size());
        } else if (ending instanceof UnderWay) {
            return underWay(state) + gone(state, state.inPlay().size());
        }
        throw new IllegalStateException("an ending of an unknown kind: " + ending);
    }

    private String winner(TrialState state, String name) {
        Standing second = state.standings().get(1);
        String size = one(state.lead().estimate());
        boolean small = state.lead().high() <= design.margin();
        return "Throw " + name + ". It makes about " + size + " points a round more than "
                + names.get(second.candidate()) + " (" + range(state.lead()) + "), after " + rounds(second.rounds())
                + " with each: very likely " + cause() + ", not luck."
                + (small
                        ? " The difference is small, though: within the " + number(design.margin())
                                + " you would call equal."
                        : "");
    }

    private String equal(TrialState state, AsGoodAsEqual equal) {
        int count = equal.candidates().size();
        List<String> alike = state.standings().stream()
                .limit(count)
                .map(standing -> names.get(standing.candidate()))
                .toList();
        Standing last = state.standings().get(count - 1);
        Interval apart = last.behind() == null ? state.lead() : last.behind();
        return list(alike) + " are as good as equal: " + apart(apart) + " after " + rounds(last.rounds())
                + " with each, within the " + number(design.margin())
                + " you would call equal. Throw whichever you like"
                + (by.contains(Trait.BAG) ? "; no need to buy." : "; no need to change.");
    }

    private String notSettled(TrialState state) {
        Standing first = state.standings().get(0);
        Standing second = state.standings().get(1);
        return "Not settled after " + rounds(first.rounds()) + " with each, which is as long as this trial goes: "
                + ahead(state, first, second)
                + ", and that may be luck. Whatever the difference is, it is hard to notice at"
                + " the boards: throw whichever you like.";
    }

    private String underWay(TrialState state) {
        Standing first = state.standings().get(0);
        Standing second = state.standings().get(1);
        if (state.blocks() == 0) {
            return "Nothing to say yet: the first block is " + rounds(TrialDesign.ROUNDS) + " with each of "
                    + list(names) + ".";
        }
        String blocks = state.blocks() + " of at most " + state.longest() + " blocks";
        return "After " + blocks + " " + ahead(state, first, second)
                + ": open so far, it may be luck."
                + (state.needed() > MOST_APART
                        ? " It is too early for anything to be settled."
                        : " It would have to be " + one(state.needed())
                                + (state.inPlay().size() == 2
                                        ? " apart to be settled now."
                                        : " behind the best for a candidate to drop out now."));
    }

    private String ahead(TrialState state, Standing first, Standing second) {
        Interval lead = state.lead();
        String one = names.get(first.candidate());
        String other = names.get(second.candidate());
        return one(lead.estimate()).equals("0.0")
                ? one + " and " + other + " look alike (" + range(lead) + ")"
                : one + " is " + one(lead.estimate()) + " points a round ahead of " + other + " (" + range(lead) + ")";
    }

    /** Who dropped out, of those not named already. */
    private String gone(TrialState state, int named) {
        List<String> gone = new ArrayList<>();
        for (Standing standing :
                state.standings().subList(named, state.standings().size())) {
            Interval behind = standing.behind();
            if (standing.droppedAfter() != null && behind != null) {
                gone.add(names.get(standing.candidate()) + " is out since block " + standing.droppedAfter() + ", "
                        + one(behind.estimate()) + " behind (" + range(behind) + ")");
            }
        }
        return gone.isEmpty() ? "" : " " + String.join("; ", gone) + ".";
    }

    private String cause() {
        if (by.size() != 1) {
            return "how you throw";
        }
        return by.contains(Trait.BAG) ? "the bag" : by.contains(Trait.FACE) ? "the face" : "the approach";
    }

    private static String apart(Interval apart) {
        String size = one(Math.abs(apart.estimate()));
        return (size.equals("0.0") ? "level" : size + " apart") + " (" + range(apart) + ")";
    }

    private static String rounds(int rounds) {
        return rounds == 1 ? "1 round" : rounds + " rounds";
    }

    /** "A and B", "A, B and C". */
    static String list(List<String> names) {
        int last = names.size() - 1;
        return last == 0 ? names.get(0) : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    static String range(Interval interval) {
        return signed(interval.low()) + " to " + signed(interval.high());
    }

    static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /** Without a decimal that says nothing. */
    static String number(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, value * 10 == Math.rint(value * 10) ? "%.1f" : "%.2f", value);
    }

    private static String signed(double value) {
        String text = String.format(Locale.ROOT, "%+.1f", value).replace('-', '\u2212');
        return text.substring(1).equals("0.0") ? "0.0" : text;
    }
}
