package boardside.app.transfer;

import java.util.List;
import java.util.stream.Stream;

/** Columns of the log format, in the order written. */
final class LogColumns {
    /** Always written, and required when read. */
    static final List<String> ALWAYS = List.of(
            "session",
            "run",
            "started_at",
            "drill",
            "round",
            "side",
            "bag",
            "face",
            "approach",
            "board",
            "setting",
            "ghost",
            "in",
            "on",
            "off");

    /** Written only when used. */
    static final List<String> WHEN_USED = List.of(
            "thrown",
            "conditions",
            "opponent",
            "target",
            "game",
            "trial",
            "warm_up",
            "at",
            "miss_left",
            "miss_right",
            "miss_short",
            "miss_long",
            "note");

    /** All columns. */
    static final List<String> ALL =
            Stream.concat(ALWAYS.stream(), WHEN_USED.stream()).toList();

    private LogColumns() {}
}
