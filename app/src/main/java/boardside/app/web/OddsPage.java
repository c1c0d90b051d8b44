package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Opponents;
import boardside.app.record.Standing;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Worth;
import boardside.engine.rules.Drill;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import boardside.engine.skill.TotalForecast;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Exact chances from the player's own records: against ghosts, other players and their own past. */
public final class OddsPage {
    private static final int TOTAL_ROUNDS = 10;
    private static final int MOST_MONTHS = 24;
    private static final int USUAL_GHOST = 5;
    private static final GameRules RULES = GameRules.STANDARD;

    private final Web web;
    private final Remembered<Answer> remembered;

    OddsPage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** An opponent to choose: a ghost, a month of one's own past, or another player. */
    public record Choice(String key, String name, boolean chosen) {}

    /**
     * What the page shows; parts without records are null or empty.
     *
     * @param said the chance to win against the chosen opponent, in a sentence
     * @param more what else follows: a fair head start, what a better bag is worth
     */
    public record View(
            List<Choice> opponents,
            String said,
            List<String> more,
            @Nullable Picture ghosts,
            @Nullable Picture scores,
            @Nullable Picture total) {}

    private record Opponent(String name, RoundDistribution rounds) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        String asked = Objects.requireNonNullElse(ctx.queryParam("versus"), "");
        // Other players are opponents: what they have thrown since counts, too.
        long others = web.records().household(player.id()).stream()
                .mapToLong(Player::version)
                .sum();
        Optional<Remembered.Found<Answer>> found =
                remembered.soon(player, web.today(), asked + " " + others, () -> answer(player, asked));
        RuntimeException refusal = found.map(answer -> answer.value().refusal()).orElse(null);
        if (refusal != null) {
            throw refusal;
        }
        web.showFound(
                ctx,
                "odds",
                web.texts().of("odds.title"),
                found.map(answer -> new Remembered.Found<>(
                        Objects.requireNonNull(answer.value().view()), answer.behind())));
    }

    /** What to show, or why there is nothing to show. */
    private record Answer(@Nullable View view, @Nullable RuntimeException refusal) {}

    private Answer answer(Player player, String asked) {
        try {
            Skill skill = web.skills().skill(player.id(), web.today());
            return new Answer(
                    skill.chances()
                            .map(chances -> view(player, skill, chances, asked))
                            .orElseGet(this::nothing),
                    null);
        } catch (Refusal | Failure refusal) {
            return new Answer(null, refusal);
        }
    }

    private View nothing() {
        return new View(List.of(), web.texts().of("odds.nothing"), List.of(), null, null, null);
    }

    private View view(Player player, Skill skill, ChanceRange mine, String asked) {
        List<Interval> ghosts = new ArrayList<>();
        for (int ghost = 0; ghost <= RoundDistribution.MOST; ghost++) {
            RoundDistribution opponent = RoundDistribution.ghost(ghost);
            ghosts.add(mine.of(chances -> winning(chances, opponent)));
        }
        String key = asked.isEmpty() ? "ghost-" + nearest(ghosts) : asked;
        Opponent opponent = opponent(player, skill, key);
        Interval win = mine.of(chances -> winning(chances, opponent.rounds()));
        return new View(
                choices(player, skill, key),
                web.texts().of("odds.said", opponent.name(), Numbers.percent(win)),
                more(mine, opponent),
                ghosts(ghosts),
                scores(mine.likely(), opponent),
                skill.total(TOTAL_ROUNDS)
                        .map(forecast -> total(player, forecast))
                        .orElse(null));
    }

    private static double winning(BagChances chances, RoundDistribution opponent) {
        return Race.solve(RULES, RoundDistribution.of(chances), opponent).winOrHalf(0, 0, true);
    }

    /** The ghost whose race is nearest to even. */
    private static int nearest(List<Interval> ghosts) {
        int best = USUAL_GHOST;
        for (int ghost = 0; ghost < ghosts.size(); ghost++) {
            if (Math.abs(ghosts.get(ghost).estimate() - 0.5)
                    < Math.abs(ghosts.get(best).estimate() - 0.5)) {
                best = ghost;
            }
        }
        return best;
    }

    private List<Choice> choices(Player player, Skill skill, String key) {
        List<Choice> choices = new ArrayList<>();
        for (int ghost = 0; ghost <= RoundDistribution.MOST; ghost++) {
            choices.add(choice("ghost-" + ghost, web.texts().of("odds.ghost", ghost), key));
        }
        for (Player other : web.records().household(player.id())) {
            if (other.id() != player.id()) {
                choices.add(choice("player-" + other.id(), other.name(), key));
            }
        }
        for (YearMonth month : skill.months().stream().limit(MOST_MONTHS).toList()) {
            choices.add(choice("month-" + month, myself(month), key));
        }
        return choices;
    }

    private static Choice choice(String key, String name, String chosen) {
        return new Choice(key, name, key.equals(chosen));
    }

    private String myself(YearMonth month) {
        return web.texts().of("odds.month", web.texts().month(month));
    }

    private Opponent opponent(Player player, Skill skill, String key) {
        if (key.matches("ghost-(\\d|1[0-2])")) {
            int ghost = Integer.parseInt(key.substring("ghost-".length()));
            return new Opponent(web.texts().of("odds.ghost", ghost), RoundDistribution.ghost(ghost));
        }
        if (key.startsWith("month-")) {
            YearMonth month = month(key.substring("month-".length()));
            return new Opponent(myself(month), Opponents.month(player, skill, month));
        }
        return web.records().household(player.id()).stream()
                .filter(other -> key.equals("player-" + other.id()))
                .findFirst()
                .map(other -> new Opponent(
                        other.name(), Opponents.player(other, web.skills().skill(other.id(), web.today()))))
                .orElseThrow(() -> new Refusal(404, "There is no opponent \"" + key + "\" here."));
    }

    private static YearMonth month(String text) {
        try {
            return YearMonth.parse(text);
        } catch (DateTimeException e) {
            throw new Refusal(404, "\"" + text + "\" is no month; write it like 2026-05.");
        }
    }

    private List<String> more(ChanceRange mine, Opponent opponent) {
        List<String> more = new ArrayList<>();
        more.add(headStart(mine, opponent));
        worth(mine, opponent, Worth::onToIn)
                .ifPresent(gain -> more.add(web.texts().of("odds.worth.in", gain)));
        worth(mine, opponent, Worth::offToOn)
                .ifPresent(gain -> more.add(web.texts().of("odds.worth.on", gain)));
        return more;
    }

    private String headStart(ChanceRange mine, Opponent opponent) {
        List<HeadStart> starts = mine.steps().stream()
                .map(bag -> HeadStart.of(Race.solve(RULES, RoundDistribution.of(bag), opponent.rounds())))
                .toList();
        HeadStart likely = starts.get(0);
        // Points for the opponent count up, points for me down, so that the two ends are the least and the greatest.
        IntSummaryStatistics all = starts.stream()
                .mapToInt(start -> start.to() == Side.ME ? -start.points() : start.points())
                .summaryStatistics();
        String range = all.getMin() == all.getMax()
                ? ""
                : web.texts()
                        .of("odds.head-start.range", points(all.getMin(), opponent), points(all.getMax(), opponent));
        if (likely.points() == 0) {
            return web.texts().of("odds.even", range);
        }
        String key = likely.to() == Side.ME ? "odds.head-start.me" : "odds.head-start.versus";
        return web.texts().of(key, likely.points(), opponent.name(), range);
    }

    private String points(int forOpponent, Opponent opponent) {
        if (forOpponent == 0) {
            return web.texts().of("odds.head-start.none");
        }
        String whom = forOpponent > 0 ? opponent.name() : web.texts().of("odds.head-start.you");
        return web.texts().of("odds.head-start.points", Math.abs(forOpponent), whom);
    }

    /** What moving one bag in a hundred adds, in hundredths of the chance to win: the range over what is not known. */
    private static Optional<String> worth(ChanceRange mine, Opponent opponent, Function<Worth, OptionalDouble> move) {
        List<OptionalDouble> gains = mine.steps().stream()
                .map(bag -> move.apply(Worth.of(bag, chances -> winning(chances, opponent.rounds()))))
                .toList();
        if (gains.stream().anyMatch(OptionalDouble::isEmpty)) {
            return Optional.empty();
        }
        DoubleSummaryStatistics all =
                gains.stream().mapToDouble(OptionalDouble::getAsDouble).summaryStatistics();
        // In a race that is as good as decided a better bag adds nothing worth a line.
        if (all.getMax() < 0.0005) {
            return Optional.empty();
        }
        return Optional.of(Numbers.one(100 * all.getMin()) + "\u2013" + Numbers.one(100 * all.getMax()));
    }

    private Picture ghosts(List<Interval> ghosts) {
        List<Pictures.Named> rows = new ArrayList<>();
        List<List<String>> table = new ArrayList<>();
        for (int ghost = 0; ghost < ghosts.size(); ghost++) {
            Interval win = ghosts.get(ghost);
            table.add(List.of(web.texts().of("odds.ghost", ghost), Numbers.percent(win)));
            // Races that are as good as decided say nothing.
            if (win.high() > 0.01 && win.low() < 0.99) {
                rows.add(new Pictures.Named(
                        web.texts().of("odds.ghost.row", ghost, Numbers.percent(win)),
                        new Interval(100 * win.estimate(), 100 * win.low(), 100 * win.high())));
            }
        }
        if (rows.isEmpty()) {
            Interval win = ghosts.get(USUAL_GHOST);
            rows.add(new Pictures.Named(
                    web.texts().of("odds.ghost.row", USUAL_GHOST, Numbers.percent(win)),
                    new Interval(100 * win.estimate(), 100 * win.low(), 100 * win.high())));
        }
        return Pictures.ranges(
                web.texts().of("odds.ghosts"),
                web.texts().of("odds.ghosts.about"),
                new DataTable(
                        List.of(web.texts().of("odds.opponent"), web.texts().of("odds.win")), table),
                rows);
    }

    private Picture scores(BagChances mine, Opponent opponent) {
        Race race = Race.solve(RULES, RoundDistribution.of(mine), opponent.rounds());
        List<List<Double>> chances = new ArrayList<>();
        List<String> heads = new ArrayList<>(List.of(web.texts().of("odds.scores.corner")));
        List<List<String>> table = new ArrayList<>();
        for (int my = 0; my < RULES.target(); my++) {
            heads.add(String.valueOf(my));
            List<Double> column = new ArrayList<>();
            List<String> row = new ArrayList<>(List.of(String.valueOf(my)));
            for (int their = 0; their < RULES.target(); their++) {
                column.add(race.winOrHalf(my, their, true));
                // Rows of the table are their points, so that it reads like the picture.
                row.add(Numbers.percent(race.winOrHalf(their, my, true)));
            }
            chances.add(column);
            table.add(row);
        }
        return Pictures.scoreMap(
                web.texts().of("odds.scores", opponent.name()),
                web.texts().of("odds.scores.about"),
                new DataTable(heads, table),
                chances,
                web.texts().of("odds.scores.mine"),
                web.texts().of("odds.scores.theirs"));
    }

    private Picture total(Player player, TotalForecast forecast) {
        Standing standing = web.records().standing(player.id(), Drill.TOTAL, TOTAL_ROUNDS, "");
        Integer latest =
                standing.latest().isEmpty() ? null : standing.latest().get(0).total();
        List<List<String>> rows = new ArrayList<>();
        for (int percent : new int[] {5, 25, 50, 75, 95}) {
            rows.add(List.of(
                    web.texts().of("summary.forecast.under", percent),
                    String.valueOf(forecast.quantile(percent / 100.0))));
        }
        return Pictures.histogram(
                web.texts().of("odds.total"),
                web.texts().of("odds.total.about", forecast.quantile(0.05), forecast.quantile(0.95)),
                new DataTable(
                        List.of(
                                web.texts().of("summary.forecast.share"),
                                web.texts().of("summary.table.points")),
                        rows),
                new Pictures.Chances(0, forecast.chances()),
                latest,
                latest == null ? "" : web.texts().of("odds.total.mark", latest));
    }
}
