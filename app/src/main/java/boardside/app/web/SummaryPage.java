package boardside.app.web;

import boardside.app.practice.Line;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Stakes;
import boardside.app.record.Games;
import boardside.app.record.RunDetail;
import boardside.app.record.Standing;
import boardside.app.record.TrialDetail;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Side;
import boardside.engine.rules.Tally;
import boardside.engine.skill.Skill;
import boardside.engine.skill.TotalForecast;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** How a run went: its total, what it says of the player, the rounds, and what to do next. */
public final class SummaryPage {
    private static final int MOST_FORECAST_ROUNDS = 100;
    private static final int MOST_STRIP = 100;
    /** Drills whose number of rounds is set beforehand, with one side of mine. */
    private static final Set<Drill> FIXED = EnumSet.of(Drill.TOTAL, Drill.FIXTURE, Drill.VOLUME);

    private final Web web;
    private final PlanPage plans;
    private final LadderView ladders;
    private final TriesSummary tries;
    private final Remembered<Optional<TotalForecast>> remembered;

    SummaryPage(Web web, PlanPage plans) {
        this.web = web;
        this.plans = plans;
        this.ladders = new LadderView(web);
        this.tries = new TriesSummary(web, plans);
        this.remembered = web.remembered();
    }

    /**
     * What the page shows; parts that do not apply are null.
     *
     * @param headline the result
     * @param day when
     * @param about the run in a few words
     * @param said one honest sentence
     * @param standing best and usual
     * @param sides the rounds of each side, and its points a round with their range
     * @param achieved a challenge's outcome and new bests
     * @param more further sentences: what was at stake
     * @param ladder where the climb stands, or null outside it
     * @param forecast how unusual the total was
     * @param waiting whether that is still being worked out
     * @param trial the page of the trial it was thrown for, or null
     * @param match the page of the league match it was thrown for, or null
     * @param again the drill to start again, or null where it is not started from the first page
     */
    public record View(
            String id,
            String headline,
            String day,
            String about,
            String said,
            @Nullable String standing,
            List<SideView> sides,
            List<String> achieved,
            List<String> more,
            LadderView.@Nullable View ladder,
            @Nullable Picture forecast,
            boolean waiting,
            boolean open,
            @Nullable String again,
            @Nullable String match,
            @Nullable String trial) {
        /** The id as a part of an address. */
        public String path() {
            return Numbers.path(id);
        }
    }

