package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.Contest;
import boardside.app.practice.Exercise;
import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.app.record.Games;
import boardside.app.record.TryStanding;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Tally;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.trial.BlockOrder;
import boardside.engine.trial.Limits;
import boardside.engine.trial.Trial;
import boardside.engine.trial.TrialDesign;
import boardside.engine.trial.TrialState;
import boardside.engine.trial.Unit;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Route;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The pages' own scripts, run where they will run: in the browser. */
class ScriptsTest extends Browser {
    @BeforeEach
    void onOurOwnPage() {
        page.navigate(url("/"));
    }

    /** Cases made from {@code boardside.engine.rules} by ScoringVectors in the engine's tests. */
    @Test
    void scoringAgreesWithTheRules() throws Exception {
        String vectors = Files.readString(Path.of("src", "test", "resources", "scoring-vectors.json"));
        JsonNode cases = Json.MAPPER.readTree(vectors);
        Object faults = page.evaluate("""
                async (text) => {
                  const { finishes, mineNext, play, points, start } = await import('/static/js/scoring.js');
                  const cases = JSON.parse(text);
                  const faults = [];
                  const same = (what, is, should) => {
                    if (JSON.stringify(is) !== JSON.stringify(should)) faults.push(what + ': ' + JSON.stringify(is));
                  };
                  same('finishes', finishes().map((f) => ({ ...f, points: points(f) })), cases.finishes);
                  for (const { meFirst, mineNext: should } of cases.turns) {
                    same('turns', should.map((_, i) => mineNext(meFirst, i)), should);
                  }
                  for (const { meFirst, ghost, rounds, ...rules } of cases.games) {
                    let game = start(rules, meFirst);
                    for (const [mine, theirs, ...should] of rounds) {
                      game = play(game, mine, theirs);
                      same(JSON.stringify(rules) + ' ' + mine + '-' + theirs,
                        [game.mine, game.theirs, game.meFirst, game.result], should);
                    }
                  }
                  return faults;
                }
                """, vectors);
        assertThat(cases.get("games")).hasSizeGreaterThan(50);
        assertThat((List<?>) faults).isEmpty();
    }

