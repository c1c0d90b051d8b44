package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.record.Journal;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Tally;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** The last day at the boards in an honest sentence or three, for the first page. */
final class Lately {
    /** A day's practice is one session, now and then a few. */
    private static final int MOST_SESSIONS = 8;

    private final Web web;
    private final Remembered<String> remembered;

    Lately(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** A day and what is to be said of it. */
    record Said(String day, String says) {}

    /** What the last day with any bags came to; empty before the first. */
    Optional<Said> of(Player player) {
        List<Journal.Entry> entries =
                web.records().journal(player.id(), "", 0, MOST_SESSIONS).entries();
        return entries.stream()
                .filter(entry -> !thrown(entry).isEmpty())
                .map(entry -> entry.session().day())
                .findFirst()
                .map(day -> said(player, LocalDate.parse(day), entries));
    }

    private static List<Run> thrown(Journal.Entry entry) {
        return entry.runs().stream()
                .filter(run -> !run.deleted() && run.sum().thrown() > 0)
                .toList();
    }

    private Said said(Player player, LocalDate day, List<Journal.Entry> entries) {
        List<Run> runs = entries.stream()
                .filter(entry -> entry.session().day().equals(day.toString()))
                .flatMap(entry -> thrown(entry).stream())
                .toList();
        int bags = runs.stream().mapToInt(run -> run.sum().thrown()).sum();
        List<String> said = new ArrayList<>();
        said.add(web.texts().of(runs.size() == 1 ? "home.lately.one" : "home.lately", when(day), bags, runs.size()));
        Tally tally = counted(runs);
        if (tally.thrown() > 0) {
            Interval range = Skill.pointsPerRound(tally);
            said.add(web.texts()
                    .of(
                            "home.lately.rate",
                            Numbers.one(tally.pointsPerRound()),
                            Numbers.one(range.low()),
                            Numbers.one(range.high())));
        }
        total(player, day, runs).ifPresent(said::add);
        return new Said(day.toString(), String.join(" ", said));
    }

    private String when(LocalDate day) {
        LocalDate today = web.today();
        return day.equals(today)
                ? web.texts().of("home.lately.today")
                : day.equals(today.minusDays(1))
                        ? web.texts().of("home.lately.yesterday")
                        : web.describe().day(day.toString());
    }

    /** The bags that count and of which all is known. */
    private static Tally counted(List<Run> runs) {
        Tally sum = Tally.NONE;
        for (Run run : runs) {
            Integer points = run.sum().points();
            if (points != null && !run.warmUp() && run.drill().counted()) {
                int in = run.sum().in();
                int on = points - 3 * in;
                sum = sum.plus(new Tally(in, on, run.sum().thrown() - in - on));
            }
        }
        return sum;
    }

    /** How unusual the day's last total was; empty without one, and while that is worked out. */
    private Optional<String> total(Player player, LocalDate day, List<Run> runs) {
        return runs.stream()
                .filter(run -> run.drill() == Drill.TOTAL
                        && run.finishedAt() != null
                        && !run.warmUp()
                        && run.sum().points() != null
                        && run.sum().thrown() == Finish.BAGS * run.sum().rounds())
                .max(Comparator.comparing(Run::startedAt))
                .flatMap(run -> remembered.soon(
                        player,
                        day,
                        run.id(),
                        () -> web.skills()
                                .skill(player.id(), day)
                                .without(run.id())
                                .unusual(
                                        Objects.requireNonNull(run.sum().points()),
                                        run.sum().rounds())
                                .sentence()))
                .map(Remembered.Found::value);
    }
}
