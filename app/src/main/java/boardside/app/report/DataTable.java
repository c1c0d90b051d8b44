package boardside.app.report;

import java.util.List;

/** What a picture shows, in words and numbers, for those who cannot or would rather not look at it. */
public record DataTable(List<String> heads, List<List<String>> rows) {
    /**
     * Lists copied.
     *
     * @throws IllegalArgumentException if a row has not as many cells as there are heads
     */
    public DataTable {
        heads = List.copyOf(heads);
        rows = rows.stream().map(List::copyOf).toList();
        for (List<String> row : rows) {
            if (row.size() != heads.size()) {
                throw new IllegalArgumentException("a row of a table has a cell for each of " + heads + ", not " + row);
            }
        }
    }
}
