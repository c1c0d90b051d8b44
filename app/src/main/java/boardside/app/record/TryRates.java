package boardside.app.record;

import boardside.app.practice.Board;
import boardside.app.practice.Try;
import boardside.app.practice.TryCounts;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.RatePool;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Target;
import boardside.engine.tactics.TryCount;
import boardside.engine.tactics.Verdict;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** How often what was tried works, by target or by situation and shot. */
public final class TryRates {
    private TryRates() {}

    /** What rates may be told apart by, beside target or situation and shot. */
    public enum By implements Word {
        BAG,
        FACE,
        APPROACH,
        /** Whether the bags on the board were laid there by hand. */
        BY_HAND
    }

    /** Kinds beyond this many are too many to read, and to work out while somebody waits; the least tried are left out. */
    static final int MOST_KINDS = 300;

    /**
     * One kind of try. What it is not told apart by is null.
     *
     * @param position what lay on the board; of those that look the same, one
     */
    public record Row(
            Shot shot,
            @Nullable Target target,
            Position position,
            BoardKind board,
            @Nullable String bag,
            @Nullable Face face,
            @Nullable Approach approach,
            @Nullable Boolean byHand,
            int tries,
            int worked,
            Rate rate) {
        /** Whether a try asks the same: of that target, or in a position that looks like this one, on that board. */
        public boolean asks(Drill drill, Try.Played played) {
            double width = Board.usualWidth(board);
            return board == played.how().board()
                    && (drill == Drill.PLACEMENT
                            ? target != null && target.equals(played.target())
                            : position.code(width).equals(played.position().code(width)));
        }

        /** Whether a try counts here, as far as the row is told apart by target, or by position and shot. */
        public boolean counts(Drill drill, Try.Played played) {
            boolean shots =
                    drill == Drill.PLACEMENT || shot == played.shot() && Objects.equals(target, played.target());
            return shots && asks(drill, played);
        }

        /** What was asked: the target, or how the position looks; with the board. */
        String question(Drill drill) {
            String asked =
                    drill == Drill.PLACEMENT && target != null ? target.text() : position.code(Board.usualWidth(board));
            return asked + "/" + board.word();
        }
    }

    /**
     * The best of several answers to one question against the runner-up.
     *
     * @param better index of the row that works more often, as far as is known
     * @param worse index of the runner-up
     * @param probability that it does
     */
    public record Preference(int better, int worse, double probability, Verdict verdict) {}

    /** Rates, by question, the most often tried first; and what to prefer where there is a choice. */
    public record Answer(List<Row> rows, List<Preference> preferences) {
        /** Lists copied. */
        public Answer {
            rows = List.copyOf(rows);
            preferences = List.copyOf(preferences);
        }
    }

    private record Key(
            Shot shot,
            @Nullable Target target,
            String code,
            BoardKind board,
            @Nullable String bag,
            @Nullable Face face,
            @Nullable Approach approach,
            @Nullable Boolean byHand) {}

    private record Kind(Key key, Position position, int tries, int worked) {
        Kind plus(TryCounts more) {
            return new Kind(key, position, tries + more.tries(), worked + more.worked());
        }
    }

    /** Rates of placement or situation tries up to a day, that day included. */
    public static Answer of(Records records, int player, Drill drill, LocalDate asOf, Set<By> by) {
        return of(drill, records.tryCounts(player, drill, asOf.toString()), by);
    }

    static Answer of(Drill drill, List<TryCounts> counts, Set<By> by) {
        Map<Key, Kind> kinds = new LinkedHashMap<>();
        for (TryCounts one : counts) {
            Key key = key(drill, one, by);
            kinds.put(
                    key,
                    kinds.getOrDefault(key, new Kind(key, one.position(), 0, 0)).plus(one));
        }
        List<Kind> some = kinds.values().stream()
                .sorted(Comparator.comparingInt(Kind::tries).reversed())
                .limit(MOST_KINDS)
                .toList();
        if (some.isEmpty()) {
            return new Answer(List.of(), List.of());
        }
        Levels levels = new Levels(drill, by);
        RatePool pool = RatePool.of(
                some.stream()
                        .map(kind -> new TryCount(levels.groups(kind), kind.tries(), kind.worked()))
                        .toList(),
                levels.spreads());
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < some.size(); i++) {
            Kind kind = some.get(i);
            Key key = kind.key();
            rows.add(new Row(
                    key.shot(),
                    key.target(),
                    kind.position(),
                    key.board(),
                    key.bag(),
                    key.face(),
                    key.approach(),
                    key.byHand(),
                    kind.tries(),
                    kind.worked(),
                    pool.rates().get(i)));
        }
        return new Answer(rows, preferences(drill, rows, pool));
    }

    private static Key key(Drill drill, TryCounts one, Set<By> by) {
        boolean placement = drill == Drill.PLACEMENT;
        return new Key(
                // What a target asks is the same whatever the shot is called.
                placement ? Shot.BLOCK : one.shot(),
                one.target(),
                placement ? "" : one.position().code(Board.usualWidth(one.board())),
                one.board(),
                by.contains(By.BAG) ? one.bag() : null,
                by.contains(By.FACE) ? one.face() : null,
                by.contains(By.APPROACH) ? one.approach() : null,
                by.contains(By.BY_HAND) ? (Boolean) one.byHand() : null);
    }

    private static List<Preference> preferences(Drill drill, List<Row> rows, RatePool pool) {
        Map<String, List<Integer>> byQuestion = new LinkedHashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            byQuestion
                    .computeIfAbsent(rows.get(i).question(drill), key -> new ArrayList<>())
                    .add(i);
        }
        List<Preference> found = new ArrayList<>();
        for (List<Integer> answers : byQuestion.values()) {
            if (answers.size() > 1) {
                List<Integer> ranked = new ArrayList<>(answers);
                ranked.sort(Comparator.comparingDouble(
                                (Integer i) -> rows.get(i).rate().estimate())
                        .reversed());
                double probability = pool.better(ranked.get(0), ranked.get(1));
                found.add(new Preference(ranked.get(0), ranked.get(1), probability, Verdict.of(probability)));
            }
        }
        return found;
    }

    /** The levels on which kinds lend each other what they know; see docs/rates.md. */
    private record Levels(Drill drill, Set<By> by) {
        List<Integer> spreads() {
            List<Integer> spreads = new ArrayList<>(List.of(0, 1, 2));
            by.forEach(what -> spreads.add(3));
            return spreads;
        }

        List<String> groups(Kind kind) {
            Key key = kind.key();
            String board = "/" + key.board().word();
            Target target = key.target();
            List<String> groups = new ArrayList<>();
            if (drill == Drill.PLACEMENT && target != null) {
                groups.add(target.depth().word() + board);
                groups.add(target.lane().word() + board);
                groups.add(target.text() + board);
            } else {
                groups.add(key.shot().word());
                groups.add(key.shot().word() + "/" + kind.position().family(Board.usualWidth(key.board())) + board);
                groups.add(key.shot().word() + "/" + key.code() + "/" + (target == null ? "" : target.text()) + board);
            }
            for (By what : By.values()) {
                if (by.contains(what)) {
                    groups.add(
                            switch (what) {
                                case BAG -> "bag " + key.bag();
                                case FACE -> "face " + key.face();
                                case APPROACH -> "approach " + key.approach();
                                case BY_HAND -> "by hand " + key.byHand();
                            });
                }
            }
            return groups;
        }
    }
}
