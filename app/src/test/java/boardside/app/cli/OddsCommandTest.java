package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.json.Json;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OddsCommandTest {
    private static JsonNode json(String command) {
        Ran ran = Ran.of(("odds --json " + command).split(" "));
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        return Json.read(ran.out(), JsonNode.class);
    }

    private static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    /** By hand: four on a round beat ghost 3 by one point a round, and are even with ghost 4. */
    @Test
    void raceOfCertainBags() {
        JsonNode race = json("race --in 0 --on 1 --ghost 3");
        assertThat(race)
                .hasToString("{\"winProbability\":1.0,\"expectedRounds\":21.0,\"pointsPerRound\":4.0,\"level\":4.0}");
        assertThat(json("race --in 0 --on 1 --ghost 3 --from 20-0")
                        .get("expectedRounds")
                        .asDouble())
                .isEqualTo(1);
        assertThat(json("race --in 0 --on 1 --ghost 3 --target 11")
                        .get("expectedRounds")
                        .asDouble())
                .isEqualTo(11);
        // From 20, three points a round never hit 21 and fall back to 15: 15, 18, 21.
        assertThat(json("race --in 0 --on 1 --ghost 1 --exact --from 20-0")
                        .get("expectedRounds")
                        .asDouble())
                .isEqualTo(3);
        assertThat(json("race --in 0 --on 1 --ghost 1 --exact --fall-back 18 --from 20-0")
                        .get("expectedRounds")
                        .asDouble())
                .isEqualTo(2);
        assertThat(json("race --in 0 --on 1 --ghost 3 --skunk 13")
                        .get("expectedRounds")
                        .asDouble())
                .isEqualTo(13);
    }

    @Test
    void raceIsTheEnginesUnrounded() {
        Race race = Race.solve(
                GameRules.STANDARD,
                RoundDistribution.of(new BagChances(0.5, 0.3)),
                RoundDistribution.of(new BagChances(0.4, 0.4)));
        assertThat(json("race --in 0.5 --on 0.3 --versus-in 0.4 --versus-on 0.4 --from 9-14")
                        .get("winProbability")
                        .asDouble())
                .isEqualTo(race.winOrHalf(9, 14, true));
        assertThat(Ran.of("odds", "race", "--in", "0.5", "--on", "0.3", "--ghost", "7")
                        .out())
                .isEqualTo("If these chances hold, you win this race with a chance of 64.4 %; it takes 17.3 more rounds"
                        + " on average.\nYou make 7.2 points a round; you would be even with a ghost of 7.3.\n");
    }

    /** Three times a binomial of 40 bags, against a reference library. */
    @Test
    void totalIsABinomialWithoutBagsOn() {
        JsonNode total = json("total --in 0.5 --on 0 --at-least 66");
        BinomialDistribution bags = BinomialDistribution.of(40, 0.5);
        assertThat(keys(total)).containsExactly("mean", "standardDeviation", "quantiles", "atLeast");
        assertThat(total.get("mean").asDouble()).isCloseTo(60, within(1e-12));
        assertThat(total.get("standardDeviation").asDouble()).isCloseTo(3 * Math.sqrt(10), within(1e-12));
        assertThat(keys(total.get("quantiles"))).containsExactly("0.05", "0.25", "0.5", "0.75", "0.95");
        for (String q : keys(total.get("quantiles"))) {
            assertThat(total.get("quantiles").get(q).asInt())
                    .isEqualTo(3 * bags.inverseCumulativeProbability(Double.parseDouble(q)));
        }
        assertThat(total.get("atLeast").get("points").asInt()).isEqualTo(66);
        assertThat(total.get("atLeast").get("probability").asDouble())
                .isCloseTo(bags.survivalProbability(21), within(1e-12));
        assertThat(keys(json("total --in 0.5 --on 0 --rounds 3"))).doesNotContain("atLeast");
    }

    @Test
    void climbOfCertainBags() {
        assertThat(json("climb --in 0 --on 1 --lowest 3 --highest 6"))
                .hasToString("{\"level\":4.0,\"stationary\":[0.25,0.5,0.25,0.0],\"mean\":4.0,\"mode\":4}");
        assertThat(Ran.of("odds", "climb", "--in", "0.5", "--on", "0.3").out())
                .isEqualTo(
                        "If these chances hold, you would be even with a ghost of 7.3; the climb settles around ghost"
                                + " 7.2 and meets ghost 7 most often.\nFrom ghost 0 the first loss comes after 8.7 games on"
                                + " average.\nThe mean ghost of the next 2 games lies within one of your level nine times in"
                                + " ten.\n");
    }

    /** By hand: one bag in wins over none, round by round. */
    @Test
    void matchOfCertainBags() {
        JsonNode match = json("match --in 1 --on 0 --versus-in 0 --versus-on 1");
        assertThat(match.get("game")).hasToString("{\"win\":1.0,\"tie\":0.0,\"loss\":0.0}");
        assertThat(match.get("expectedPoints").asDouble()).isEqualTo(6);
        assertThat(keys(match.get("points"))).containsExactly("0", "1", "2", "3", "4", "5", "6");
        assertThat(match.get("points").get("6").asDouble()).isEqualTo(1);
        JsonNode other = json("match --in 0 --on 1 --versus-in 0 --versus-on 1 --games 2 --rounds 1 --win 3");
        assertThat(other.get("expectedPoints").asDouble()).isEqualTo(2);
        assertThat(keys(other.get("points"))).containsExactly("0", "1", "2", "3", "4", "6");
    }

    @Test
    void headStartGoesToTheWeaker() {
        JsonNode mine = json("head-start --in 0.3 --on 0.4 --versus-in 0.4 --versus-on 0.4");
        assertThat(keys(mine)).containsExactly("headStart", "to", "winProbability");
        assertThat(mine.get("to").asText()).isEqualTo("me");
        JsonNode theirs = json("head-start --in 0.4 --on 0.4 --versus-in 0.3 --versus-on 0.4");
        assertThat(theirs.get("to").asText()).isEqualTo("versus");
        assertThat(theirs.get("headStart").asInt())
                .isEqualTo(mine.get("headStart").asInt())
                .isPositive();
        JsonNode even = json("head-start --in 0.3 --on 0.4 --versus-in 0.3 --versus-on 0.4");
        assertThat(even.get("headStart").asInt()).isZero();
        assertThat(even.get("to").asText()).isEqualTo("me");
    }

    @Test
    void worthIsTheDifferenceOfTwoRacesAndNullWhereNothingCanMove() {
        JsonNode worth = json("worth --in 0.5 --on 0.5 --ghost 8");
        assertThat(keys(worth)).containsExactly("winProbability", "offToOn", "onToIn", "offToIn");
        assertThat(worth.get("offToOn").isNull()).isTrue();
        assertThat(worth.get("offToIn").isNull()).isTrue();
        double moved =
                json("race --in 0.51 --on 0.49 --ghost 8").get("winProbability").asDouble();
        assertThat(worth.get("onToIn").asDouble())
                .isCloseTo(moved - worth.get("winProbability").asDouble(), within(1e-13));
        // Closed form: a round of 12 takes four in.
        assertThat(json("worth --in 0.5 --on 0.3 --of total --rounds 1 --at-least 12")
                        .get("offToIn")
                        .asDouble())
                .isCloseTo(Math.pow(0.51, 4) - Math.pow(0.5, 4), within(1e-15));
        // Equal sides are ahead half the time.
        assertThat(json("worth --in 0.5 --on 0.3 --versus-in 0.5 --versus-on 0.3 --of match")
                        .get("winProbability")
                        .asDouble())
                .isCloseTo(0.5, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "race --in 0 --on 1 --ghost 4 | this race may never end: both sides can come to make the same points every"
                        + " round, so that nobody ever scores again; ask with other chances, another opponent or other"
                        + " rules",
                "race --in 1 --on 0 --ghost 4 --exact | this race may never end: an exact 21 may never be hit with the"
                        + " points that can be made; ask with other chances, another opponent or other rules",
                "race --in 1.2 --on 0 --ghost 4 | --in, --on: the chance of in is 0 to 1, not 1.2; write 1.2 % as 0.012",
                "race --in 0.6 --on 0.5 --ghost 4 | --in, --on: the chances of in and on add up to 1.1; a bag ends only"
                        + " once, so they are at most 1 together",
                "race --in NaN --on 0.5 --ghost 4 | --in, --on: the chance of in is 0 to 1, not NaN",
                "race --in 0.5 --on 0.3 | say against whom: add --ghost N, --versus-in P and --versus-on P,"
                        + " --versus-player NAME, or --versus-month YYYY-MM",
                "race --in 0.5 --on 0.3 --versus-in 0.3 | an opponent takes both --versus-in and --versus-on; add the"
                        + " other",
                "race --in 0.5 --on 0.3 --versus-in 0.3 --ghost 4 | --ghost and --versus-in, --versus-on are two"
                        + " opponents; leave one of them out",
                "race --in 0.5 --on 0.3 --ghost 13 | --ghost: a ghost scores 0 to 12 points a round, not 13",
                "race --in 0.5 --on 0.3 --ghost 7 --from 21-3 | --from: a race to 21 is open at scores from 0 to 20, not"
                        + " at 21-3",
                "race --in 0.5 --on 0.3 --ghost 7 --from 3:2 | --from: write the score as mine-theirs, such as 14-9, not"
                        + " \"3:2\"",
                "race --in 0.5 --on 0.3 --ghost 7 --target 0 | --target: the target is 1 to 999 points, not 0",
                "head-start --in 0.5 --on 0.3 --ghost 7 --exact --target 201 | --target: with --exact it is at most 200"
                        + " points, not 201",
                "race --in 0.5 --on 0.3 --ghost 7 --fall-back 3 | --fall-back goes with an exact target; add --exact",
                "race --in 0.5 --on 0.3 --ghost 7 --exact --fall-back 21 | --fall-back: the score to fall back to is 0 or"
                        + " more and below the target 21, not 21",
                "race --in 0.5 --on 0.3 --ghost 7 --skunk 22 | --skunk: the skunk lead is 0 (none) to the target 21, not"
                        + " 22",
                "total --in 0.5 --on 0.3 --rounds 0 | --rounds: a total takes 1 to 1000 rounds, not 0",
                "climb --in 0.5 --on 0.3 --lowest 9 --highest 3 | --lowest, --highest: the rungs are ghost scores 0 to"
                        + " 12, the lowest first, not 9 to 3",
                "match --in 0.5 --on 0.3 --ghost 7 --games 0 | --rounds, --games: a match has 1 to 99 games, not 0",
                "match --in 0.5 --on 0.3 --ghost 7 --tie 3 | --win, --tie, --loss: league points are 0 to 100, a win worth"
                        + " no less than a tie and a tie no less than a loss, not 2, 3 and 0",
                "worth --in 0.5 --on 0.3 --of total | a total is won by reaching some points; add --at-least N",
                "worth --in 0.5 --on 0.3 --of total --at-least 9 --ghost 7 | an opponent, --games and the variants of a"
                        + " race do not go with --of total; leave them out",
                "worth --in 0.5 --on 0.3 --of luck | --of: \"luck\" is none of race, match, total; use one of these",
            })
    void refusesWhatCannotBeAnswered(String command, String fault) {
        assertThat(Ran.of(("odds " + command).split(" "))).isEqualTo(new Ran(2, "", fault + "\n"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"odds", "odds luck", "odds race --on 0.3 --ghost 7", "odds race --in x --on 0.3 --ghost 7"})
    void wrongUsageIsTold(String command) {
        Ran ran = Ran.of(command.split(" "));
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains("--help").doesNotContain("Exception");
    }

    @Test
    void globalOptionsMayStandAnywhere() {
        String[] last = "odds total --in 0.5 --on 0.3 --json".split(" ");
        String[] first = "--json odds total --in 0.5 --on 0.3".split(" ");
        assertThat(Ran.of(last)).isEqualTo(Ran.of(first));
        assertThat(Ran.of("odds", "climb", "--help").out()).contains("--lowest", "Exit status");
    }
}
