package boardside.engine.tactics;

import java.util.Arrays;
import java.util.List;

/**
 * Which effects each kind of try has. Effect 0 is what all share; then come the groups of the levels.
 *
 * @param tries by kind
 * @param worked by kind
 * @param effectsOf by kind, the effects it has, 0 among them; read only
 * @param spreadOf by effect, its spread's number; -1 for effect 0; read only
 * @param spreads how many spreads there are; the last is that of the kinds themselves, absent where there is one kind only
 */
record PoolDesign(int[] tries, int[] worked, int[][] effectsOf, int[] spreadOf, int spreads) {
    /** @param groups by level, the group of each kind or -1 */
    static PoolDesign of(List<TryCount> kinds, List<int[]> groups, int[] spreadOfLevel, int levelSpreads) {
        int size = kinds.size();
        int[] first = new int[groups.size()];
        int effects = 1;
        for (int level = 0; level < first.length; level++) {
            first[level] = effects;
            effects += Arrays.stream(groups.get(level)).max().orElse(-1) + 1;
        }
        int[] spreadOf = new int[effects];
        spreadOf[0] = -1;
        for (int level = 0; level < first.length; level++) {
            int end = level + 1 < first.length ? first[level + 1] : effects;
            Arrays.fill(spreadOf, first[level], end, spreadOfLevel[level]);
        }
        int[][] effectsOf = new int[size][];
        for (int kind = 0; kind < size; kind++) {
            int[] all = new int[first.length + 1];
            int number = 1;
            for (int level = 0; level < first.length; level++) {
                int group = groups.get(level)[kind];
                if (group >= 0) {
                    all[number++] = first[level] + group;
                }
            }
            effectsOf[kind] = Arrays.copyOf(all, number);
        }
        return new PoolDesign(
                kinds.stream().mapToInt(TryCount::tries).toArray(),
                kinds.stream().mapToInt(TryCount::worked).toArray(),
                effectsOf,
                spreadOf,
                levelSpreads + (size > 1 ? 1 : 0));
    }

    int kinds() {
        return tries.length;
    }

    int effects() {
        return spreadOf.length;
    }

    /** Whether kinds differ by more than their groups. */
    boolean ownEffects() {
        return kinds() > 1;
    }
}
