package boardside.app.web;

import boardside.app.practice.PlannedBlock;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.app.practice.SessionPlan.Points;
import boardside.engine.plan.Activity;
import boardside.engine.plan.Block;
import boardside.engine.plan.Means;
import boardside.engine.plan.Plan;
import boardside.engine.plan.Reason;
import boardside.engine.skill.FormAnswer;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Target;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A plan in words, for pages and the terminal. */
public final class PlanWords {
    /** Success outside of these is not said to teach most. */
    private static final double HARD = 0.4;

    private static final double EASY = 0.75;

    /** Bags that lie where nothing has a name. */
    private static final Pattern CODE =
            Pattern.compile("(?:(?:me|versus):(?:[1-6]|beside|back)-(?:left|middle|right) ?)+");

    private final Texts texts;

    /** In the language of the texts. */
    public PlanWords(Texts texts) {
        this.texts = texts;
    }

    /** What a block is. */
    public String name(Block block) {
        String name = texts.of("plan.activity." + block.activity().word());
        return named(name, block.activity(), block.aim());
    }

    /** What a kept block is. */
    public String name(PlannedBlock block) {
        return named(texts.of("plan.activity." + block.activity().word()), block.activity(), block.aim());
    }

    private String named(String name, Activity activity, String aim) {
        if (aim.isEmpty()) {
            return name;
        }
        String where = activity == Activity.PLACEMENT ? target(aim) : situation(aim);
        return texts.of("plan.named", name, where);
    }

    private String target(String text) {
        return new TryWords(texts, List.of(), Map.of()).target(Target.parse(text));
    }

    /** A shot and what lies there: a name, or a part of the board for each bag, such as push, versus:2-left. */
    private String situation(String aim) {
        int comma = aim.indexOf(", ");
        if (comma < 0) {
            return aim;
        }
        String lies = aim.substring(comma + 2);
        if (CODE.matcher(lies).matches()) {
            lies = Stream.of(lies.split(" "))
                    .map(bag -> bag.split(":"))
                    .map(bag -> texts.of("plan.lies." + bag[0], target(bag[1])))
                    .collect(Collectors.joining("; "));
        }
        return texts.of("plan.shot", texts.of("shot." + aim.substring(0, comma)), lies);
    }

    /** What is done in a kept block. */
    public String does(PlannedBlock block) {
        return does(new Block(
                block.choice(),
                block.activity(),
                block.minutes(),
                block.thrown(),
                block.rounds(),
                block.bags(),
                block.approach(),
                block.board(),
                block.ghost(),
                block.target(),
                block.aim(),
                new Reason.FirstNumbers(),
                block.serves()));
    }

    /**
     * A plan as it is kept, to be followed.
     *
     * @param form the player's points a round, where the records tell them
     */
    public SessionPlan kept(Plan plan, LocalDate day, FormAnswer form) {
        Means means = plan.means();
        return new SessionPlan(
                "",
                day.toString(),
                means.minutes(),
                means.energy(),
                means.bagSets(),
                means.boards(),
                means.company(),
                plan.limited(),
                points(form),
                "",
                plan.blocks().stream()
                        .map(block -> new Placed(kept(block), "", ""))
                        .toList());
    }

    /** Points a round; null where the records tell nothing. */
    static @Nullable Points points(FormAnswer answer) {
        return answer instanceof Form form
                ? new Points(
                        form.pointsPerRound().estimate(),
                        form.pointsPerRound().low(),
                        form.pointsPerRound().high())
                : null;
    }

    /** A block as it is kept. */
    public PlannedBlock kept(Block block) {
        return new PlannedBlock(
                block.choice(),
                block.activity(),
                block.minutes(),
                block.throwsPlanned(),
                block.rounds(),
                block.bags(),
                block.approach(),
                block.board(),
                block.ghost(),
                block.target(),
                block.aim(),
                why(block),
                block.serves());
    }

