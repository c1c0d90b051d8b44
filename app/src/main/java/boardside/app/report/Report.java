package boardside.app.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Answers put together to be read at one go, on the screen or on paper.
 *
 * @param title what it is
 * @param about of whom and of when, in a line
 * @param sections in the order they are read
 * @param notes what a reader has to know of all of it, at the end
 * @param onePage whether it is made for one page of paper
 */
public record Report(String title, String about, List<Section> sections, List<String> notes, boolean onePage) {
    /** Lists copied. */
    public Report {
        sections = List.copyOf(sections);
        notes = List.copyOf(notes);
    }

    /**
     * A question and its answer.
     *
     * @param heading what it is about
     * @param sentences the answer in words
     * @param table the answer in numbers, or null; may have no rows
     * @param picture the answer to look at, or null; its data are in the sentences or the table
     */
    public record Section(
            String heading,
            List<String> sentences,
            @Nullable DataTable table,
            @Nullable Picture picture) {
        /** Lists copied. */
        public Section {
            sentences = List.copyOf(sentences);
        }
    }

    /** As plain text, tables in columns. */
    public String toText() {
        List<String> lines = new ArrayList<>(List.of(title, about));
        for (Section section : sections) {
            lines.add("");
            lines.add(section.heading());
            lines.addAll(section.sentences());
            DataTable table = section.table();
            if (table != null) {
                lines.addAll(columns(table));
            }
        }
        lines.add("");
        lines.addAll(notes);
        return String.join("\n", lines);
    }

    private static List<String> columns(DataTable table) {
        List<List<String>> rows = new ArrayList<>(List.of(table.heads()));
        rows.addAll(table.rows());
        int[] widths = new int[table.heads().size()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder(" ");
            for (int i = 0; i < widths.length; i++) {
                line.append(' ')
                        .append(row.get(i))
                        .append(" ".repeat(widths[i] - row.get(i).length() + 1));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }
}
