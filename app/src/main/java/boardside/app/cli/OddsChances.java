package boardside.app.cli;

import boardside.engine.odds.BagChances;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** One bag's chances for a question: given with it, or found in a player's records. */
sealed interface OddsChances {
    /** The chances to name. */
    BagChances likely();

    /** All that the question is put to, the chances to name first. */
    List<BagChances> all();

    /** Puts a question to all of them. */
    default <T> Answers<T> ask(Function<BagChances, T> question) {
        return new Answers<>(all().stream().map(question).toList());
    }

    /** Chances that were given. */
    record Given(BagChances likely) implements OddsChances {
        @Override
        public List<BagChances> all() {
            return List.of(likely);
        }
    }

    /** Chances that a player's records leave open. */
    record Found(Skill skill, ChanceRange range) implements OddsChances {
        @Override
        public BagChances likely() {
            return range.likely();
        }

        @Override
        public List<BagChances> all() {
            return range.steps();
        }

        /** Adds to an answer where it comes from, and the range of its figures. */
        void tell(Map<String, Object> json, Map<String, Object> ranges) {
            Map<String, Object> chances = new LinkedHashMap<>();
            chances.put("in", likely().in());
            chances.put("on", likely().on());
            chances.put("from", "records");
            json.put("chances", chances);
            json.put("range", ranges);
        }
    }

    /**
     * Answers to a question.
     *
     * @param all the one at the likeliest chances first
     */
    record Answers<T>(List<T> all) {
        T likely() {
            return all.get(0);
        }

        /** One figure of the answer, from its least to its greatest. */
        Interval range(ToDoubleFunction<T> figure) {
            double[] values = all.stream().mapToDouble(figure).toArray();
            double low = values[0];
            double high = values[0];
            for (double value : values) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
            return new Interval(values[0], low, high);
        }
    }
}
