package boardside.engine.league.season;

import static boardside.engine.league.season.Made.ids;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.Standings;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.odds.TypicalPlayer;
import boardside.engine.rules.Side;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class SeasonOutlookTest {
    @Test
    void beforeAnythingIsThrownAllAreAlike() {
        Season season = Made.season(Made.rules(Meetings.SINGLE, 2), new Weeks(Made.STARTS, Made.ZONE), 4);
        SeasonOutlook outlook = SeasonOutlook.of(season, 0, 1);
        assertThat(outlook.open()).isEqualTo(18);
        double error = outlook.forecast().standardError(0.5);
        for (Entrant entrant : season.entrants()) {
            assertThat(outlook.playOff(entrant.name())).isCloseTo(0.5, within(4 * error));
        }
    }

    @Test
    void aSeasonThatIsOverIsItsTable() {
        Season season = Made.allTold(Made.season(5), RandomSource.XO_RO_SHI_RO_128_PP.create(9_500), ids("x"));
        SeasonOutlook outlook = SeasonOutlook.of(season, 0, 1);
        assertThat(outlook.open()).isZero();
        for (Standings.Row row : season.table(0).rows()) {
            assertThat(outlook.forecast().places(row.player()).get(row.place() - 1))
                    .isCloseTo(1, within(1e-9));
        }
    }

    @Test
    void whoThrowsMoreIsLikelierToBeFirst() {
        Season season = Made.told(Made.season(4), "A1", "A4", 100, 60, 98, 62, 103, 58);
        SeasonOutlook outlook = SeasonOutlook.of(season, 0, 1);
        assertThat(outlook.forecast().among("A1", 1)).isGreaterThan(0.7);
        assertThat(outlook.forecast().order()).startsWith("A1").endsWith("A4");
        assertThat(outlook.totals()).isEqualTo(6);
    }

    /** The pooled spread: 10 prior observations of the luck of a typical player, two totals about the mean of each (worked out by hand). */
    @Test
    void theSpreadOfTotalsIsLearned() {
        Season season = Made.season(2);
        season = SeasonChanges.told(
                season, season.matches().get(0).id(), Made.games(60, 60, 80, 60), Voice.ORGANISER, ids("x"));
        double luck =
                Total.of(RoundDistribution.of(TypicalPlayer.ofPoints(6.5)), 10).standardDeviation();
        // Means 70 and 60: middle 65; squares 100 + 100; two totals more than players.
        assertThat(TotalsSoFar.of(season).guess().middle()).isEqualTo(65);
        assertThat(TotalsSoFar.of(season).guess().within())
                .isCloseTo(Math.sqrt((10 * luck * luck + 200) / 12), within(1e-12));
        SeasonMatch match = season.matches().get(0);
        season = SeasonChanges.substituted(season, match.id(), "Guest", "", ids("x"));
        assertThat(TotalsSoFar.of(season).of("A1")).isEmpty();
        assertThat(TotalsSoFar.of(season).of("A2")).containsExactly(60, 60);
    }

    /** Two totals that are what they are: ten points and a half more would be even, so ten, a tie counted half, come nearest. */
    @Test
    void aHeadStartBringsTotalsNearestToEven() {
        List<Double> seventy = sure(70);
        List<Double> eighty = sure(80);
        assertThat(HeadStart.inTotals(eighty, seventy)).isEqualTo(new HeadStart(10, Side.VERSUS, 0.5));
        assertThat(HeadStart.inTotals(seventy, eighty)).isEqualTo(new HeadStart(10, Side.ME, 0.5));
        assertThat(HeadStart.inTotals(eighty, eighty)).isEqualTo(new HeadStart(0, Side.ME, 0.5));
    }

    private static List<Double> sure(int total) {
        List<Double> chances = new ArrayList<>();
        for (int i = 0; i <= 120; i++) {
            chances.add(i == total ? 1.0 : 0.0);
        }
        return chances;
    }

    /** By enumeration of all pairs of totals, for every head start there is. */
    @Test
    void aHeadStartInTotalsIsTheBestOfAll() {
        List<Double> mine = distribution(4.0);
        List<Double> theirs = distribution(7.5);
        HeadStart start = HeadStart.inTotals(mine, theirs);
        assertThat(start.to()).isEqualTo(Side.ME);
        double best = Double.MAX_VALUE;
        int bestPoints = -1;
        for (int points = 0; points <= 24; points++) {
            double win = 0;
            for (int my = 0; my < mine.size(); my++) {
                for (int their = 0; their < theirs.size(); their++) {
                    win += mine.get(my)
                            * theirs.get(their)
                            * (my + points > their ? 1 : my + points == their ? 0.5 : 0);
                }
            }
            if (Math.abs(win - 0.5) < best - 1e-12) {
                best = Math.abs(win - 0.5);
                bestPoints = points;
            }
        }
        assertThat(start.points()).isEqualTo(bestPoints);
        assertThat(Math.abs(start.winProbability() - 0.5)).isCloseTo(best, within(1e-12));
    }

    private static List<Double> distribution(double points) {
        Total total = Total.of(RoundDistribution.of(TypicalPlayer.ofPoints(points)), 2);
        List<Double> chances = new ArrayList<>();
        for (int i = 0; i <= total.most(); i++) {
            chances.add(total.chance(i));
        }
        return chances;
    }

    @Test
    void theFairHeadStartGoesToWhoThrowsLess() {
        Season season = Made.told(Made.season(4), "A1", "A4", 100, 60, 98, 62, 103, 58);
        TotalsSoFar totals = TotalsSoFar.of(season);
        assertThat(totals.headStart("A1", "A4")).isBetween(-41, -20);
        assertThat(totals.headStart("A4", "A1")).isEqualTo(-totals.headStart("A1", "A4"));
        assertThat(totals.headStart("A2", "A3")).isZero();
    }
}
