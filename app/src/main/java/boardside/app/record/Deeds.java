package boardside.app.record;

import boardside.app.practice.DayBags;
import boardside.app.practice.Held;
import boardside.app.practice.Run;
import boardside.app.store.Database;
import boardside.app.store.FeatRows;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a player has done: bests, milestones and bags a day, from sums of runs and never from single rounds. Thread safe. */
public final class Deeds {
    /** Numbers of rounds whose best total is told. */
    private static final List<Integer> ROUNDS = List.of(5, 10, 15, 20);

    /** Drills whose best twenty bags are told. */
    private static final List<Drill> TWENTY =
            List.of(Drill.TOTAL, Drill.RACE, Drill.CLIMB, Drill.GAME, Drill.DUEL, Drill.FIXTURE, Drill.TRIAL);

    private static final List<Integer> BAGS =
            List.of(1_000, 2_500, 5_000, 10_000, 25_000, 50_000, 100_000, 250_000, 500_000, 1_000_000);
    private static final List<Integer> TOTALS = List.of(40, 50, 60, 70, 80, 90, 100, 110, 120);
    private static final List<Integer> DAYS = List.of(10, 25, 50, 100, 250, 500, 1000);

    private final Database database;

    Deeds(Database database) {
        this.database = database;
    }

    /** A kind of best. */
    public sealed interface Kind {
        /** The highest total of so many rounds of four. */
        record Total(int rounds) implements Kind {}

        /** A game to 21 won in the fewest rounds. */
        record Fewest() implements Kind {}

        /** The best ghost beaten. */
        record Ghost() implements Kind {}

        /** The most four-baggers in a row. */
        record Streak() implements Kind {}

        /** The most points of twenty bags in a row in a drill. */
        record Twenty(Drill drill) implements Kind {}

        /** The most tries that worked of twenty in a row in a drill. */
        record Tries(Drill drill) implements Kind {}
    }

    /** A best. */
    public record Best(Kind kind, Held held) {}

    /** All bests, as far as there are any; of equal ones the earliest holds it. */
    public List<Best> bests(int player) {
        return database.read(rows -> {
            FeatRows feats = rows.feats();
            List<Best> bests = new ArrayList<>();
            for (int rounds : ROUNDS) {
                add(bests, new Kind.Total(rounds), feats.total(player, rounds, ""));
            }
            add(bests, new Kind.Streak(), feats.streak(player, ""));
            add(bests, new Kind.Fewest(), feats.fewestRounds(player, ""));
            add(bests, new Kind.Ghost(), feats.ghost(player, ""));
            for (Drill drill : TWENTY) {
                add(bests, new Kind.Twenty(drill), feats.twenty(player, drill, ""));
            }
            for (Drill drill : List.of(Drill.PLACEMENT, Drill.SITUATION)) {
                add(bests, new Kind.Tries(drill), feats.tries(player, drill));
            }
            return bests;
        });
    }

    private static void add(List<Best> bests, Kind kind, Optional<Held> held) {
        held.ifPresent(found -> bests.add(new Best(kind, found)));
    }

    /**
     * What a finished, counted run did better than all others of its kind; nothing where there is no other to be better
     * than.
     */
    public List<Best> newBests(int player, String run) {
        return database.read(rows -> {
            List<Best> bests = new ArrayList<>();
            Optional<Run> found = rows.runs().find(player, run);
            if (found.isEmpty()
                    || found.get().open()
                    || found.get().deleted()
                    || found.get().warmUp()) {
                return bests;
            }
            Run one = found.get();
            FeatRows feats = rows.feats();
            feats.of(player, run).ifPresent(feat -> {
                String day = one.startedAt().substring(0, 10);
                Integer points = one.sum().points();
                int rounds = one.sum().rounds();
                boolean total = (one.drill() == Drill.TOTAL || one.drill() == Drill.FIXTURE)
                        && one.sum().thrown() == Finish.BAGS * rounds;
                if (total && points != null && rounds > 0) {
                    better(
                            bests,
                            new Kind.Total(rounds),
                            new Held(points, run, day),
                            feats.total(player, rounds, run),
                            1);
                }
                better(bests, new Kind.Streak(), new Held(feat.streak(), run, day), feats.streak(player, run), 1);
                Integer twenty = feat.twenty();
                if (twenty != null && TWENTY.contains(one.drill())) {
                    better(
                            bests,
                            new Kind.Twenty(one.drill()),
                            new Held(twenty, run, day),
                            feats.twenty(player, one.drill(), run),
                            1);
                }
                Integer target = one.target();
                boolean won = Boolean.TRUE.equals(feat.won());
                if (won && (target == null || target == 21)) {
                    better(bests, new Kind.Fewest(), new Held(rounds, run, day), feats.fewestRounds(player, run), -1);
                }
                Integer ghost = feat.ghost();
                if (won && ghost != null && (target == null || target >= 21)) {
                    better(bests, new Kind.Ghost(), new Held(ghost, run, day), feats.ghost(player, run), 1);
                }
            });
            return bests;
        });
    }