    /** What is done in it: bags and rounds, how, and what to reach. */
    public String does(Block block) {
        if (block.activity() == Activity.BREAK) {
            return texts.of("plan.does.rest");
        }
        List<String> parts = new ArrayList<>();
        Integer ghost = block.ghost();
        boolean fours = block.activity() == Activity.TOTAL;
        parts.add(
                ghost != null
                        ? texts.of("plan.does.ghost", ghost, block.throwsPlanned())
                        : fours
                                ? texts.of("plan.does.rounds", block.rounds(), block.throwsPlanned())
                                : texts.of("plan.does.throws", block.throwsPlanned()));
        if (!block.bags().isEmpty()) {
            parts.add(String.join(", ", block.bags()));
        }
        if (block.approach() != null) {
            parts.add(texts.of("approach." + block.approach().word()));
        }
        if (block.board() != null && block.board() != boardside.engine.rules.BoardKind.REGULATION) {
            parts.add(texts.of("board." + block.board().word()));
        }
        Integer target = block.target();
        if (target != null) {
            String what = fours ? "points" : block.activity() == Activity.VOLUME ? "in" : "worked";
            parts.add(texts.of("plan.does." + what, target));
        }
        return String.join("; ", parts);
    }

    /** Why it was chosen: a sentence with the number that did it. */
    public String why(Block block) {
        Reason reason = block.reason();
        if (reason instanceof Reason.Worth worth) {
            String rival = worth.rival().isEmpty() ? texts.of("plan.reason.worth.ghost", worth.ghost()) : worth.rival();
            return texts.of(worth.toIn() ? "plan.reason.worth.in" : "plan.reason.worth.on", range(worth.wins()), rival);
        }
        if (reason instanceof Reason.Unsure unsure) {
            return unsure.tries() == 0
                    ? texts.of("plan.reason.unsure.none")
                    : unsure.tries() == 1
                            ? texts.of("plan.reason.unsure.one")
                            : texts.of("plan.reason.unsure", unsure.tries());
        }
        if (reason instanceof Reason.Neglected neglected) {
            return texts.of("plan.reason.neglected", neglected.days());
        }
        if (reason instanceof Reason.RightlyHard hard) {
            double works = hard.works().estimate();
            return texts.of(
                    works >= HARD && works <= EASY ? "plan.reason.hard" : "plan.reason.easy",
                    Numbers.percent(hard.works()));
        }
        if (reason instanceof Reason.ShotWorth worth) {
            String shot = texts.of("shot." + worth.shot().word()).toLowerCase(Locale.ENGLISH);
            return worth.tries() == 0
                    ? texts.of("plan.reason.shot.none", shot, range(worth.wins()))
                    : texts.of("plan.reason.shot", shot, range(worth.wins()), Numbers.percent(worth.works()));
        }
        if (reason instanceof Reason.Balance balance) {
            return texts.of("plan.reason.balance", Numbers.percent(balance.win()));
        }
        if (reason instanceof Reason.Stakes stakes) {
            return texts.of("plan.reason.stakes", range(stakes.points()));
        }
        if (reason instanceof Reason.LeagueNight night) {
            String when = night.days() == 0
                    ? texts.of("plan.reason.league.today")
                    : night.days() == 1
                            ? texts.of("plan.reason.league.tomorrow")
                            : texts.of("plan.reason.league.days", night.days());
            return texts.of("plan.reason.league", night.rival(), when);
        }
        if (reason instanceof Reason.Ladder ladder) {
            return texts.of("plan.reason.ladder", ladder.rung(), ladder.days());
        }
        if (reason instanceof Reason.TrialOpen trial) {
            return texts.of("plan.reason.trial", trial.name(), trial.blocks());
        }
        if (reason instanceof Reason.BoardsUnknown boards) {
            return boards.days() < 0
                    ? texts.of("plan.reason.boards.never")
                    : texts.of("plan.reason.boards", boards.days());
        }
        if (reason instanceof Reason.BoardsChanged) {
            return texts.of("plan.reason.boards.changed");
        }
        if (reason instanceof Reason.WarmUp warm) {
            return texts.of("plan.reason.warm-up", warm.minutes());
        }
        return reason instanceof Reason.Rest rest
                ? texts.of("plan.reason.rest", rest.minutes())
                : texts.of("plan.reason.first");
    }

    /** How much of the time and how many bags it takes. */
    public String sum(Plan plan) {
        return plan.blocks().isEmpty()
                ? texts.of("plan.empty")
                : texts.of("plan.minutes", plan.minutes(), plan.means().minutes(), plan.throwsPlanned());
    }

    /** What else there is to say: that bags ran out, and the usual caution. */
    public List<String> notes(Plan plan) {
        List<String> notes = new ArrayList<>();
        if (plan.limited()) {
            notes.add(texts.of("plan.limited"));
        }
        notes.add(texts.of("plan.caution"));
        return notes;
    }

    private static String range(Interval interval) {
        return String.format(Locale.ROOT, "%.1f", interval.estimate()) + " (" + Numbers.range(interval) + ")";
    }
}
