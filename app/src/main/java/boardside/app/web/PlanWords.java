package boardside.app.web;

import boardside.engine.plan.Activity;
import boardside.engine.plan.Block;
import boardside.engine.plan.Plan;
import boardside.engine.plan.Reason;
import boardside.engine.skill.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A plan in words, for pages and the terminal. */
public final class PlanWords {
    /** Success outside of these is not said to teach most. */
    private static final double HARD = 0.4;

    private static final double EASY = 0.75;

    private final Texts texts;

    /** In the language of the texts. */
    public PlanWords(Texts texts) {
        this.texts = texts;
    }

    /** What a block is. */
    public String name(Block block) {
        String name = texts.of("plan.activity." + block.activity().word());
        return block.aim().isEmpty() ? name : name + ": " + block.aim();
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
