package boardside.engine;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Check values under {@code reference/} in the test resources: a CSV with a header; its README names the sources. */
public final class ReferenceTable {
    private ReferenceTable() {}

    /** One line of a table, by column. */
    public record Row(Map<String, String> cells) {
        /** The cell's text; empty if blank. */
        public String text(String column) {
            String cell = cells.get(column);
            if (cell == null) {
                throw new IllegalArgumentException("no column " + column + " among " + cells.keySet());
            }
            return cell;
        }

        /** The cell as a whole number. */
        public int whole(String column) {
            return Integer.parseInt(text(column));
        }

        /** The cell as a number; a fraction such as 7/8 is worked out. */
        public double number(String column) {
            return fraction(text(column));
        }
    }

    /** A number, or a fraction such as 7/8. */
    public static double fraction(String text) {
        int slash = text.indexOf('/');
        return slash < 0
                ? Double.parseDouble(text)
                : Double.parseDouble(text.substring(0, slash)) / Double.parseDouble(text.substring(slash + 1));
    }

    /** The lines of a table. */
    public static List<Row> read(String file) {
        try (InputStream in = ReferenceTable.class.getResourceAsStream("/reference/" + file)) {
            if (in == null) {
                throw new IllegalArgumentException("no table " + file);
            }
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            List<String> header = split(lines.get(0));
            List<Row> rows = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                List<String> cells = split(line);
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < header.size(); i++) {
                    row.put(header.get(i), cells.get(i));
                }
                rows.add(new Row(row));
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> split(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }
}
