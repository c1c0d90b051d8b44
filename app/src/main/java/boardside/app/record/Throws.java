package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Round;
import boardside.app.practice.SlideTest;
import boardside.app.practice.ThrowTally;
import boardside.engine.physics.Board;
import boardside.engine.physics.Range;
import boardside.engine.physics.SpeedSheet;
import boardside.engine.physics.Tap;
import boardside.engine.physics.Tap.Place;
import boardside.engine.physics.TappedDay;
import boardside.engine.physics.ThrowAdvice;
import boardside.engine.physics.ThrowCount;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowPrior;
import boardside.engine.physics.ThrowRecords;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A player's throw models, one for each face of each bag set thrown in the last year, the most thrown first. What each says
 * of itself begins with what the most thrown one, the player's usual, says of the player. Without records there is one, of a
 * bag without a name, that is believed and not known.
 */
public final class Throws {
    /** How far back records are read, days: throws change, and older ones say little of today's. */
    public static final int DAYS = 365;

    private final List<Group> groups;
    private final LocalDate day;

    private Throws(List<Group> groups, LocalDate day) {
        this.groups = List.copyOf(groups);
        this.day = day;
    }

    /** Boards of one day that play alike. */
    private record Boards(
            String day, BoardKind kind, @Nullable Conditions conditions) {
        static Boards of(SlideTest.Tapped tapped) {
            return new Boards(tapped.day(), tapped.board(), tapped.conditions());
        }
    }

    /** Which bag and face. */
    public record Key(String bag, @Nullable Face face) {}

    /**
     * One bag set's face. What records say of it takes a while, and is worked out once, when it is first asked for. Thread
     * safe.
     */
    public static final class Group {
        private final Key key;
        private final String name;
        private final @Nullable Integer speed;
        private final ThrowRecords records;
        private final Map<Boards, TappedDay> days;
        private final Board narrowBoard;

        /** The most thrown one, or null where this is it. */
        private final @Nullable Group usual;

        private volatile @Nullable ThrowFit fit;
        private SpeedSheet.@Nullable Sheet sheet;
        private @Nullable ThrowAdvice advice;

        private Group(
                Key key,
                String name,
                @Nullable Integer speed,
                ThrowRecords records,
                Map<Boards, TappedDay> days,
                Board narrowBoard,
                @Nullable Group usual) {
            this.key = key;
            this.name = name;
            this.speed = speed;
            this.records = records;
            this.days = days;
            this.narrowBoard = narrowBoard;
            this.usual = usual;
        }

        /** Whether all that answers rest on is the same. */
        private boolean same(Group other) {
            return key.equals(other.key)
                    && name.equals(other.name)
                    && Objects.equals(speed, other.speed)
                    && records.equals(other.records)
                    && days.equals(other.days)
                    && narrowBoard.equals(other.narrowBoard)
                    && usual == other.usual;
        }

        /** Which it is. */
        public Key key() {
            return key;
        }

        /** Name of the bag set, or empty. */
        public String name() {
            return name;
        }

        /** Bags recorded, counted and tapped. */
        public int bags() {
            return records.bags();
        }

        /** Bags thrown at narrow boards. */
        public int narrow() {
            return records.counts().stream()
                    .filter(count -> count.board().width() < Board.REGULATION_WIDTH)
                    .mapToInt(ThrowCount::thrown)
                    .sum();
        }

        /** Misses of which the side was recorded. */
        public int told() {
            return records.counts().stream()
                    .mapToInt(count -> count.left() + count.right() + count.shortOf() + count.past())
                    .sum();
        }

        /** Bags tapped in slide tests. */
        public int tapped() {
            return records.tapped();
        }

        /** What records say. */
        public synchronized ThrowFit fit() {
            ThrowFit known = fit;
            if (known == null) {
                known = ThrowFit.of(prior(), records);
                fit = known;
            }
            return known;
        }

        /** What records say, if that has been worked out. */
        public Optional<ThrowFit> known() {
            return Optional.ofNullable(fit);
        }

        private ThrowPrior prior() {
            ThrowPrior any = ThrowPrior.of(speed, key.face());
            return usual == null ? any : any.like(usual.fit());
        }

