package boardside.app.demo;

import boardside.app.practice.BagSet;
import boardside.app.practice.League;
import boardside.app.practice.Player;
import boardside.app.record.Journal;
import boardside.app.record.Records;
import boardside.app.transfer.LogFiles;
import boardside.app.transfer.PastedFixtures;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.plan.Goal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;

/** The example store. */
public final class Demo {
    /** Whose practice it is. */
    public static final String PLAYER = "Wren Tallow";

    /** Who is shown it. */
    public static final String COACH = "Hale Orchard";

    /** Eighteen months. */
    private static final int DAYS = 548;

    private static final long SEED = 20_260_531;

    /** Points of ten rounds that the player may well throw once. */
    private static final int TOTAL = 66;

    private Demo() {}

    /**
     * Eighteen months of practice as a log in the CSV format.
     *
     * @param last the last day of it
     */
    public static String log(LocalDate last) {
        return Scenario.log(last, DAYS, SEED, 2, false);
    }

    /**
     * A log of about so many throws, of a player who practises every day, for measuring.
     *
     * @param last the last day of it
     * @param throwsWanted 1,000 or more
     */
    public static String bigLog(LocalDate last, int throwsWanted) {
        // Ten years at most; a run has about seventy throws, those of opponents and warm-ups included.
        int days = Math.min(3650, Math.max(1, throwsWanted / 150));
        return Scenario.log(last, days, SEED, (int) Math.max(1, Math.round(throwsWanted / (days * 72.0))), true);
    }

    /** Fills an empty store with the example, through the importer as any log. */
    public static Player fill(Records records, LocalDate last) {
        Player player = records.addPlayer(PLAYER, Player.Hand.RIGHT, Player.Hand.LEFT);
        int speed = 3;
        for (String name : Scenario.BAGS) {
            records.saveBag(player.id(), new BagSet("", name, speed, speed + 3, 15.75, "plastic beads", "", false));
            speed += 1;
        }
        records.saveBag(
                player.id(), new BagSet("", "Old Curtains", 2, null, 16.0, "corn", "The first set, worn out", true));
        byte[] log = log(last).getBytes(StandardCharsets.UTF_8);
        LogFiles.read(records, player.id(), List.of(new LogFiles.Source("demo", log)), LogFiles.Progress.NONE);
        DemoTries.add(records, player, last, SEED);
        DemoTrials.add(records, player, last, SEED);
        DemoSlides.add(records, player, last, SEED);
        records.bags(player.id()).stream()
                .filter(bag -> bag.name().equals(Scenario.BAGS.get(1)))
                .findFirst()
                .ifPresent(bag -> Taps.add(records, player.id(), last, SEED, bag.id()));
        Journal latest = records.journal(player.id(), "", 0, 1);
        latest.entries()
                .forEach(entry -> records.editSession(
                        player.id(),
                        entry.session().id(),
                        "Behind the barn, light wind. Trying to let go a little later."));
        league(records, player, last);
        DemoSeason.add(records, last, SEED);
        return player;
    }

    /** Two goals, one within reach and one that is not at this pace, and an invented coach who may see form, goals and plan. */
    public static void share(Records records, Player player, LocalDate today) {
        records.plans().setGoal(player.id(), new Goal(Goal.Kind.TOTAL, TOTAL, today.plusMonths(2)), today);
        records.plans().setGoal(player.id(), new Goal(Goal.Kind.LEVEL, 8, today.plusMonths(5)), today);
        Player coach = records.addPlayer(COACH, Player.Hand.LEFT, Player.Hand.RIGHT);
        records.plans().grant(player.id(), coach.id());
    }

    /** An invented league: a week behind, one under way with a total posted, one to come. */
    private static void league(Records records, Player player, LocalDate last) {
        League league = records.leagues()
                .save(
                        player.id(),
                        new League(
                                "",
                                "The Long Porch",
                                PLAYER,
                                "Europe/Berlin",
                                League.USUAL_GAMES,
                                League.USUAL_ROUNDS,
                                LeaguePoints.STANDARD,
                                "Seven days to throw, camera on the board.",
                                false));
        String text = """
                Week 1, due %s 21:00
                Wren Tallow v Jory Pike 71-64, 58-66, 69-69
                Mabel Quill v Otto Fenn 80-77, 62-71, 75-70
                Week 2, due %s 21:00
                Otto Fenn v Wren Tallow 66-?, 73-?
                Jory Pike v Mabel Quill 59-78
                Week 3, due %s 21:00
                Wren Tallow v Mabel Quill
                Jory Pike v Otto Fenn
                """.formatted(last.minusDays(3), last.plusDays(4), last.plusDays(11));
        records.leagues().post(player.id(), league.id(), PastedFixtures.read(text, last));
    }
}
