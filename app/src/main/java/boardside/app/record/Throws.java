package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.ThrowTally;
import boardside.engine.physics.Board;
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
import boardside.engine.rules.Outcome;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
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

    private static final double NARROW = Board.NARROW_WIDTH;

    private final List<Group> groups;

    private Throws(List<Group> groups) {
        this.groups = List.copyOf(groups);
    }

    /** Which bag and face. */
    public record Key(String bag, @Nullable Face face) {}

    /**
     * One bag set's face.
     *
     * @param key which
     * @param name of the bag set, or empty
     * @param prior what is believed of it without its records
     * @param fit what records say
     * @param told misses of which the side was recorded
     * @param narrow bags thrown at narrow boards
     */
    public record Group(Key key, String name, ThrowPrior prior, ThrowFit fit, int told, int narrow) {}

    /** What a player's records say on a day, that day included. */
    public static Throws of(Records records, int player, LocalDate today) {
        Map<String, BagSet> bags = new LinkedHashMap<>();
        records.bags(player).forEach(bag -> bags.put(bag.id(), bag));
        Map<Key, List<ThrowTally>> tallies = new LinkedHashMap<>();
        for (ThrowTally tally : records.analyses()
                .throwCounts(player, today.minusDays(DAYS - 1L).toString(), today.toString())) {
            tallies.computeIfAbsent(new Key(tally.bag(), tally.face()), key -> new ArrayList<>())
                    .add(tally);
        }
        List<Key> keys = new ArrayList<>(tallies.keySet());
        keys.sort(Comparator.comparingInt((Key key) -> -bags(tallies.get(key))));
        // A known face that was not thrown yet is worth a line of the speed sheet.
        Set<Key> all = new LinkedHashSet<>(keys);
        for (BagSet bag : bags.values()) {
            for (Face face : Face.values()) {
                if (!bag.retired() && speed(bag, face) != null) {
                    all.add(new Key(bag.id(), face));
                }
            }
        }
        if (all.isEmpty()) {
            all.add(new Key("", null));
        }
        List<Group> groups = new ArrayList<>();
        for (Key key : all) {
            List<ThrowTally> own = tallies.getOrDefault(key, List.of());
            BagSet bag = bags.get(key.bag());
            ThrowPrior any = ThrowPrior.of(bag == null ? null : speed(bag, key.face()), key.face());
            ThrowPrior prior = groups.isEmpty() ? any : any.like(groups.get(0).fit());
            ThrowFit fit = ThrowFit.of(prior, records(own));
            groups.add(new Group(
                    key,
                    bag == null ? "" : bag.name(),
                    prior,
                    fit,
                    own.stream().mapToInt(Throws::told).sum(),
                    bags(own.stream()
                            .filter(tally -> tally.board() == BoardKind.NARROW)
                            .toList())));
        }
        return new Throws(groups);
    }

    private static @Nullable Integer speed(BagSet bag, @Nullable Face face) {
        return face == null ? null : face == Face.FAST ? bag.fastSpeed() : bag.slowSpeed();
    }

    private static int told(ThrowTally tally) {
        return tally.left() + tally.right() + tally.shortOf() + tally.past();
    }

    private static int bags(@Nullable List<ThrowTally> tallies) {
        return tallies == null
                ? 0
                : tallies.stream()
                        .mapToInt(tally -> tally.known().thrown() + tally.notIn() + tally.inOnly())
                        .sum();
    }

    private static ThrowRecords records(List<ThrowTally> tallies) {
        return new ThrowRecords(
                tallies.stream()
                        .map(tally -> new ThrowCount(
                                Board.of(tally.board()),
                                tally.known(),
                                tally.left(),
                                tally.right(),
                                tally.shortOf(),
                                tally.past(),
                                tally.notIn(),
                                tally.inOnly()))
                        .toList(),
                List.of());
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
        return usual().fit().records().bags() > 0;
    }

    /** The first of a bag set's name, in any case, and face if one is given. */
    public Optional<Group> find(String name, @Nullable Face face) {
        return groups.stream()
                .filter(group -> group.name().equalsIgnoreCase(name)
                        && (face == null || face == group.key().face()))
                .findFirst();
    }

    /** The speed sheet: for each, how it is thrown on usual, slower and faster boards. */
    public List<SpeedSheet.Sheet> sheet() {
        SpeedSheet sheet = new SpeedSheet(usual().fit());
        return groups.stream().map(group -> sheet.of(group.fit())).toList();
    }

    /** What a throw is worth, and what would make it worth more. */
    public static ThrowAdvice advice(Group group) {
        return ThrowAdvice.of(group.fit(), Board.of(NARROW, Board.FRONT_HEIGHT));
    }

    /** Where a bag landed and where it stopped, inches on the board. */
    public record Slid(Place landing, Place rest) {}

    /**
     * What slides thrown now say of the boards. They are added to the bag's records and kept nowhere.
     *
     * @param conditions how the player says the boards play, or null
     * @param slides at least one, on a regulation board
     */
    public static ThrowFit.Day test(Group group, @Nullable Conditions conditions, List<Slid> slides) {
        TappedDay day = new TappedDay(
                conditions,
                true,
                slides.stream()
                        .map(slid -> new Tap(Outcome.ON, slid.landing(), slid.rest()))
                        .toList());
        return ThrowFit.of(group.prior(), new ThrowRecords(group.fit().records().counts(), List.of(day)))
                .day(day);
    }
}
