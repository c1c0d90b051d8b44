package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.json.Json;
import boardside.app.record.Records;
import boardside.app.record.Skills;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Climb;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.odds.Level;
import boardside.engine.odds.Match;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Worth;
import boardside.engine.rules.Finish;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import boardside.engine.skill.TotalForecast;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Odds whose chances come out of the records, held against the engine asked directly. */
class OddsFromRecordsTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
    private static final String[] GOOD = {"2-1-1", "3-1-0", "2-2-0", "1-2-1", "2-0-2", "3-0-1", "2-1-1", "1-3-0"};
    private static final String[] POOR = {"0-2-2", "1-1-2", "0-1-3", "1-2-1"};

    @TempDir
    static Path folder;

    private static String store = "";

    /** Questions only read, so one store does for all. */
    @BeforeAll
    static void twoPlayers() {
        store = folder.resolve("store.db").toString();
        record("Alex", "2026-04-20", POOR);
        record("Alex", "2026-05-24", GOOD);
        record("Alex", "2026-05-30", GOOD);
        record("Robin", "2026-05-30", POOR);
    }

    private static void record(String player, String day, String... rounds) {
        List<String> args = new ArrayList<>(List.of(
                "--quiet", "--data", store, "--player", player, "record", "total", "--started-at", day + "T18:00:00Z"));
        args.addAll(List.of(rounds));
        assertThat(Ran.of(args.toArray(String[]::new)).status()).isZero();
    }

    private static Ran ran(String command) {
        return Ran.of(Stream.concat(Stream.of("--data", store), Arrays.stream(command.split(" ")))
                .toArray(String[]::new));
    }

    private static JsonNode json(String command) {
        Ran ran = ran("--json --player Alex odds " + command);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        return Json.read(ran.out(), JsonNode.class);
    }

    private static Skill skill(String player, LocalDate asOf) {
        try (Records records = Records.open(store)) {
            return Skills.of(records, records.player(player).orElseThrow().id(), asOf);
        }
    }

    private static ChanceRange alex() {
        return skill("Alex", TODAY).chances().orElseThrow();
    }

    private static RoundDistribution robin() {
        return RoundDistribution.of(
                skill("Robin", TODAY).chances().orElseThrow().likely());
    }

    private static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    private static void assertRange(JsonNode range, Interval expected) {
        assertThat(keys(range)).containsExactly("estimate", "low", "high");
        assertThat(range.get("estimate").asDouble()).isCloseTo(expected.estimate(), within(1e-12));
        assertThat(range.get("low").asDouble()).isCloseTo(expected.low(), within(1e-12));
        assertThat(range.get("high").asDouble()).isCloseTo(expected.high(), within(1e-12));
        assertThat(expected.high() - expected.low()).isPositive();
    }

    private static double win(BagChances bag, RoundDistribution other, int mine, int theirs) {
        return Race.solve(GameRules.STANDARD, RoundDistribution.of(bag), other).winOrHalf(mine, theirs, true);
    }

    @Test
    void raceHasItsContractAndTheRangeOfEachFigure() {
        JsonNode race = json("race --ghost 7 --from 9-14");
        assertThat(keys(race))
                .containsExactly("winProbability", "expectedRounds", "pointsPerRound", "level", "chances", "range");
        ChanceRange mine = alex();
        Interval win = mine.of(bag -> win(bag, RoundDistribution.ghost(7), 9, 14));
        assertThat(race.get("winProbability").asDouble()).isEqualTo(win.estimate());
        assertThat(race.get("chances").get("in").asDouble())
                .isEqualTo(mine.likely().in());
        assertThat(race.get("chances").get("on").asDouble())
                .isEqualTo(mine.likely().on());
        assertThat(race.get("chances").get("from").asText()).isEqualTo("records");
        JsonNode range = race.get("range");
        assertThat(keys(range)).containsExactly("winProbability", "expectedRounds", "pointsPerRound", "level");
        assertRange(range.get("winProbability"), win);
        assertRange(range.get("pointsPerRound"), mine.of(BagChances::pointsPerRound));
        Interval level = mine.of(
                bag -> Level.of(GameRules.STANDARD, RoundDistribution.of(bag)).value());
        assertRange(range.get("level"), level);
        assertThat(race.get("level").asDouble()).isEqualTo(level.estimate());
        assertThat(range.get("expectedRounds").get("estimate").asDouble())
                .isEqualTo(race.get("expectedRounds").asDouble());
        // The same chances given by hand give the same answer.
        JsonNode given = json("race --ghost 7 --from 9-14 --in " + mine.likely().in() + " --on "
                + mine.likely().on());
        assertThat(given.get("expectedRounds")).isEqualTo(race.get("expectedRounds"));
        assertThat(keys(given)).doesNotContain("range", "chances");
    }

    @Test
    void raceIsSaidWithItsRange() {
        Interval win = alex().of(bag -> win(bag, RoundDistribution.ghost(7), 0, 0));
        String said = Math.round(100 * win.estimate()) + " % (" + Math.round(100 * win.low()) + "-"
                + Math.round(100 * win.high()) + ")";
        assertThat(ran("--player Alex odds race --ghost 7").out())
                .startsWith("Against ghost 7 you win " + said + " of races.\nYou make ");
        assertThat(ran("--player Alex odds race --ghost 7 --from 9-14").out())
                .startsWith("Against ghost 7, from 9-14, you win ");
    }

    @Test
    void anotherPlayerAndAPastMonthAreOpponents() {
        assertRange(
                json("race --versus-player Robin").get("range").get("winProbability"),
                alex().of(bag -> win(bag, robin(), 0, 0)));
        // By hand: April holds one round each of the four poor finishes.
        double[] april = new double[Finish.values().size()];
        for (Finish finish :
                List.of(new Finish(0, 2, 2), new Finish(1, 1, 2), new Finish(0, 1, 3), new Finish(1, 2, 1))) {
            april[finish.index()] = 1;
        }
        RoundDistribution past = RoundDistribution.ofFinishes(april);
        assertThat(skill("Alex", TODAY).rounds(YearMonth.of(2026, 4))).contains(past);
        assertRange(
                json("race --versus-month 2026-04").get("range").get("winProbability"),
                alex().of(bag -> win(bag, past, 0, 0)));
        assertThat(ran("--player Alex odds race --versus-month 2026-04").out())
                .startsWith("Against yourself in 2026-04 you win ");
        // Given chances go with opponents from the records.
        assertThat(json("race --in 0.5 --on 0.3 --versus-player Robin")
                        .get("winProbability")
                        .asDouble())
                .isEqualTo(win(new BagChances(0.5, 0.3), robin(), 0, 0));
        // The other way round.
        assertThat(ran("--player Robin odds race --versus-player Alex").out()).startsWith("Against Alex you win ");
    }

    @Test
    void aDayIncludesItselfAndNothingLater() {
        ChanceRange then = skill("Alex", LocalDate.of(2026, 5, 23)).chances().orElseThrow();
        assertRange(
                json("race --ghost 3 --as-of 2026-05-23").get("range").get("pointsPerRound"),
                then.of(BagChances::pointsPerRound));
        assertThat(then.likely()).isNotEqualTo(alex().likely());
    }

    @Test
    void totalIsTheForecastWithGoodAndBadDays() {
        JsonNode total = json("total --rounds 5 --at-least 30");
        assertThat(keys(total))
                .containsExactly("mean", "standardDeviation", "quantiles", "atLeast", "chances", "range");
        TotalForecast forecast = skill("Alex", TODAY).total(5).orElseThrow();
        assertThat(total.get("mean").asDouble()).isEqualTo(forecast.mean());
        assertThat(total.get("standardDeviation").asDouble()).isEqualTo(forecast.standardDeviation());
        assertThat(total.get("quantiles").get("0.05").asInt()).isEqualTo(forecast.quantile(0.05));
        assertThat(total.get("quantiles").get("0.95").asInt()).isEqualTo(forecast.quantile(0.95));
        assertThat(total.get("atLeast").get("probability").asDouble()).isEqualTo(forecast.atLeast(30));
        Interval points = alex().of(bag -> 5 * bag.pointsPerRound());
        assertRange(total.get("range").get("mean"), new Interval(forecast.mean(), points.low(), points.high()));
        assertThat(total.get("range")
                        .get("atLeast")
                        .get("probability")
                        .get("estimate")
                        .asDouble())
                .isEqualTo(forecast.atLeast(30));
        // Wider than luck alone.
        ChanceRange mine = alex();
        JsonNode luck = json("total --rounds 5 --in " + mine.likely().in() + " --on "
                + mine.likely().on());
        assertThat(total.get("standardDeviation").asDouble())
                .isGreaterThan(luck.get("standardDeviation").asDouble());
        assertThat(ran("--player Alex odds total --rounds 5 --at-least 30").out())
                .startsWith("5 rounds give ")
                .contains("good and bad days included.\n30 or more comes up in ");
    }

    @Test
    void climbHasARangeForEachRung() {
        JsonNode climb = json("climb --lowest 4 --highest 9");
        assertThat(keys(climb)).containsExactly("level", "stationary", "mean", "mode", "chances", "range");
        JsonNode range = climb.get("range");
        assertThat(keys(range)).containsExactly("level", "stationary", "mean", "mode");
        assertRange(
                range.get("mean"),
                alex().of(bag -> Climb.of(GameRules.STANDARD, RoundDistribution.of(bag), 4, 9)
                        .mean()));
        assertThat(range.get("stationary")).hasSize(6);
        for (int rung = 0; rung < 6; rung++) {
            double share = climb.get("stationary").get(rung).asDouble();
            JsonNode around = range.get("stationary").get(rung);
            assertThat(around.get("estimate").asDouble()).isEqualTo(share);
            assertThat(around.get("low").asDouble()).isLessThanOrEqualTo(share);
            assertThat(around.get("high").asDouble())
                    .isGreaterThan(around.get("low").asDouble());
        }
        assertThat(ran("--player Alex odds climb").out())
                .startsWith("You would be even with a ghost of ")
                .contains("the first loss comes after ");
    }

    @Test
    void matchHasARangeForEachChance() {
        JsonNode match = json("match --versus-player Robin --games 2");
        assertThat(keys(match)).containsExactly("game", "expectedPoints", "points", "chances", "range");
        JsonNode range = match.get("range");
        assertThat(keys(range)).containsExactly("game", "expectedPoints", "points");
        assertThat(keys(range.get("game"))).containsExactly("win", "tie", "loss");
        assertThat(keys(range.get("points"))).isEqualTo(keys(match.get("points")));
        assertRange(
                range.get("expectedPoints"),
                alex().of(bag -> Match.of(RoundDistribution.of(bag), robin(), 10, 2, LeaguePoints.STANDARD)
                        .expectedPoints()));
        // More points and fewer losses: the chance to lose is least where that to win is greatest.
        assertRange(
                range.get("game").get("loss"),
                alex().of(bag -> Match.of(RoundDistribution.of(bag), robin(), 10, 2, LeaguePoints.STANDARD)
                        .loss()));
        assertThat(ran("--player Alex odds match --versus-player Robin").out()).startsWith("Against Robin you win ");
    }

    @Test
    void headStartCountsTheOtherSidesPointsAsLessThanNothing() {
        JsonNode start = json("head-start --versus-player Robin");
        assertThat(keys(start)).containsExactly("headStart", "to", "winProbability", "chances", "range");
        assertThat(start.get("to").asText()).isEqualTo("versus");
        HeadStart likely = HeadStart.of(Race.solve(GameRules.STANDARD, RoundDistribution.of(alex().likely()), robin()));
        assertThat(start.get("headStart").asInt()).isEqualTo(likely.points()).isPositive();
        JsonNode range = start.get("range");
        assertRange(range.get("winProbability"), alex().of(bag -> win(bag, robin(), 0, likely.points())));
        assertThat(range.get("headStart").get("low").asDouble())
                .isLessThan(range.get("headStart").get("high").asDouble());
        assertThat(ran("--player Alex odds head-start --versus-player Robin").out())
                .matches(
                        "Against Robin, \\d+ points for Robin from the start come nearest to even \\(\\d+-\\d+\\): you win"
                                + " \\d+ % \\(\\d+-\\d+\\) of races\\.\n");
        // Even with one's own level, give or take: from points for the one to points for the other.
        int level = (int) Math.round(json("climb").get("level").asDouble());
        JsonNode even = json("head-start --ghost " + level).get("range").get("headStart");
        assertThat(even.get("low").asDouble()).isNegative();
        assertThat(even.get("high").asDouble()).isPositive();
        assertThat(ran("--player Alex odds head-start --ghost " + level).out())
                .contains(" for you")
                .contains(" for ghost " + level);
    }

    @Test
    void worthHasARangeForEachGain() {
        JsonNode worth = json("worth --ghost 7");
        assertThat(keys(worth)).containsExactly("winProbability", "offToOn", "onToIn", "offToIn", "chances", "range");
        Worth likely = Worth.of(alex().likely(), bag -> win(bag, RoundDistribution.ghost(7), 0, 0));
        assertThat(worth.get("onToIn").asDouble()).isEqualTo(likely.onToIn().orElseThrow());
        JsonNode range = worth.get("range");
        assertRange(range.get("winProbability"), alex().of(bag -> win(bag, RoundDistribution.ghost(7), 0, 0)));
        for (String move : List.of("offToOn", "onToIn", "offToIn")) {
            assertThat(range.get(move).get("estimate").asDouble())
                    .isEqualTo(worth.get(move).asDouble());
            assertThat(range.get(move).get("low").asDouble()).isPositive();
        }
        // At the ends of the range of points the gains are within it.
        for (BagChances bag : List.of(alex().low(), alex().high())) {
            double gain = Worth.of(bag, each -> win(each, RoundDistribution.ghost(7), 0, 0))
                    .onToIn()
                    .orElseThrow();
            assertThat(gain)
                    .isBetween(
                            range.get("onToIn").get("low").asDouble(),
                            range.get("onToIn").get("high").asDouble());
        }
        assertThat(ran("--player Alex odds worth --ghost 7").out())
                .startsWith("Against ghost 7 you win ")
                .contains(" of races.\nWhen one bag in a hundred moves");
        assertThat(ran("--player Alex odds worth --of total --at-least 60").out())
                .startsWith("You reach 60 points or more in ");
        assertThat(ran("--player Alex odds worth --of match --versus-player Robin")
                        .out())
                .startsWith("Against Robin you come out ahead in ");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "odds race --ghost 7 | 2 | the store holds several players; add --player with one of Alex, Robin",
                "--player Kim odds climb | 2 | there is no player \"Kim\"; the store holds Alex, Robin",
                "--player Alex odds total --as-of 2026-04-19 | 1 | There are no counted rounds of Alex up to 2026-04-19 to"
                        + " take chances from; record some, or say --in and --on.",
                "--player Alex odds race --versus-player Kim | 2 | there is no player \"Kim\"; the store holds Alex, Robin",
                "--player Alex odds race --versus-player Alex | 2 | --versus-player: Alex is whose odds these are; name"
                        + " another player, or ask for your own past with --versus-month",
                "--player Alex odds race --versus-player Robin --as-of 2026-05-29 | 1 | Robin has no counted rounds yet, so"
                        + " there is nothing to set against.",
                "--player Alex odds match --versus-month 2026-03 | 1 | There are no full rounds of Alex in March 2026.",
                "--player Alex odds match --versus-month 2026-13 | 2 | --versus-month: \"2026-13\" is no month; write it"
                        + " like 2026-05",
                "--player Alex odds race --ghost 7 --versus-month 2026-04 | 2 | --ghost and --versus-month are two"
                        + " opponents; leave one of them out",
                "--player Alex odds race --versus-player Robin --versus-month 2026-04 | 2 | --versus-player and"
                        + " --versus-month are two opponents; leave one of them out",
                "odds race --in 0.5 --on 0.3 --ghost 7 --as-of 2026-05-01 | 2 | --as-of is the last day of the records that"
                        + " count, and --in and --on ask no records; leave out one or the other",
                "--player Alex odds total --rounds -1 | 2 | --rounds: a total takes 1 to 1000 rounds, not -1",
                "--player Alex odds worth --of total --at-least 9 --versus-player Robin | 2 | an opponent, --games and the"
                        + " variants of a race do not go with --of total; leave them out",
            })
    void refusesWhatCannotBeAnswered(String command, int status, String fault) {
        assertThat(ran(command)).isEqualTo(new Ran(status, "", fault + "\n"));
    }

    @Test
    void anEmptyStoreHasNoChances() {
        Ran ran = Ran.of("--data", folder.resolve("other.db").toString(), "odds", "race", "--ghost", "7");
        assertThat(ran.status()).isEqualTo(1);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).startsWith("There are no counted rounds of ").contains("say --in and --on");
    }

    @Test
    void oneChanceAloneIsWrongUsage() {
        for (String one : new String[] {"--in", "--on"}) {
            Ran ran = ran("--player Alex odds climb " + one + " 0.3");
            assertThat(ran.status()).isEqualTo(2);
            assertThat(ran.err()).contains(one.equals("--in") ? "--on" : "--in").contains("--help");
        }
    }
}
