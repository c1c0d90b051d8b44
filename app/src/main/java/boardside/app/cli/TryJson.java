package boardside.app.cli;

import boardside.app.practice.Board;
import boardside.app.practice.KeptSituation;
import boardside.app.record.NamedPosition;
import boardside.app.record.Records;
import boardside.app.record.TryRates;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Rates of tries as the terminal answers them. */
final class TryJson {
    private final List<KeptSituation> kept;
    private final Map<String, String> bags = new LinkedHashMap<>();

    TryJson(Records records, int player) {
        kept = records.situations(player);
        records.bags(player).forEach(bag -> bags.put(bag.id(), bag.name()));
    }

    /** The names a position goes by. */
    List<KeptSituation> kept() {
        return kept;
    }

    Map<String, Object> rate(Drill drill, TryRates.Row row) {
        Map<String, Object> json = new LinkedHashMap<>();
        if (drill == Drill.SITUATION) {
            NamedPosition named = NamedPosition.of(row.position(), Board.usualWidth(row.board()), kept);
            json.put("situation", named.words());
            json.put("bags", row.position().bags());
            json.put("shot", row.shot());
        }
        Target target = row.target();
        if (target != null) {
            json.put("target", target.text());
        }
        json.put("board", row.board());
        String bag = row.bag();
        if (bag != null) {
            json.put("bag", bags.getOrDefault(bag, ""));
        }
        if (row.face() != null) {
            json.put("face", row.face());
        }
        if (row.approach() != null) {
            json.put("approach", row.approach());
        }
        if (row.byHand() != null) {
            json.put("byHand", row.byHand());
        }
        json.put("tries", row.tries());
        json.put("worked", row.worked());
        json.put("rate", row.rate());
        return json;
    }

    static Map<String, Object> preference(TryRates.Preference preference) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("better", preference.better());
        json.put("worse", preference.worse());
        json.put("probability", preference.probability());
        json.put("verdict", preference.verdict());
        return json;
    }

    /** What a rate is the rate of, in words. */
    static String name(Map<String, Object> rate) {
        List<String> parts = new ArrayList<>();
        for (String key : List.of("situation", "shot", "target", "board", "bag", "face", "approach", "byHand")) {
            Object value = rate.get(key);
            if (value instanceof Boolean byHand) {
                parts.add(byHand ? "laid by hand" : "thrown there");
            } else if (value != null && value != BoardKind.REGULATION && !value.equals("")) {
                parts.add(value instanceof Word word ? word.word() : value.toString());
            }
        }
        return String.join(", ", parts);
    }

    static String percent(Rate rate) {
        return String.format(
                Locale.ROOT, "%.0f %% (%.0f-%.0f)", 100 * rate.estimate(), 100 * rate.low(), 100 * rate.high());
    }

    /** One rate rather than another, and how sure that is. */
    static String sentence(Map<String, Object> better, Map<String, Object> worse, TryRates.Preference preference) {
        return name(better)
                + String.format(
                        Locale.ROOT,
                        " rather than %s: %s (chance %.0f in 100)",
                        name(worse),
                        preference.verdict().word(),
                        100 * preference.probability());
    }
}
