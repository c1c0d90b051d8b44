package boardside.engine.tactics;

import java.util.List;

/**
 * Tries of one kind, and how many worked.
 *
 * @param groups what each level of the pooling calls this kind's group, in the order of the levels; empty where it has none
 * @param tries 0 or more
 * @param worked 0..tries
 */
public record TryCount(List<String> groups, int tries, int worked) {
    /** Checked, list copied. */
    public TryCount {
        groups = List.copyOf(groups);
        if (!(worked >= 0 && worked <= tries)) {
            throw new IllegalArgumentException("0 to " + tries + " of " + tries + " tries worked, not " + worked);
        }
    }
}
