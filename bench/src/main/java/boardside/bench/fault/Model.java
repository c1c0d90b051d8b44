package boardside.bench.fault;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What the store must hold in the end: of every round the version with the latest id, whoever sent it. Thread safe. */
final class Model {
    /** A version of a round: the id of its operation, and what was thrown. */
    private record Version(String op, int in, int on) {}

    private final Map<String, Version> rounds = new HashMap<>();

    /** A phone recorded a round; of several versions the one with the latest id holds. */
    synchronized void put(String run, int number, String op, int in, int on) {
        rounds.merge(
                run + "," + number,
                new Version(op, in, on),
                (one, other) -> one.op.compareTo(other.op) > 0 ? one : other);
    }

    /** What is recorded by now. */
    synchronized Model copy() {
        Model copy = new Model();
        copy.rounds.putAll(rounds);
        return copy;
    }

    /** How many rounds there must be. */
    synchronized int size() {
        return rounds.size();
    }

    /**
     * Holds a log against it.
     *
     * @param csv as {@code boardside export} writes it
     * @return one line a difference: lost, doubled, other counts, or never recorded
     */
    synchronized List<String> differences(String csv) {
        List<String> lines = csv.lines().toList();
        List<String> columns = List.of(lines.get(0).split(",", -1));
        int run = columns.indexOf("run");
        int number = columns.indexOf("round");
        int in = columns.indexOf("in");
        int on = columns.indexOf("on");
        List<String> differences = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] fields = line.split(",", -1);
            String key = fields[run] + "," + fields[number];
            Version expected = rounds.get(key);
            if (!seen.add(key)) {
                differences.add("doubled: " + key);
            } else if (expected == null) {
                differences.add("never recorded: " + key);
            } else if (!fields[in].equals(String.valueOf(expected.in))
                    || !fields[on].equals(String.valueOf(expected.on))) {
                differences.add("other counts: " + key);
            }
        }
        rounds.keySet().stream().filter(key -> !seen.contains(key)).forEach(key -> differences.add("lost: " + key));
        return differences;
    }
}