    /**
     * One side.
     *
     * @param side its word
     * @param name what it is called, or null where there is only one
     * @param rate points a round with their range, or null
     * @param strip the rounds, or null
     */
    public record SideView(
            String side,
            @Nullable String name,
            @Nullable String rate,
            @Nullable Picture strip) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        RunDetail detail = web.run(player, ctx.pathParam("id"));
        if (TriesPage.DRILLS.contains(detail.run().drill())) {
            tries.show(ctx, player, detail);
            return;
        }
        View view = view(player, detail);
        if (view.waiting()) {
            ctx.status(Web.WORKING);
        }
        web.show(
                ctx,
                "summary",
                web.texts().of("drill." + detail.run().drill().word()),
                plans.with(player, detail.run().id(), view));
    }

    private View view(Player player, RunDetail detail) {
        Run run = detail.run();
        List<Round> mine =
                detail.rounds().stream().filter(round -> round.side().mine()).toList();
        Optional<Optional<TotalForecast>> found = forecast(player, run, mine);
        Optional<TotalForecast> forecast = found.orElse(Optional.empty());
        Optional<TrialDetail> trial = run.trial().isEmpty()
                ? Optional.empty()
                : web.records().trials().find(player.id(), run.trial());
        String said = trial.isPresent()
                ? trial.get().state().sentence()
                : found.isEmpty() ? web.texts().of("working.said") : said(run, mine, forecast);
        boolean offered = HomePage.DRILLS.contains(run.drill());
        return new View(
                run.id(),
                web.describe().result(run, detail.rounds()),
                web.describe().day(detail.session().day()),
                web.describe().run(run, web.bagNames(player.id())),
                said,
                standing(player, run),
                sides(player, run, detail.rounds()),
                achieved(player, run),
                lastBags(run, mine),
                run.drill() == Drill.CLIMB ? ladders.view(player) : null,
                forecast.map(law -> picture(law, total(mine))).orElse(null),
                found.isEmpty(),
                run.open(),
                offered ? run.drill().word() : null,
                run.drill() != Drill.FIXTURE
                        ? null
                        : web.records()
                                .leagues()
                                .ofRun(player.id(), run.id())
                                .map(of -> FixturePage.path(of.fixture()))
                                .orElse(null),
                trial.map(of -> TrialPage.path(of.plan())).orElse(null));
    }

    private List<SideView> sides(Player player, Run run, List<Round> rounds) {
        Map<Side, List<Round>> bySide =
                rounds.stream().collect(Collectors.groupingBy(Round::side, TreeMap::new, Collectors.toList()));
        boolean several = bySide.size() > 1 && Games.played(run.drill());
        if (!several) {
            bySide.remove(Side.VERSUS);
        }
        Map<String, String> bags = web.bagNames(player.id());
        List<SideView> sides = new ArrayList<>();
        bySide.forEach((side, own) -> {
            Tally tally = known(own);
            String rate = tally.thrown() == 0
                    ? null
                    : web.texts()
                            .of(
                                    side == Side.ME || side == Side.VERSUS && !several
                                            ? "summary.rate"
                                            : "summary.rate.side",
                                    Numbers.one(tally.pointsPerRound()),
                                    Numbers.one(Skill.pointsPerRound(tally).low()),
                                    Numbers.one(Skill.pointsPerRound(tally).high()));
            sides.add(new SideView(side.word(), several ? name(side, run, own, bags) : null, rate, strip(own)));
        });
        return sides;
    }

    /** A side by who it is and what was thrown last. */
    private String name(Side side, Run run, List<Round> rounds, Map<String, String> bags) {
        String who = side == Side.VERSUS && !run.opponent().isEmpty()
                ? run.opponent()
                : web.texts().of("side." + side.word());
        List<String> parts = new ArrayList<>(List.of(who));
        if (side.mine()) {
            Line line = rounds.get(rounds.size() - 1).lines().get(0);
            parts.add(bags.getOrDefault(line.bag(), ""));
            parts.add(
                    line.face() == null
                            ? ""
                            : web.texts().of("face." + line.face().word()));
            parts.add(
                    line.approach() == null
                            ? ""
                            : web.texts().of("approach." + line.approach().word()));
        }
        parts.removeIf(String::isEmpty);
        return String.join(", ", parts);
    }

    /** How often the last bag went in, where it had to. */
    private List<String> lastBags(Run run, List<Round> rounds) {
        Stakes stakes = run.setup().stakes();
        List<Round.Thrown> last = rounds.stream()
                .filter(round -> !round.thrown().isEmpty())
                .map(round -> round.thrown().get(round.thrown().size() - 1))
                .toList();
        if (stakes == null || !stakes.lastBag() || last.isEmpty()) {
            return List.of();
        }
        long in = last.stream().filter(thrown -> thrown.outcome() == Outcome.IN).count();
        return List.of(web.texts().of("summary.last-bag", in, last.size()));
    }

    private static Tally known(List<Round> rounds) {
        Tally sum = Tally.NONE;
        for (Round round : rounds) {
            for (var line : round.lines()) {
                Integer in = line.in();
                Integer on = line.on();
                Integer off = line.off();
                if (in != null && on != null && off != null) {
                    sum = sum.plus(new Tally(in, on, off));
                }
            }
        }
        return sum;
    }

    /** Whether a low round ends the run, so that its length hangs on how it goes. */
    private static boolean suddenDeath(Run run) {
        Stakes stakes = run.setup().stakes();
        return stakes != null && stakes.suddenDeath() != null;
    }

    private static int total(List<Round> rounds) {
        return rounds.stream()
                .mapToInt(round -> Objects.requireNonNullElse(round.points(), 0))
                .sum();
    }

    /** What became of the challenge it was thrown for, and its new bests. */
    private List<String> achieved(Player player, Run run) {
        List<String> achieved = new ArrayList<>();
        web.records()
                .challenges()
                .of(player.id(), run.id())
                .map(told -> ChallengePage.outcome(web.texts(), told))
                .ifPresent(achieved::add);
        web.records()
                .deeds()
                .newBests(player.id(), run.id())
                .forEach(best -> achieved.add(web.texts()
                        .of(
                                "bests.new",
                                BestsPage.name(web.texts(), best.kind()),
                                BestsPage.value(web.texts(), best))));
        return achieved;
    }

    private @Nullable String standing(Player player, Run run) {
        if (run.drill() != Drill.TOTAL && run.drill() != Drill.FIXTURE || suddenDeath(run)) {
            return null;
        }
        Standing standing =
                web.records().standing(player.id(), run.drill(), run.sum().rounds(), run.id());
        Standing.Result best = standing.best();
        Double usual = standing.usual();
        return best == null || usual == null
                ? null
                : web.texts()
                        .of(
                                "summary.standing",
                                run.sum().rounds(),
                                best.total(),
                                web.describe().day(best.day()),
                                Numbers.half(usual));
    }

    /**
     * What the other records made likely for as many rounds; only where every round is a full one, all counted, and their
     * number does not hang on how they go, as in a game. Nothing at all while it is being worked out.
     */
    private Optional<Optional<TotalForecast>> forecast(Player player, Run run, List<Round> rounds) {
        boolean full = !rounds.isEmpty()
                && rounds.size() <= MOST_FORECAST_ROUNDS
                && rounds.stream().allMatch(round -> round.bags() == Finish.BAGS && round.points() != null);
        if (!full || run.warmUp() || !FIXED.contains(run.drill()) || suddenDeath(run)) {
            return Optional.of(Optional.empty());
        }
        LocalDate day = LocalDate.parse(run.startedAt().substring(0, 10));
        // Whether the latest runs are in it yet matters little: this one is taken out anyway.
        return remembered
                .soon(
                        player,
                        day,
                        run.id() + " " + rounds.size(),
                        () -> web.skills()
                                .skill(player.id(), day)
                                .without(run.id())
                                .total(rounds.size()))
                .map(Remembered.Found::value);
    }

    private String said(Run run, List<Round> rounds, Optional<TotalForecast> forecast) {
        Texts texts = web.texts();
        if (rounds.isEmpty()) {
            return texts.of("summary.said.nothing");
        }
        if (run.warmUp()) {
            return texts.of("summary.said.warm-up");
        }
        if (!run.drill().counted()) {
            return texts.of("summary.said.not-counted");
        }
        if (suddenDeath(run)) {
            return texts.of("summary.said.sudden");
        }
        if (!FIXED.contains(run.drill())) {
            return texts.of("summary.said.game");
        }
        if (forecast.isEmpty()) {
            return texts.of(known(rounds).thrown() == 0 ? "summary.said.only-in" : "summary.said.first");
        }
        TotalForecast found = forecast.get();
        int total = total(rounds);
        double above = (found.atLeast(total) + found.atLeast(total + 1)) / 2;
        String low = String.valueOf(found.quantile(0.05));
        String high = String.valueOf(found.quantile(0.95));
        if (above < 0.1) {
            return texts.of("summary.said.high", total, oneIn(above), low, high);
        }
        if (above > 0.9) {
            return texts.of("summary.said.low", total, oneIn(1 - above), low, high);
        }
        return texts.of("summary.said.usual", total, rounds.size(), low, high);
    }

    /** "12" for a chance of one in twelve, in steps that the forecast can bear. */
    private static String oneIn(double chance) {
        double times = 1 / Math.max(chance, 0.001);
        return String.valueOf(times >= 1000 ? 1000 : times >= 100 ? 100 * Math.round(times / 100) : Math.round(times));
    }

    private @Nullable Picture strip(List<Round> rounds) {
        boolean stacks = rounds.stream().allMatch(round -> round.bags() <= Finish.BAGS);
        if (rounds.isEmpty() || !stacks || rounds.size() > MOST_STRIP) {
            return null;
        }
        List<Pictures.@Nullable Bags> bags = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (Round round : rounds) {
            Tally tally = known(List.of(round));
            boolean counted = round.points() != null;
            bags.add(counted ? new Pictures.Bags(tally.in(), tally.on(), tally.off()) : null);
            rows.add(List.of(
                    String.valueOf(round.number()),
                    counted ? String.valueOf(tally.in()) : "",
                    counted ? String.valueOf(tally.on()) : "",
                    counted ? String.valueOf(tally.off()) : "",
                    counted ? String.valueOf(tally.points()) : ""));
        }
        Texts texts = web.texts();
        Tally all = known(rounds);
        return Pictures.strip(
                texts.of("summary.strip"),
                texts.of("summary.strip.about", rounds.size(), all.in(), all.on(), all.off()),
                new DataTable(
                        List.of(
                                texts.of("summary.table.round"),
                                texts.of("outcome.in"),
                                texts.of("outcome.on"),
                                texts.of("outcome.off"),
                                texts.of("summary.table.points")),
                        rows),
                bags);
    }

    private Picture picture(TotalForecast forecast, int total) {
        Texts texts = web.texts();
        List<List<String>> rows = IntStream.of(5, 25, 50, 75, 95)
                .mapToObj(percent -> List.of(
                        texts.of("summary.forecast.under", percent),
                        String.valueOf(forecast.quantile(percent / 100.0))))
                .toList();
        return Pictures.histogram(
                texts.of("summary.forecast"),
                texts.of(
                        "summary.forecast.about",
                        forecast.rounds(),
                        forecast.quantile(0.05),
                        forecast.quantile(0.95),
                        total),
                new DataTable(List.of(texts.of("summary.forecast.share"), texts.of("summary.table.points")), rows),
                new Pictures.Chances(0, forecast.chances()),
                total,
                texts.of("summary.forecast.mark", total));
    }
}
