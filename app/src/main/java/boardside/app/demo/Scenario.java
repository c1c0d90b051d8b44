package boardside.app.demo;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import boardside.engine.rules.Word;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * Writes the log of an invented player, day by day, in the CSV format. They get better over the seasons, fall into a
 * slump two thirds of the way and come out of it; have good and bad days; play a league on Thursdays; and take up the
 * narrow board in the second half. The same seed gives the same log.
 */
final class Scenario {
    /** Bag sets, slow to fast. */
    static final List<String> BAGS = List.of("Plum Kettle", "Lantern Moss", "Brass Teapot");

    private static final List<String> OPPONENTS = List.of("Odile Brandt", "Marek Hollin", "Aunt Pim", "Jaro Fenn");
    private static final List<String> NOTES = List.of(
            "Gusts from the left",
            "Kept my elbow closer",
            "Sun in my eyes for two rounds",
            "New release point: later",
            "Boards damp after the rain");
    private static final String HEAD = "session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,"
            + "in,on,off,thrown,conditions,opponent,game,warm_up,miss_left,miss_right,miss_short,miss_long,note\n";
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss");
    private static final int ROUNDS = 10;

    /** Of bags off, the shares that went left, right, short and long, summed up: most slide over the back. */
    private static final double[] MISSES = {0.16, 0.26, 0.4, 1};

    private final StringBuilder out = new StringBuilder(HEAD);
    private final SplittableRandom random;
    private final LocalDate last;
    private final int days;

    private LocalDateTime now;
    private String session = "";
    private int runs;
    private double form;
    private Conditions conditions = Conditions.NORMAL;
    private boolean late;
    private int rung = 4;

    private Scenario(LocalDate last, int days, long seed) {
        this.random = new SplittableRandom(seed);
        this.last = last;
        this.days = days;
        this.now = last.atStartOfDay();
    }

    /**
     * A log.
     *
     * @param last the last day on which anything may be thrown
     * @param days how many days it spans, 1 or more
     * @param seed for everything left to chance
     * @param runsADay runs on a day of practice at least, 1 or more
     * @param daily whether every day is one of practice; else about four a week are
     */
    static String log(LocalDate last, int days, long seed, int runsADay, boolean daily) {
        Scenario scenario = new Scenario(last, days, seed);
        for (int day = 0; day < days; day++) {
            scenario.day(day, runsADay, daily);
        }
        return scenario.out.toString();
    }

    private void day(int day, int runsADay, boolean daily) {
        LocalDate date = last.minusDays(days - 1L - day);
        double progress = (day + 1.0) / days;
        boolean league = date.getDayOfWeek() == DayOfWeek.THURSDAY && progress > 0.15;
        boolean practice = daily || league || random.nextDouble() < 0.52;
        double gift = gaussian();
        if (!practice) {
            return;
        }
        late = progress > 0.5;
        form = trend(progress) + 0.18 * gift;
        conditions = weather(date.getMonthValue());
        session = "demo-" + date;
        runs = 0;
        now = date.atTime(LocalTime.of(league ? 19 : 17, random.nextInt(50)));
        if (random.nextDouble() < 0.4) {
            total(Setting.PRACTICE, 5, true);
        }
        if (league) {
            match();
        }
        int more = league ? 1 : runsADay + random.nextInt(2);
        for (int i = 0; i < more; i++) {
            practise();
        }
    }

    /** Logit shift of skill: up over the seasons, down in the slump, up again. */
    private static double trend(double progress) {
        double slump = Math.exp(-Math.pow((progress - 0.68) / 0.05, 2));
        return 0.6 * progress - 0.5 * slump;
    }

    private Conditions weather(int month) {
        double u = random.nextDouble();
        boolean damp = month <= 3 || month >= 11;
        if (u < 0.6) {
            return Conditions.NORMAL;
        }
        return (u < 0.85) == damp ? Conditions.SLOW : Conditions.FAST;
    }

    private void practise() {
        double u = random.nextDouble();
        if (u < 0.45) {
            total(Setting.PRACTICE, ROUNDS, false);
        } else if (u < 0.6) {
            race(Drill.RACE, 3 + random.nextInt(4));
        } else if (u < 0.7) {
            rung = Math.min(12, Math.max(0, rung + (race(Drill.CLIMB, rung) ? 1 : -1)));
        } else if (u < 0.82) {
            volume();
        } else if (u < 0.89) {
            game();
        } else if (u < 0.95) {
            duel();
        } else {
            casual();
        }
    }