        /**
         * What a slide test that is kept says of its boards, together with whatever else was tapped on them that day; empty
         * where it is not among the records, as it is too old.
         */
        public Optional<ThrowFit.Day> day(SlideTest.Tapped test) {
            return Optional.ofNullable(days.get(Boards.of(test))).map(day -> fit().day(day));
        }

        /** What a slide test says of its boards that is not kept. */
        public ThrowFit.Day test(SlideTest.Tapped test) {
            List<TappedDay> all = new ArrayList<>(records.days());
            TappedDay day = Throws.day(test, board(test.board(), narrowBoard));
            all.add(day);
            return ThrowFit.of(prior(), new ThrowRecords(records.counts(), all)).day(day);
        }

        /** How it is thrown on usual, slower and faster boards. */
        public synchronized SpeedSheet.Sheet sheet() {
            if (sheet == null) {
                sheet = new SpeedSheet(usual == null ? fit() : usual.fit()).of(fit());
            }
            return sheet;
        }

        /** How it is thrown on boards that were measured, as their friction is against the usual. */
        public SpeedSheet.Row today(Range factor) {
            return new SpeedSheet(usual == null ? fit() : usual.fit()).today(fit(), factor);
        }

        /** What a throw is worth, and what would make it worth more. */
        public synchronized ThrowAdvice advice() {
            if (advice == null) {
                advice = ThrowAdvice.of(fit(), narrowBoard);
            }
            return advice;
        }
    }

    /**
     * What a player's records say on a day, that day included. What was worked out before and still holds is not worked out
     * again.
     */
    public static Throws of(Records records, int player, LocalDate today) {
        return records.throwFits().of(records, player, today);
    }

    /** Reads the records, and takes over those of the earlier groups of which nothing has changed. */
    static Throws read(Records records, int player, LocalDate today, List<Group> earlier) {
        Map<String, BagSet> bags = new LinkedHashMap<>();
        records.bags(player).forEach(bag -> bags.put(bag.id(), bag));
        Board narrow = narrow(records.boards(player));
        String from = today.minusDays(DAYS - 1L).toString();
        Map<Key, List<ThrowCount>> counts = new LinkedHashMap<>();
        for (ThrowTally tally : records.analyses().throwCounts(player, from, today.toString())) {
            counts.computeIfAbsent(new Key(tally.bag(), tally.face()), key -> new ArrayList<>())
                    .add(count(tally, board(tally.board(), narrow)));
        }
        Map<Key, Map<Boards, TappedDay>> days =
                days(records.slideTests().within(player, from, today.toString()), narrow);
        List<Key> keys = new ArrayList<>(counts.keySet());
        days.keySet().stream().filter(key -> !counts.containsKey(key)).forEach(keys::add);
        Map<Key, ThrowRecords> thrown = new LinkedHashMap<>();
        for (Key key : keys) {
            thrown.put(
                    key,
                    new ThrowRecords(
                            counts.getOrDefault(key, List.of()),
                            List.copyOf(days.getOrDefault(key, Map.of()).values())));
        }
        keys.sort(Comparator.comparingInt((Key key) -> -bags(thrown.get(key))));
        // A known face that was not thrown yet is worth a line of the speed sheet, and so is a bag set of which nothing
        // is
        // known: its slide can be tested.
        Set<Key> all = new LinkedHashSet<>(keys);
        for (BagSet bag : bags.values()) {
            if (!bag.retired()) {
                for (Face face : Face.values()) {
                    if (speed(bag, face) != null) {
                        all.add(new Key(bag.id(), face));
                    }
                }
                if (all.stream().noneMatch(key -> key.bag().equals(bag.id()))) {
                    all.add(new Key(bag.id(), null));
                }
            }
        }
        if (all.isEmpty()) {
            all.add(new Key("", null));
        }
        List<Group> groups = new ArrayList<>();
        for (Key key : all) {
            BagSet bag = bags.get(key.bag());
            Group group = new Group(
                    key,
                    bag == null ? "" : bag.name(),
                    bag == null ? null : speed(bag, key.face()),
                    thrown.getOrDefault(key, ThrowRecords.NONE),
                    days.getOrDefault(key, Map.of()),
                    narrow,
                    groups.isEmpty() ? null : groups.get(0));
            groups.add(earlier.stream().filter(group::same).findFirst().orElse(group));
        }
        return new Throws(groups, today);
    }

