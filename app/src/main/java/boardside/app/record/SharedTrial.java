package boardside.app.record;

import boardside.app.json.Json;
import boardside.app.practice.Contest;
import boardside.app.practice.TrialPlan;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Face;
import boardside.engine.trial.TrialDesign;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A trial's set-up as it is handed to somebody else, JSON: nothing of what was thrown.
 *
 * @param trial its name
 * @param candidates ways to throw, with bag sets by name
 * @param board the kind of board, or null for a regulation board
 * @param longest blocks after which it ends, or null for the usual
 * @param margin points a round within which candidates count as equal, or null for the usual
 */
public record SharedTrial(
        String trial,
        List<Candidate> candidates,
        @Nullable BoardKind board,
        @Nullable Integer longest,
        @Nullable Double margin) {
    /** A way to throw; parts not said are null. */
    public record Candidate(
            @Nullable String bag,
            @Nullable Face face,
            @Nullable Approach approach) {}

    /** What is shared of a trial. */
    public static SharedTrial of(TrialPlan plan, Map<String, String> bagNames) {
        return new SharedTrial(
                plan.name(),
                plan.candidates().stream()
                        .map(way -> new Candidate(bagNames.get(way.bag()), way.face(), way.approach()))
                        .toList(),
                plan.board(),
                plan.longest(),
                plan.margin());
    }

    /**
     * Reads what was shared.
     *
     * @throws IllegalArgumentException if it is no trial
     */
    public static SharedTrial read(String text) {
        SharedTrial shared = Json.read(text, SharedTrial.class);
        // Whatever was left out of the text is null, also where the type says otherwise.
        if (Objects.requireNonNullElse(shared.candidates(), List.of()).isEmpty()) {
            throw new IllegalArgumentException("it holds no candidates");
        }
        return shared;
    }

    /** The text to hand over. */
    public String text() {
        return Json.write(this);
    }

    /**
     * A new trial of this set-up.
     *
     * @param bagNamed the id of the bag set with a name, made if new
     * @param seed where the order of its blocks comes from
     * @throws IllegalArgumentException if it cannot be thrown
     */
    public TrialPlan plan(UnaryOperator<String> bagNamed, long seed) {
        if (!(candidates.size() >= 2 && candidates.size() <= TrialDesign.MOST)) {
            throw new IllegalArgumentException(
                    "a trial compares 2 to " + TrialDesign.MOST + " candidates, not " + candidates.size());
        }
        return new TrialPlan(
                "",
                Objects.requireNonNullElse(trial, ""),
                candidates.stream()
                        .map(one -> new Contest.Way(
                                one.bag() == null || one.bag().isBlank()
                                        ? ""
                                        : bagNamed.apply(one.bag().strip()),
                                one.face(),
                                one.approach()))
                        .toList(),
                Objects.requireNonNullElse(board, BoardKind.REGULATION),
                Objects.requireNonNullElse(longest, TrialDesign.USUAL_LENGTH),
                Objects.requireNonNullElse(margin, TrialDesign.USUAL_MARGIN),
                seed,
                "",
                TrialPlan.State.OPEN,
                false);
    }
}
