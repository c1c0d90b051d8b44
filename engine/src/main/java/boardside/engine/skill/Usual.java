package boardside.engine.skill;

import boardside.engine.skill.Measured.Mix;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How some records were thrown: bags, faces and approaches with their shares, everything else as answers speak of it (on
 * a regulation board, in practice, in normal conditions, drills at the usual mix).
 */
final class Usual {
    /** Only so many ways are told apart; in a log of more, the rarest are left out. */
    private static final int MOST_WAYS = 60;

    private final Log log;
    private final Map<Way, Double> shares = new LinkedHashMap<>();

    /** Of the counts from a cell on. */
    Usual(Log log, int from) {
        this.log = log;
        Map<Way, Double> thrown = new LinkedHashMap<>();
        for (int c = from; c < log.counts.size(); c++) {
            Way way = log.way(c);
            thrown.merge(
                    new Way(
                            way.bag(),
                            way.face(),
                            way.approach(),
                            log.usual(Trait.BOARD),
                            log.usual(Trait.SETTING),
                            Way.USUAL,
                            Way.USUAL),
                    (double) log.counts.get(c).thrown(),
                    Double::sum);
        }
        List<Map.Entry<Way, Double>> most = new ArrayList<>(thrown.entrySet());
        most.sort(Comparator.comparingDouble((Map.Entry<Way, Double> entry) -> -entry.getValue()));
        most = most.subList(0, Math.min(MOST_WAYS, most.size()));
        double all = most.stream().mapToDouble(Map.Entry::getValue).sum();
        most.forEach(entry -> shares.put(entry.getKey(), entry.getValue() / all));
    }

    Mix mix() {
        return mix(shares);
    }

    /** The same mix, but all of it with these words. */
    Mix with(List<Trait> traits, List<Integer> words) {
        Map<Way, Double> changed = new LinkedHashMap<>();
        shares.forEach((way, share) -> {
            Way other = way;
            for (int i = 0; i < traits.size(); i++) {
                other = other.with(traits.get(i), words.get(i));
            }
            changed.merge(other, share, Double::sum);
        });
        return mix(changed);
    }

    private Mix mix(Map<Way, Double> shares) {
        return new Mix(
                shares.keySet().stream().map(log::row).toList(),
                shares.values().stream().mapToDouble(Double::doubleValue).toArray());
    }
}