    private static @Nullable Integer speed(BagSet bag, @Nullable Face face) {
        return face == null ? null : face == Face.FAST ? bag.fastSpeed() : bag.slowSpeed();
    }

    private static int bags(@Nullable ThrowRecords records) {
        return records == null ? 0 : records.bags();
    }

    /** The player's narrow board as it was measured, the first one in use; else a usual one. */
    private static Board narrow(List<boardside.app.practice.Board> boards) {
        return boards.stream()
                .filter(board -> board.kind() == BoardKind.NARROW && board.width() > 2 * Board.HOLE_RADIUS)
                .findFirst()
                .map(board -> Board.of(board.width(), board.front()))
                .orElseGet(() -> Board.of(BoardKind.NARROW));
    }

    private static Board board(BoardKind kind, Board narrow) {
        return kind == BoardKind.NARROW ? narrow : Board.of(kind);
    }

    private static ThrowCount count(ThrowTally tally, Board board) {
        return new ThrowCount(
                board,
                tally.known(),
                tally.left(),
                tally.right(),
                tally.shortOf(),
                tally.past(),
                tally.notIn(),
                tally.inOnly());
    }

    /** The days on which slides were tapped: all tests of a day on boards that played alike are one. */
    private static Map<Key, Map<Boards, TappedDay>> days(List<SlideTest> tests, Board narrow) {
        Map<Key, Map<Boards, TappedDay>> days = new LinkedHashMap<>();
        for (SlideTest test : tests) {
            SlideTest.Tapped tapped = test.tapped();
            if (tapped != null) {
                days.computeIfAbsent(new Key(tapped.bag(), tapped.face()), key -> new LinkedHashMap<>())
                        .merge(Boards.of(tapped), day(tapped, board(tapped.board(), narrow)), Throws::together);
            }
        }
        return days;
    }

    private static TappedDay day(SlideTest.Tapped tapped, Board board) {
        return new TappedDay(board, tapped.conditions(), true, taps(tapped.slides()));
    }

    private static TappedDay together(TappedDay first, TappedDay second) {
        List<Tap> taps = new ArrayList<>(first.taps());
        taps.addAll(second.taps());
        return new TappedDay(first.board(), first.conditions(), true, taps);
    }

    private static List<Tap> taps(List<SlideTest.Slid> slides) {
        return slides.stream()
                .map(slid -> new Tap(slid.outcome(), place(slid.landing()), place(slid.rest())))
                .toList();
    }

    private static @Nullable Place place(Round.@Nullable Point point) {
        return point == null ? null : new Place(point.x(), point.y());
    }

    /** All of them, the usual first. */
    public List<Group> groups() {
        return groups;
    }

    /** The one the player throws most. */
    public Group usual() {
        return groups.get(0);
    }

    /** Whether there are records; without any, all answers are what is believed of any player. */
    public boolean recorded() {
        return usual().bags() > 0;
    }

    /** The first of a bag set's name, in any case, and face if one is given. */
    public Optional<Group> find(String name, @Nullable Face face) {
        return groups.stream()
                .filter(group -> group.name().equalsIgnoreCase(name)
                        && (face == null || face == group.key().face()))
                .findFirst();
    }

    /**
     * What the slide tests of today say of the boards, by the bag of which most was tapped; empty without any.
     */
    public Optional<ThrowFit.Day> today() {
        Group tested = null;
        TappedDay most = null;
        for (Group group : groups) {
            for (Map.Entry<Boards, TappedDay> one : group.days.entrySet()) {
                if (one.getKey().day().equals(day.toString())
                        && (most == null || one.getValue().slides() > most.slides())) {
                    tested = group;
                    most = one.getValue();
                }
            }
        }
        return tested == null || most == null
                ? Optional.empty()
                : Optional.of(tested.fit().day(most));
    }

    /** That of a bag's id and face; empty if there is none. */
    public Optional<Group> find(Key key) {
        return groups.stream().filter(group -> group.key().equals(key)).findFirst();
    }
}