    /** The page replays games as the server does: random runs of every drill with a game, under any set-up. */
    @Test
    void standingAgreesWithTheServer() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(4711);
        List<Map<String, Object>> cases = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            Run run = randomRun(random);
            List<Round> rounds = randomRounds(run, random);
            Games.Played played = Games.after(run, rounds);
            cases.add(Map.of("run", run, "rounds", rounds, "should", should(played)));
        }
        Object faults = page.evaluate("""
                async (text) => {
                  const { standingOf } = await import('/static/js/standing.js');
                  const faults = [];
                  for (const { run, rounds, should } of JSON.parse(text)) {
                    const s = standingOf(run.drill, run.setup, run.score ?? null, rounds);
                    const is = [s.game.mine, s.game.theirs, s.game.meFirst, s.known, s.result, s.end, s.beyond];
                    if (JSON.stringify(is) !== JSON.stringify(should)) {
                      faults.push(JSON.stringify({ run, rounds, is, should }));
                    }
                  }
                  return faults;
                }
                """, Json.write(cases));
        assertThat((List<?>) faults).isEmpty();
        assertThat(cases.stream().map(each -> String.valueOf(each.get("should"))))
                .anyMatch(should -> should.contains("won"))
                .anyMatch(should -> should.contains("lost"))
                .anyMatch(should -> should.contains("open"));
    }

    /** The page counts tries as the server does: single shots and chains, alone and in turns, with and without sudden death. */
    @Test
    void tryStandingAgreesWithTheServer() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(815);
        List<Map<String, Object>> cases = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            boolean turns = random.nextBoolean();
            boolean chain = random.nextBoolean();
            Exercise.Step step = new Exercise.Step(Shot.SLIDE, null, Position.EMPTY);
            Integer misses = random.nextBoolean() ? null : (Integer) (1 + random.nextInt(4));
            Setup setup = Setup.plain().with(draft -> {
                draft.stakes = misses == null ? null : new Stakes(false, null, misses, null, false);
                draft.exercise = new Exercise(
                        List.of(), List.of(step), chain, Exercise.Call.MINE, null, null, "", "", turns ? "Kim" : "");
            });
            List<Try> tries = randomTries(random, turns, chain);
            TryStanding standing = TryStanding.after(setup, tries);
            cases.add(Map.of("setup", setup, "tries", tries, "should", should(standing)));
        }
        Object faults = page.evaluate("""
                async (text) => {
                  const { standingOf } = await import('/static/js/trystanding.js');
                  const faults = [];
                  for (const { setup, tries, should } of JSON.parse(text)) {
                    const { sums: { me, versus }, end } = standingOf(setup, tries);
                    const is = [me, versus].map((sum) => `${sum.tries} ${sum.worked} ${sum.last}`).concat(end).join(', ');
                    if (is !== should) faults.push(JSON.stringify({ setup, tries, is, should }));
                  }
                  return faults;
                }
                """, Json.write(cases));
        assertThat((List<?>) faults).isEmpty();
        assertThat(cases).anyMatch(each -> String.valueOf(each.get("should")).endsWith(" 0"));
        assertThat(cases).anyMatch(each -> !String.valueOf(each.get("should")).endsWith(" 0"));
    }

    private static String should(TryStanding standing) {
        return java.util.stream.Stream.of(Side.ME, Side.VERSUS)
                        .map(standing::of)
                        .map(sum -> sum.tries() + " " + sum.worked() + " " + sum.last())
                        .collect(java.util.stream.Collectors.joining(", "))
                + ", " + standing.end();
    }

    private static List<Try> randomTries(UniformRandomProvider random, boolean turns, boolean chain) {
        Try.How how = new Try.How("", null, null, BoardKind.REGULATION, Setting.PRACTICE, null);
        List<Try> tries = new ArrayList<>();
        int number = 0;
        for (int go = 1; go <= 8; go++) {
            Side side = turns && go % 2 == 0 ? Side.VERSUS : Side.ME;
            for (int one = 1; one <= (chain ? 1 + random.nextInt(3) : 1); one++) {
                Try.Link link = chain ? new Try.Link(go, one, 3) : null;
                tries.add(new Try(
                        ++number,
                        "",
                        new Try.Played(
                                side,
                                Shot.SLIDE,
                                null,
                                Position.EMPTY,
                                "",
                                link,
                                random.nextInt(4) == 0,
                                random.nextInt(3) > 0,
                                null,
                                how,
                                "")));
            }
        }
        return tries;
    }

    private static List<Object> should(Games.Played played) {
        return List.of(
                played.game().mine(),
                played.game().theirs(),
                played.game().meFirst(),
                played.known(),
                played.result().name().toLowerCase(java.util.Locale.ROOT),
                played.end(),
                played.beyond());
    }

    private static Run randomRun(UniformRandomProvider random) {
        List<Drill> drills = List.of(Drill.TOTAL, Drill.RACE, Drill.CLIMB, Drill.DUEL, Drill.GAME);
        Drill drill = drills.get(random.nextInt(drills.size()));
        boolean alone = drill == Drill.DUEL && random.nextBoolean();
        FirstThrow first = random.nextBoolean() ? FirstThrow.KEEP : FirstThrow.SWAP;
        Contest contest = drill != Drill.DUEL && drill != Drill.GAME
                ? null
                : new Contest(
                        alone,
                        true,
                        drill == Drill.GAME && random.nextInt(4) == 0,
                        random.nextBoolean(),
                        first,
                        random.nextInt(3) == 0 ? random.nextInt(11) - 5 : 0,
                        null);
        Setup setup = Setup.plain().with(draft -> {
            draft.ghost = drill.needsGhost() ? random.nextInt(10) : null;
            draft.contest = contest;
            draft.target = random.nextBoolean() ? null : (Integer) (11 + random.nextInt(20));
            draft.exact = random.nextInt(3) == 0;
            draft.skunk = random.nextInt(3) == 0 ? (Integer) 9 : null;
            draft.stakes = random.nextInt(3) == 0 ? new Stakes(false, 1 + random.nextInt(3), null, null, false) : null;
        });
        Run.Score score = drill == Drill.GAME && random.nextInt(3) == 0 ? new Run.Score(21, random.nextInt(20)) : null;
        return new Run(
                "r",
                "s",
                drill,
                "2026-05-01T10:00:00Z",
                false,
                "",
                null,
                null,
                "",
                "",
                setup,
                null,
                false,
                Run.Sum.NONE,
                score);
    }

    private static List<Round> randomRounds(Run run, UniformRandomProvider random) {
        Contest contest = run.setup().contest();
        List<Side> sides = contest == null ? List.of(Side.ME) : contest.sides();
        List<Round> rounds = new ArrayList<>();
        int last = random.nextInt(16);
        for (int number = 1; number <= last; number++) {
            for (Side side : sides) {
                if (random.nextInt(12) > 0) {
                    Finish finish =
                            Finish.values().get(random.nextInt(Finish.values().size()));
                    Line line = new Line(
                            "",
                            null,
                            null,
                            BoardKind.REGULATION,
                            Setting.PRACTICE,
                            null,
                            run.setup().ghost(),
                            4,
                            finish.in(),
                            finish.on(),
                            finish.off(),
                            Line.Misses.NONE,
                            "",
                            "");
                    rounds.add(new Round(number, side, "", List.of(line), List.of()));
                }
            }
        }
        return rounds;
    }

    /** An order that is the same on every device, and by chance: each of two bags comes first about half the time. */
    @Test
    void bagsAreCalledInTheSameRandomOrderEverywhere() {
        Object firsts = page.evaluate("""
                async () => {
                  const { shuffled } = await import('/static/js/order.js');
                  const bags = ['a', 'a', 'a', 'a', 'b', 'b', 'b', 'b'];
                  let first = 0;
                  for (let round = 0; round < 1000; round++) {
                    const order = shuffled(bags, `run ${round}`);
                    if (JSON.stringify(order) !== JSON.stringify(shuffled(bags, `run ${round}`))) return -1;
                    if ([...order].sort().join('') !== 'aaaabbbb') return -2;
                    if (order[0] === 'a') first++;
                  }
                  return first;
                }
                """);
        // 1,000 tosses of a fair coin lie within 439 to 561 but once in ten thousand times.
        assertThat(((Number) firsts).intValue()).isBetween(439, 561);
    }

    /**
     * What a phone makes of slides without a network, held to cases made from {@code boardside.engine.physics} by SlideVectors
     * in the engine's tests: each model's answer to nine digits, the whole within what 80 models in place of a fit allow.
     */
    @Test
    void slidesAreMeasuredAsTheEngineDoes() throws Exception {
        String vectors = Files.readString(Path.of("src", "test", "resources", "slide-vectors.json"));
        Object faults = page.evaluate("""
                async (text) => {
                  const { expectedOf, frictionAgainst, lengthsOf, measure, onBoards } = await import('/static/js/boards.js');
                  const faults = [];
                  for (const { conditions, slides, models, days, answer } of JSON.parse(text)) {
                    models.forEach((model, i) => {
                      const { log, deviation } = frictionAgainst(model, lengthsOf(slides), expectedOf(conditions));
                      const is = [log, deviation, onBoards(model, Math.exp(log)).slide];
                      if (is.some((n, k) => Math.abs(n - days[i][k]) > 1e-9)) faults.push(`${is} for ${days[i]}`);
                    });
                    const is = measure(models, slides, conditions, 12);
                    for (const what of ['factor', 'slide']) {
                      const [estimate, low, high] = answer[what];
                      const { estimate: e, low: l, high: h } = is[what];
                      const width = high - low;
                      if (Math.max(Math.abs(e - estimate), Math.abs(l - low), Math.abs(h - high)) > 0.3 * width) {
                        faults.push(`${what} ${JSON.stringify(is[what])} for ${answer[what]}`);
                      }
                    }
                    if (Math.abs(is.slower - answer.slower) > 0.15) faults.push(`slower ${is.slower} for ${answer.slower}`);
                  }
                  return faults;
                }
                """, vectors);
        assertThat((List<?>) faults).isEmpty();
    }

    /** RFC 9562, section 5.7: version 7, variant 10, the first 48 bits the Unix time in milliseconds. */
    @Test
    void idsAreUuidsOfVersionSevenThatSortAsMade() {
        Object made = page.evaluate("""
                async () => {
                  const { uuidv7 } = await import('/static/js/ids.js');
                  const ids = [uuidv7('', 1700000000000)];
                  for (let i = 0; i < 500; i++) ids.push(uuidv7('', 1600000000000));
                  ids.push(uuidv7('019b0000-0000-7fff-bfff-ffffffffffff', 1700000000000));
                  return ids;
                }
                """);
        List<String> ids = ((List<?>) made).stream().map(String.class::cast).toList();
        assertThat(ids).isSorted().doesNotHaveDuplicates();
        assertThat(ids).allSatisfy(id -> {
            assertThat(UUID.fromString(id).version()).isEqualTo(7);
            assertThat(UUID.fromString(id).variant()).isEqualTo(2);
        });
        assertThat(UUID.fromString(ids.get(0)).getMostSignificantBits() >>> 16).isEqualTo(1_700_000_000_000L);
        assertThat(ids.get(ids.size() - 1)).isGreaterThan("019b0000-0000-7fff-bfff-ffffffffffff");
    }

    /** The answer comes while another page, asked for by a tap, is still on its way. */
    @Test
    void aPageThatIsWorkedOutDoesNotCallBackWhoeverLeavesIt() {
        List<Route> asked = new ArrayList<>();
        List<Route> next = new ArrayList<>();
        int[] shown = {0};
        page.route("**/worked-out", route -> {
            if (route.request().isNavigationRequest()) {
                shown[0]++;
                route.fulfill(new Route.FulfillOptions()
                        .setStatus(Web.WORKING)
                        .setContentType("text/html")
                        .setBody("<!DOCTYPE html><title>Wait</title><a href='/safety'>Away</a>"
                                + "<script type='module' src='/static/js/again.js'></script>"));
            } else {
                asked.add(route);
            }
        });
        page.route("**/safety", next::add);
        page.navigate(url("/worked-out"));
        page.waitForCondition(() -> !asked.isEmpty());
        page.locator("a").click(new Locator.ClickOptions().setNoWaitAfter(true));
        page.waitForCondition(() -> !next.isEmpty());
        asked.get(0).fulfill(new Route.FulfillOptions().setStatus(200).setBody("done"));
        page.waitForTimeout(300);
        assertThat(shown[0]).isEqualTo(1);
        next.get(0).resume();
        page.waitForURL("**/safety");
    }

    @Test
    void instantsAreIsoWithOffset() {
        Object now = page.evaluate("async () => (await import('/static/js/ids.js')).isoNow(new Date(1700000000000))");
        assertThat(Moment.of((String) now).millis()).isEqualTo(1_700_000_000_000L);
    }

    /**
     * The page follows a trial as the engine does: random trials of better and worse candidates, some with blocks left
     * unfinished, candidates thrown out of turn and such as never come again.
     */
    @Test
    void trialsAgreeWithTheEngine() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(1949);
        List<Map<String, Object>> cases = new ArrayList<>();
        for (int i = 0; i < 150; i++) {
            int candidates = 2 + random.nextInt(4);
            TrialDesign design = new TrialDesign(candidates, 25, random.nextBoolean() ? 2 : 0.5, random.nextLong());
            List<List<Unit>> runs = randomUnits(design, random);
            List<String> names =
                    IntStream.range(0, candidates).mapToObj(c -> "c" + c).toList();
            TrialState state = Trial.of(design, names, Set.of()).state(runs);
            cases.add(Map.of(
                    "trial",
                    Map.of(
                            "candidates", names,
                            "longest", 25,
                            "margin", design.margin(),
                            "limits", Limits.of(design),
                            "order", TrialBoot.order(design)),
                    "runs",
                    TrialBoot.units(runs),
                    "ending",
                    state.ending().getClass().getSimpleName(),
                    "inPlay",
                    state.inPlay(),
                    "rest",
                    state.rest(),
                    "numbers",
                    List.of(
                            state.blocks(),
                            state.standings().get(0).candidate(),
                            state.standings().get(1).candidate(),
                            state.lead().estimate(),
                            state.lead().low(),
                            state.lead().high(),
                            state.needed()),
                    "next",
                    state.over() ? List.of() : BlockOrder.of(design).of(state.blocks(), state.inPlay())));
        }
        Object faults = page.evaluate("""
                async (text) => {
                  const { stateOf, TrialRun } = await import('/static/js/trial.js');
                  const endings = { 'under-way': 'UnderWay', winner: 'Winner', 'as-good-as-equal': 'AsGoodAsEqual',
                    'not-settled': 'NotSettled' };
                  const faults = [];
                  for (const { trial, runs, ending, inPlay, rest, numbers, next } of JSON.parse(text)) {
                    const s = stateOf(trial, runs);
                    const lead = s.lead ?? { estimate: 0, low: 0, high: 0 };
                    const is = [s.blocks, s.first, s.second, lead.estimate, lead.low, lead.high, s.needed];
                    const close = is.every((n, i) => Math.abs(n - numbers[i]) < 1e-9);
                    const same = JSON.stringify([endings[s.ending], s.inPlay, s.rest])
                      === JSON.stringify([ending, inPlay, rest]);
                    const run = new TrialRun({ ...trial, before: runs.concat([[]]), breakMillis: 1e9 });
                    const first = next.length === 0 || run.next([], 1).candidate === next[0];
                    if (!close || !same || !first) faults.push(JSON.stringify({ runs, is, numbers, s, ending }));
                  }
                  return faults;
                }
                """, Json.write(cases));
        assertThat((List<?>) faults).isEmpty();
        assertThat(cases)
                .extracting(each -> each.get("ending"))
                .contains("UnderWay", "Winner", "AsGoodAsEqual", "NotSettled");
    }

    private static List<List<Unit>> randomUnits(TrialDesign design, UniformRandomProvider random) {
        double[] in = new double[design.candidates()];
        java.util.Arrays.setAll(in, c -> random.nextInt(3) == 0 ? 0.35 : 0.35 + 0.2 * random.nextDouble());
        List<List<Unit>> runs = new ArrayList<>();
        List<String> names =
                IntStream.range(0, design.candidates()).mapToObj(c -> "c" + c).toList();
        int runsThrown = 1 + random.nextInt(8);
        for (int r = 0; r < runsThrown; r++) {
            List<Unit> run = new ArrayList<>();
            runs.add(run);
            int blocks = 1 + random.nextInt(6);
            for (int b = 0; b < blocks; b++) {
                TrialState state = Trial.of(design, names, Set.of()).state(runs);
                List<Integer> order =
                        state.over() ? List.of(0, 1) : BlockOrder.of(design).of(state.blocks(), state.inPlay());
                int stop = random.nextInt(12) == 0 ? random.nextInt(order.size()) : order.size();
                for (int c : order.subList(0, stop)) {
                    int kept = 0;
                    int inside = 0;
                    for (int bag = 0; bag < Unit.BAGS; bag++) {
                        double u = random.nextDouble();
                        inside += u < in[c] ? 1 : 0;
                        kept += u >= in[c] && u < 0.8 ? 1 : 0;
                    }
                    run.add(new Unit(c, new Tally(inside, kept, Unit.BAGS - inside - kept)));
                }
            }
        }
        return runs;
    }
}
