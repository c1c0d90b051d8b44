package boardside.app.transfer;

import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.record.LogRun;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** One row of a log: fields by column, each checked on its own, then together. */
final class LogRow {
    private static final int MOST_ROUNDS = 100_000;
    private static final int MOST_BAGS = 100;

    private final LogReader reader;
    private final Faults faults;
    private final LogRun.Source source;
    private final List<String> fields;
    private final int[] places;
    private final int width;
    private boolean sound = true;

    LogRow(LogReader reader, Faults faults, LogRun.Source source, List<String> fields, int[] places, int width) {
        this.reader = reader;
        this.faults = faults;
        this.source = source;
        this.fields = fields;
        this.places = places;
        this.width = width;
    }

    LogRun.Source source() {
        return source;
    }

    /** Reads the row; a sound one is added to its run. */
    void read() {
        if (fields.size() != width) {
            String column = String.valueOf(Math.min(fields.size(), width) + (fields.size() > width ? 1 : 0));
            faults.add(
                    source,
                    column,
                    fields.size() + (fields.size() == 1 ? " field" : " fields") + ", but the header names " + width
                            + " columns; a field that holds a comma or a line's end stands in quotes");
            return;
        }
        String session = needed("session");
        String run = needed("run");
        Moment start = parsed("started_at", Moment::of);
        Drill drill = parsed("drill", text -> word(Drill.class, text, Drill.TOTAL));
        Integer number = whole("round", 1, MOST_ROUNDS, "rounds are numbered from 1");
        if (number == null && field("round").isBlank()) {
            fault("round", "blank; give the round's number, from 1");
        }
        Side side = parsed("side", text -> word(Side.class, text, Side.ME));
        Face face = wordOrNone("face", Face.class);
        Approach approach = wordOrNone("approach", Approach.class);
        BoardKind board = parsed("board", text -> word(BoardKind.class, text, BoardKind.REGULATION));
        Setting setting = parsed("setting", text -> word(Setting.class, text, Setting.PRACTICE));
        Conditions conditions = wordOrNone("conditions", Conditions.class);
        Integer ghost = whole("ghost", 0, 12, "a ghost scores 0 to 12 a round");
        if (drill != null && drill.needsGhost() && field("ghost").isBlank()) {
            fault("ghost", "blank; a " + drill.word() + " needs the ghost's points a round, 0 to 12");
        }
        Integer target = whole("target", 1, 999, "1 to 999 points to reach");
        Integer game = whole("game", 1, 999, "games are numbered from 1");
        Boolean warmUp = parsed("warm_up", LogRow::yes);
        String at = parsed("at", text -> text.isBlank() ? "" : Moment.of(text).text());
        Line.Misses misses =
                new Line.Misses(bags("miss_left"), bags("miss_right"), bags("miss_short"), bags("miss_long"));
        Counts counts = counts(drill);
        if (!sound
                || start == null
                || drill == null
                || number == null
                || side == null
                || board == null
                || setting == null
                || warmUp == null
                || at == null
                || counts == null) {
            return;
        }
        reader.add(
                this,
                new LogReader.Head(
                        run, session, start, drill, blankless("opponent"), target, game, blankless("trial"), warmUp),
                number,
                side,
                new Line(
                        blankless("bag"),
                        face,
                        approach,
                        board,
                        setting,
                        conditions,
                        ghost,
                        counts.thrown(),
                        counts.in(),
                        counts.on(),
                        counts.off(),
                        misses,
                        at,
                        blankless("note")));
    }

    private record Counts(
            int thrown,
            @Nullable Integer in,
            @Nullable Integer on,
            @Nullable Integer off) {}

    private @Nullable Counts counts(@Nullable Drill drill) {
        boolean before = sound;
        sound = true;
        Integer in = bags("in");
        Integer on = bags("on");
        Integer off = bags("off");
        Integer thrown = bags("thrown");
        boolean read = sound;
        sound = before && read;
        if (!read) {
            return null;
        }
        if ((on == null) != (off == null)) {
            fault(on == null ? "on" : "off", "blank; give both on and off, or neither and thrown");
            return null;
        }
        if (on == null && thrown == null) {
            fault("on", "blank; give in, on and off, or thrown where only the bags in were counted");
            return null;
        }
        if (in == null && (on != null || drill != Drill.CASUAL)) {
            fault("in", "blank; only casual throws need not be counted");
            return null;
        }
        int counted = (in == null ? 0 : in) + (on == null || off == null ? 0 : on + off);
        if (thrown != null && (on == null ? counted > thrown : counted != thrown)) {
            fault(
                    "thrown",
                    on == null
                            ? thrown + ", but " + in + " in; no more go in than are thrown"
                            : thrown + ", but in, on and off add up to " + counted);
            return null;
        }
        int bags = thrown == null ? counted : thrown;
        int most = drill == null ? MOST_BAGS : drill.mostBags();
        if (bags > most) {
            fault(
                    thrown == null ? "in" : "thrown",
                    bags + " bags of one side in a round; "
                            + (drill == null ? "there are" : "a round of " + drill.word() + " has") + " at most "
                            + most);
            return null;
        }
        return new Counts(bags, in, on, off);
    }

    private @Nullable Integer bags(String column) {
        return whole(column, 0, MOST_BAGS, "a count of bags is 0 to " + MOST_BAGS);
    }

    private static <E extends Enum<E> & Word> E word(Class<E> kind, String text, E blank) {
        return text.isBlank() ? blank : Word.of(kind, text);
    }

    private <E extends Enum<E> & Word> @Nullable E wordOrNone(String column, Class<E> kind) {
        return field(column).isBlank() ? null : parsed(column, text -> Word.of(kind, text));
    }

    private static boolean yes(String text) {
        if (!text.isBlank() && !text.equals("yes")) {
            throw new IllegalArgumentException("\"" + text + "\" is neither yes nor blank");
        }
        return text.equals("yes");
    }

    private String field(String column) {
        int place = places[LogColumns.ALL.indexOf(column)];
        return place < 0 ? "" : fields.get(place);
    }

    /** The field, empty where it is only white space. */
    private String blankless(String column) {
        String text = field(column);
        return text.isBlank() ? "" : reader.once(text);
    }

    private String needed(String column) {
        String text = blankless(column);
        if (text.isEmpty()) {
            fault(column, "blank; give any text that names the " + column);
        }
        return text;
    }

    private <T> @Nullable T parsed(String column, Function<String, T> parse) {
        try {
            return parse.apply(reader.once(field(column)));
        } catch (IllegalArgumentException e) {
            fault(column, String.valueOf(e.getMessage()));
            return null;
        }
    }

    /** A whole number in a range; null where blank, or at fault. */
    private @Nullable Integer whole(String column, int least, int most, String rule) {
        String text = field(column);
        if (text.isBlank()) {
            return null;
        }
        boolean digits = text.length() <= 9 && text.chars().allMatch(c -> c >= '0' && c <= '9');
        int value = digits ? Integer.parseInt(text) : -1;
        if (value >= least && value <= most) {
            return value;
        }
        fault(column, "\"" + text + "\"; " + rule + ", a whole number");
        return null;
    }

    /** Notes a fault in a column of this row. */
    void fault(String column, String message) {
        sound = false;
        int place = places[LogColumns.ALL.indexOf(column)];
        faults.add(source, place < 0 ? column : (place + 1) + " (" + column + ")", message);
    }
}