    private void total(Setting setting, int rounds, boolean warmUp) {
        Throwing way = way(setting, late && random.nextDouble() < 0.25);
        start();
        boolean misses = random.nextDouble() < 0.2;
        for (int round = 1; round <= rounds; round++) {
            row(Drill.TOTAL, round, "me", way, null, thrown(way, 4, 0), new Extra("", 0, warmUp, misses, note(round)));
        }
    }

    private String note(int round) {
        return round == 1 && random.nextDouble() < 0.06 ? NOTES.get(random.nextInt(NOTES.size())) : "";
    }

    private boolean race(Drill drill, int ghost) {
        Throwing way = way(Setting.PRACTICE, false);
        start();
        Game game = Game.start(GameRules.STANDARD, true);
        for (int round = 1; !game.over() && round <= 60; round++) {
            Tally tally = thrown(way, 4, 0);
            row(drill, round, "me", way, ghost, tally, Extra.NONE);
            game = game.play(tally.points(), ghost);
        }
        return game.result() == Game.Result.WON;
    }

    /** Every bag set once a round; on every other day only the bags in are counted. */
    private void volume() {
        start();
        boolean onlyIn = random.nextBoolean();
        for (int round = 1; round <= 5; round++) {
            for (String bag : BAGS) {
                Throwing way = new Throwing(
                        bag, Face.SLOW, Approach.CONSERVATIVE, BoardKind.REGULATION, Setting.PRACTICE, conditions);
                Tally tally = thrown(way, 4, 0);
                if (onlyIn) {
                    onlyIn(Drill.VOLUME, round, way, tally);
                } else {
                    row(Drill.VOLUME, round, "me", way, null, tally, Extra.NONE);
                }
            }
        }
    }

    private void casual() {
        Throwing way = way(Setting.PRACTICE, false);
        start();
        for (int round = 1; round <= 4; round++) {
            onlyIn(Drill.CASUAL, round, way, thrown(way, 8, 0));
        }
    }

    private void game() {
        Throwing way = way(random.nextDouble() < 0.3 ? Setting.TOURNAMENT : Setting.PRACTICE, false);
        String opponent = OPPONENTS.get(random.nextInt(OPPONENTS.size()));
        start();
        Game game = Game.start(GameRules.STANDARD, true);
        for (int round = 1; !game.over() && round <= 60; round++) {
            Tally mine = thrown(way, 4, 0);
            Tally theirs = thrown(Throwing.of(conditions), 4, -form);
            Extra extra = new Extra(opponent, 0, false, false, "");
            row(Drill.GAME, round, "me", way, null, mine, extra);
            row(Drill.GAME, round, "versus", Throwing.of(conditions).with(way.setting()), null, theirs, extra);
            game = game.play(mine.points(), theirs.points());
        }
    }

    private void duel() {
        Throwing first = way(Setting.PRACTICE, false).with(BAGS.get(0), Approach.CONSERVATIVE);
        Throwing second = first.with(BAGS.get(2), Approach.AGGRESSIVE);
        start();
        Game game = Game.start(GameRules.STANDARD, true);
        for (int round = 1; !game.over() && round <= 60; round++) {
            Tally slow = thrown(first, 4, 0);
            Tally fast = thrown(second, 4, 0);
            row(Drill.DUEL, round, "a", first, null, slow, Extra.NONE);
            row(Drill.DUEL, round, "b", second, null, fast, Extra.NONE);
            game = game.play(slow.points(), fast.points());
        }
    }

    /** A league match: three games of ten rounds. */
    private void match() {
        Throwing way = way(Setting.LEAGUE, false);
        String opponent = OPPONENTS.get(random.nextInt(OPPONENTS.size()));
        double strength = 0.25 * gaussian() - form;
        for (int game = 1; game <= 3; game++) {
            start();
            for (int round = 1; round <= ROUNDS; round++) {
                Extra extra = new Extra(opponent, game, false, false, "");
                row(Drill.FIXTURE, round, "me", way, null, thrown(way, 4, -0.08), extra);
                Throwing theirs = Throwing.of(conditions).with(Setting.LEAGUE);
                row(Drill.FIXTURE, round, "versus", theirs, null, thrown(theirs, 4, strength), extra);
            }
        }
    }

    private Throwing way(Setting setting, boolean narrow) {
        double u = random.nextDouble();
        String bag = BAGS.get(u < (late ? 0.25 : 0.5) ? 0 : u < 0.75 ? 1 : 2);
        return new Throwing(
                bag,
                random.nextDouble() < 0.7 ? Face.SLOW : Face.FAST,
                random.nextDouble() < 0.65 ? Approach.CONSERVATIVE : Approach.AGGRESSIVE,
                narrow ? BoardKind.NARROW : BoardKind.REGULATION,
                setting,
                conditions);
    }