    private static void better(List<Best> bests, Kind kind, Held held, Optional<Held> before, int sign) {
        if (before.isPresent() && sign * (held.value() - before.get().value()) > 0) {
            bests.add(new Best(kind, held));
        }
    }

    /** Something reached for the first time. */
    public sealed interface Milestone {
        /** The day it was reached, yyyy-mm-dd. */
        String day();

        /** So many bags thrown in all. */
        record Bags(int bags, String day) implements Milestone {}

        /** So many days with bags thrown. */
        record Days(int days, String day) implements Milestone {}

        /** A total of ten rounds of four of at least so many points. */
        record Total(int points, String day) implements Milestone {}

        /** So many four-baggers in a row. */
        record Streak(int rounds, String day) implements Milestone {}

        /** A ghost beaten that was better than any before. */
        record Ghost(int points, String day) implements Milestone {}

        /** The first game of a league thrown to its end. */
        record League(String day) implements Milestone {}
    }

    /**
     * Milestones reached, the latest first.
     *
     * @param reached those reached
     * @param bags bags thrown in all
     * @param next the next number of bags that is a milestone, or 0 where there is none
     */
    public record Milestones(List<Milestone> reached, long bags, int next) {
        /** List copied. */
        public Milestones {
            reached = List.copyOf(reached);
        }
    }

    /** What was reached for the first time, and when. */
    public Milestones milestones(int player) {
        return database.read(rows -> {
            FeatRows feats = rows.feats();
            List<Milestone> reached = new ArrayList<>();
            long bags = 0;
            int days = 0;
            for (DayBags day : feats.days(player, "", "9999-12-31")) {
                for (int mark : BAGS) {
                    if (bags < mark && bags + day.bags() >= mark) {
                        reached.add(new Milestone.Bags(mark, day.day()));
                    }
                }
                bags += day.bags();
                days++;
                if (DAYS.contains(days)) {
                    reached.add(new Milestone.Days(days, day.day()));
                }
            }
            int before = 0;
            for (Held total : feats.totalsOfTen(player)) {
                int mark = 0;
                for (int each : TOTALS) {
                    mark = before < each && total.value() >= each ? each : mark;
                }
                if (mark > 0) {
                    reached.add(new Milestone.Total(mark, total.day()));
                }
                before = total.value();
            }
            feats.streaks(player).forEach(streak -> reached.add(new Milestone.Streak(streak.value(), streak.day())));
            feats.ghosts(player).forEach(ghost -> reached.add(new Milestone.Ghost(ghost.value(), ghost.day())));
            feats.fixtures(player).ifPresent(games -> reached.add(new Milestone.League(games.day())));
            reached.sort((one, other) -> other.day().compareTo(one.day()));
            long all = bags;
            return new Milestones(
                    reached,
                    bags,
                    BAGS.stream().filter(mark -> mark > all).findFirst().orElse(0));
        });
    }

    /** Days with bags thrown, the earliest first; both ends included. */
    public List<DayBags> days(int player, LocalDate from, LocalDate to) {
        return database.read(rows -> rows.feats().days(player, from.toString(), to.toString()));
    }

    /** Bags of the last days, and whether they rise sharply. */
    public Load load(int player, LocalDate today) {
        return Load.of(days(player, today.minusDays(Load.DAYS - 1L), today), today);
    }
}
