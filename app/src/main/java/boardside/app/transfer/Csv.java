package boardside.app.transfer;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads and writes CSV as in RFC 4180, strictly: what it does not allow is a fault with its place, not a guess. Lines
 * end in LF or CRLF when read, in LF when written. (The libraries at hand let stray quotes pass, or do not say in which
 * field an open one began.)
 */
final class Csv {
    private final String text;
    private int position;
    private int line = 1;

    Csv(String text) {
        this.text = text;
    }

    /** One record with the line it begins in, from 1. */
    record Row(int line, List<String> fields) {}

    /** The text breaks RFC 4180 in a way that leaves no telling what comes after. */
    static final class Broken extends Exception {
        private static final long serialVersionUID = 1L;

        final int line;
        final int field;
        final String fault;

        Broken(int line, int field, String message) {
            super(message);
            this.fault = message;
            this.line = line;
            this.field = field;
        }
    }

    /** How far reading has got, in characters. */
    int position() {
        return position;
    }

    /** The next record, or null at the end. */
    @Nullable
    Row next() throws Broken {
        if (position >= text.length()) {
            return null;
        }
        int begin = line;
        List<String> fields = new ArrayList<>(16);
        while (true) {
            fields.add(
                    position < text.length() && text.charAt(position) == '"'
                            ? quoted(fields.size())
                            : plain(fields.size()));
            if (position >= text.length()) {
                return new Row(begin, fields);
            }
            char end = text.charAt(position);
            if (end == ',') {
                position++;
            } else {
                position += end == '\r' ? 2 : 1;
                line++;
                return new Row(begin, fields);
            }
        }
    }

    private String plain(int before) throws Broken {
        int start = position;
        while (position < text.length()) {
            char c = text.charAt(position);
            if (c == ',' || c == '\n' || crlf()) {
                break;
            }
            if (c == '"') {
                throw new Broken(
                        line,
                        before + 1,
                        "a quote stands inside a field that does not begin with one; put the"
                                + " whole field in quotes and double those within");
            }
            if (c == '\r') {
                throw new Broken(
                        line,
                        before + 1,
                        "a carriage return stands inside a field without quotes; put the whole" + " field in quotes");
            }
            position++;
        }
        return text.substring(start, position);
    }

    private boolean crlf() {
        return text.startsWith("\r\n", position);
    }

    private String quoted(int before) throws Broken {
        int begin = line;
        StringBuilder field = new StringBuilder();
        int start = ++position;
        while (true) {
            if (position >= text.length()) {
                throw new Broken(begin, before + 1, "the quote that opens here is never closed; add the closing one");
            }
            char c = text.charAt(position);
            if (c == '\n') {
                line++;
            }
            if (c != '"') {
                position++;
                continue;
            }
            field.append(text, start, position);
            position++;
            if (position < text.length() && text.charAt(position) == '"') {
                start = position++;
                continue;
            }
            if (position < text.length() && text.charAt(position) != ',' && text.charAt(position) != '\n' && !crlf()) {
                throw new Broken(
                        line, before + 1, "text follows the closing quote; double quotes that belong to the field");
            }
            return field.toString();
        }
    }

    /** Appends one record, quoted only where need be. */
    static void write(StringBuilder to, List<String> fields) {
        for (int i = 0; i < fields.size(); i++) {
            if (i > 0) {
                to.append(',');
            }
            String field = fields.get(i);
            if (field.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r')) {
                to.append('"').append(field.replace("\"", "\"\"")).append('"');
            } else {
                to.append(field);
            }
        }
        to.append('\n');
    }
}
