package boardside.engine.plan;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.Level;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.plan.GoalAnswer.Standing;
import boardside.engine.plan.GoalAnswer.Verdict;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Outlook;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** How goals stand: today, on their day by the drift of the skill model alone, and at the present pace. */
public final class Goals {
    private static final int DAYS = 90;
    private static final double MONTH = 30.4;

    /** As likely as that is there; so verdicts of skill call a thing leaning. */
    private static final double LIKELY = 0.85;

    /** Less than this by drift alone is left to pace. */
    private static final double MAY_BE = 0.25;

    /** One go in so many is as good as reached, for a total that is to be thrown once. */
    private static final double ONE_GO = 0.5;

    private Goals() {}

    /** How a goal stands by what the records say on a day. */
    public static GoalAnswer of(Skill skill, Goal goal, LocalDate today) {
        Optional<ChanceRange> chances = skill.chances();
        Optional<Outlook> ahead = skill.outlook(goal.by().isAfter(today) ? goal.by() : today);
        Optional<Outlook> here = skill.outlook(today);
        if (chances.isEmpty() || ahead.isEmpty() || here.isEmpty()) {
            return new GoalAnswer.NoRecords();
        }
        Interval change = skill.form(DAYS) instanceof Form form ? form.trend().change() : new Interval(0, 0, 0);
        double months = Math.max(0, ChronoUnit.DAYS.between(today, goal.by())) / MONTH;
        Measure measure = new Measure(goal, chances.get());
        Interval now = measure.of(here.get());
        Interval then = measure.of(ahead.get());
        // Points a round turned into what is counted, at today's chances.
        double rate = measure.perPoint() * MONTH / DAYS;
        Interval pace = new Interval(rate * change.estimate(), rate * change.low(), rate * change.high());
        double chanceNow = measure.chance(here.get());
        double chanceThen = measure.chance(ahead.get());
        double missing = Math.max(0, measure.aim() - now.estimate());
        double needed = months > 0 ? missing / months : missing;
        return new Standing(
                now,
                then,
                chanceNow,
                chanceThen,
                months,
                pace,
                needed,
                verdict(goal, chanceNow, chanceThen, months, pace, needed));
    }

    private static Verdict verdict(
            Goal goal, double chanceNow, double chanceThen, double months, Interval pace, double needed) {
        if (chanceNow >= (goal.kind() == Goal.Kind.TOTAL ? ONE_GO : LIKELY)) {
            return Verdict.REACHED;
        }
        if (chanceThen >= MAY_BE || months > 0 && needed <= pace.estimate()) {
            return Verdict.WITHIN_REACH;
        }
        return months > 0 && needed <= pace.high() ? Verdict.A_STRETCH : Verdict.OUT_OF_REACH;
    }

    /** What a goal counts. */
    private static final class Measure {
        private static final int ROUNDS = 10;
        private static final double STEP = 0.25;

        private final Goal goal;
        private final ChanceRange chances;

        Measure(Goal goal, ChanceRange chances) {
            this.goal = goal;
            this.chances = chances;
        }

        /** The value to reach, in what is counted. A total of ten rounds is counted by its mean. */
        double aim() {
            return goal.value();
        }

        Interval of(Outlook outlook) {
            return switch (goal.kind()) {
                case IN -> {
                    Interval in = outlook.inHole();
                    yield new Interval(100 * in.estimate(), 100 * in.low(), 100 * in.high());
                }
                case LEVEL -> outlook.chances().of(Measure::level);
                case SEASON -> outlook.pointsPerRound();
                case TOTAL -> {
                    Interval points = outlook.pointsPerRound();
                    yield new Interval(ROUNDS * points.estimate(), ROUNDS * points.low(), ROUNDS * points.high());
                }
            };
        }

        double chance(Outlook outlook) {
            return switch (goal.kind()) {
                case IN -> outlook.inAtLeast(goal.value() / 100);
                case LEVEL -> outlook.pointsAtLeast(pointsOf(outlook.chances()));
                case SEASON -> outlook.pointsAtLeast(goal.value());
                case TOTAL -> {
                    // Luck of a go on top of what is not known of the player, at the middle and the ends of the range.
                    ChanceRange range = outlook.chances();
                    double low = total(range.low());
                    double high = total(range.high());
                    yield (low + 2 * total(range.likely()) + high) / 4;
                }
            };
        }

        private double total(BagChances bag) {
            return Total.of(RoundDistribution.of(bag), ROUNDS).atLeast((int) Math.ceil(goal.value()));
        }

        private static double level(BagChances bag) {
            return Level.of(GameRules.STANDARD, RoundDistribution.of(bag)).value();
        }

        /** Points a round at which the level is that of the goal, along the line on which the player's chances lie. */
        private double pointsOf(ChanceRange range) {
            BagChances from = range.likely();
            double low = 0;
            double high = 12;
            for (int step = 0; step < 20; step++) {
                double middle = (low + high) / 2;
                if (level(at(from, middle)) < goal.value()) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return high;
        }

        /** Chances of so many points a round: better bags go in that stayed on or went off before, in equal shares. */
        private static BagChances at(BagChances from, double points) {
            double now = from.pointsPerRound();
            if (points <= now) {
                double share = now > 0 ? points / now : 0;
                return new BagChances(from.in() * share, from.on() * share);
            }
            double share = (points - now) / (12 - now);
            return new BagChances(from.in() + share * (1 - from.in()), from.on() * (1 - share));
        }

        /** What is counted, more, for a point a round more. */
        double perPoint() {
            ToDoubleFunction<BagChances> counted = switch (goal.kind()) {
                case IN -> bag -> 100 * bag.in();
                case LEVEL -> Measure::level;
                case SEASON -> BagChances::pointsPerRound;
                case TOTAL -> bag -> ROUNDS * bag.pointsPerRound();
            };
            BagChances bag = chances.likely();
            double points = bag.pointsPerRound();
            BagChances up = at(bag, Math.min(12, points + STEP));
            BagChances down = at(bag, Math.max(0, points - STEP));
            double between = up.pointsPerRound() - down.pointsPerRound();
            return between > 0 ? (counted.applyAsDouble(up) - counted.applyAsDouble(down)) / between : 0;
        }
    }
}