    private void start() {
        runs++;
        now = now.plusMinutes(9).plusSeconds(random.nextInt(240));
    }

    private Tally thrown(Throwing way, int bags, double shift) {
        double kept = logistic(0.75 + form + shift + way.kept());
        double in = logistic(-0.55 + form + shift + way.in());
        int inHole = 0;
        int on = 0;
        for (int i = 0; i < bags; i++) {
            if (random.nextDouble() < kept) {
                if (random.nextDouble() < in) {
                    inHole++;
                } else {
                    on++;
                }
            }
        }
        return new Tally(inHole, on, bags - inHole - on);
    }

    /** How a bag is thrown, and what that does to the chances; empty or null where it is not said. */
    private record Throwing(
            String bag,
            @Nullable Face face,
            @Nullable Approach approach,
            BoardKind board,
            Setting setting,
            Conditions conditions) {
        static Throwing of(Conditions conditions) {
            return new Throwing("", null, null, BoardKind.REGULATION, Setting.PRACTICE, conditions);
        }

        Throwing with(String otherBag, Approach other) {
            return new Throwing(otherBag, face, other, board, setting, conditions);
        }

        Throwing with(Setting other) {
            return new Throwing(bag, face, approach, board, other, conditions);
        }

        /** Logit shift of staying on the board. */
        double kept() {
            return (approach == Approach.AGGRESSIVE ? -0.35 : 0)
                    + (face == Face.FAST ? -0.1 : 0)
                    + (bag.equals(BAGS.get(2)) ? -0.15 : 0)
                    + (board == BoardKind.NARROW ? -0.6 : 0)
                    + (conditions == Conditions.FAST ? -0.12 : 0);
        }

        /** Logit shift of going in, if it stays. */
        double in() {
            return (approach == Approach.AGGRESSIVE ? 0.28 : 0)
                    + (face == Face.FAST ? 0.08 : 0)
                    + (bag.equals(BAGS.get(1)) ? 0.15 : 0)
                    + (conditions == Conditions.SLOW ? -0.12 : 0);
        }
    }

    private record Extra(String opponent, int game, boolean warmUp, boolean misses, String note) {
        static final Extra NONE = new Extra("", 0, false, false, "");
    }

    private void row(
            Drill drill, int round, String side, Throwing way, @Nullable Integer ghost, Tally tally, Extra extra) {
        head(drill, round, side, way, ghost);
        out.append(tally.in()).append(',').append(tally.on()).append(',').append(tally.off());
        out.append(",,").append(way.conditions().word());
        out.append(',').append(extra.opponent());
        out.append(',').append(extra.game() == 0 ? "" : extra.game());
        out.append(',').append(extra.warmUp() ? "yes" : "");
        int[] missed = new int[MISSES.length];
        for (int bag = 0; extra.misses() && bag < tally.off(); bag++) {
            missed[miss()]++;
        }
        for (int count : missed) {
            out.append(',').append(extra.misses() ? count : "");
        }
        out.append(',').append(extra.note()).append('\n');
    }

    private int miss() {
        double share = random.nextDouble();
        int way = 0;
        while (share >= MISSES[way]) {
            way++;
        }
        return way;
    }

    private void onlyIn(Drill drill, int round, Throwing way, Tally tally) {
        head(drill, round, "me", way, null);
        out.append(tally.in()).append(",,,").append(tally.thrown()).append(',');
        out.append(way.conditions().word()).append(",,,,,,,,\n");
    }

    private void head(Drill drill, int round, String side, Throwing way, @Nullable Integer ghost) {
        String offset = now.getMonthValue() >= 4 && now.getMonthValue() <= 10 ? "+02:00" : "+01:00";
        out.append(session).append(',').append(session).append('-').append(runs).append(',');
        out.append(TIME.format(now))
                .append(offset)
                .append(',')
                .append(drill.word())
                .append(',');
        out.append(round).append(',').append(side).append(',').append(way.bag()).append(',');
        out.append(word(way.face())).append(',').append(word(way.approach())).append(',');
        out.append(way.board().word()).append(',').append(way.setting().word()).append(',');
        out.append(ghost == null ? "" : ghost).append(',');
    }

    private static String word(@Nullable Word word) {
        return word == null ? "" : word.word();
    }

    private double gaussian() {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    private static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }
}
