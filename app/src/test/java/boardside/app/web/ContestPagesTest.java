package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import boardside.app.practice.BagSet;
import boardside.app.practice.Line;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.record.Opponents;
import boardside.app.record.Skills;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.Approach;
import boardside.engine.rules.Face;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.skill.Skill;
import com.microsoft.playwright.Locator;
import java.time.LocalDate;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Duels and real games, from the start page to the summary. */
class ContestPagesTest extends Recorder {
    @Test
    void aDuelAgainstMyselfOneTapASide() {
        BagSet slow = bag("Mill Pond");
        BagSet fast = bag("Dry Ridge");
        page.navigate(url("/start/duel"));
        choose("bag", slow.id());
        choose("other-bag", fast.id());
        choose("other-approach", "aggressive");
        picture("duel-start");
        assertAccessible();
        go();
        assertThat(page.locator("#where")).hasText("Round 1: side a first");
        assertThat(page.locator("[data-side=a]")).hasAttribute("aria-pressed", "true");
        picture("duel-new");
        assertAccessible();
        tap("3-1-0");
        assertThat(page.locator("[data-side=b]")).hasAttribute("aria-pressed", "true");
        assertThat(page.locator("#score")).hasText("0\u20130");
        picture("duel-second-side");
        tap("1-1-2");
        assertThat(page.locator("#score")).hasText("6\u20130");
        // Who scored last throws first.
        tap("0-1-3", "2-1-1");
        assertThat(page.locator("#score")).hasText("6\u20136");
        assertThat(page.locator("#where")).hasText("Round 3: side b first");
        assertThat(page.locator("#needed")).hasText("side a: 15 to go. side b: 15.");
        // Either side may be tapped first.
        page.locator("[data-side=b]").click();
        tap("0-0-4", "4-0-0");
        assertThat(page.locator("#score")).hasText("18\u20136");
        page.locator("#undo").click();
        assertThat(page.locator("#score")).hasText("6\u20136");
        tap("4-0-0");
        // A correction of side b's first round: 3 points more for it.
        page.locator("#rounds button").first().click();
        page.locator("[data-side=b]").click();
        picture("duel-correcting");
        assertAccessible();
        tap("2-1-1");
        assertThat(page.locator("#score")).hasText("15\u20136");
        tap("4-0-0", "1-3-0");
        assertThat(page.locator("#done-said")).hasText("side a wins 21\u20136");
        picture("duel-done");
        assertAccessible();
        assertThat(counts(Side.A)).hasSize(4);
        summary();
        assertThat(page.locator("#result")).hasText("side a won 21\u20136");
        assertThat(page.locator("svg[aria-labelledby^=strip-a]")).isVisible();
        assertThat(page.locator("svg[aria-labelledby^=strip-b]")).isVisible();
        assertThat(page.locator("#rate-a")).containsText("8.8 points a round");
        picture("duel-summary");
        assertAccessible();
        assertThat(stored().run().finishedAt()).isNotNull();
        assertThat(stored().rounds().stream()
                        .filter(round -> round.number() == 1)
                        .flatMap(round -> round.lines().stream()))
                .extracting(Line::bag, Line::approach)
                .containsExactly(tuple(slow.id(), null), tuple(fast.id(), Approach.AGGRESSIVE));
    }

    @Test
    void bagByBagTheSidesTakeTurnsAndOneSideChangesItsWay() {
        start("duel");
        page.locator("#mode").click();
        assertThat(page.locator("#call")).containsText("Next: side a");
        picture("duel-bag-by-bag");
        assertAccessible();
        outcome("in").click();
        assertThat(page.locator("#call")).containsText("Next: side b");
        // Side b's own set-up.
        page.locator("#setup button").first().click();
        page.locator("#setup-form input[name=face][value=fast]").check();
        page.locator("#setup-form button.main").click();
        page.keyboard().press("3");
        page.keyboard().press("1");
        page.keyboard().press("2");
        // A bag of side b that lay off was pushed on: tap it until it is right.
        page.locator("[data-bag=b-1]").click();
        page.locator("[data-bag=b-1]").click();
        page.locator("[data-bag=b-1]").click();
        page.locator("[data-bag=b-1]").click();
        page.locator("[data-bag=b-1]").click();
        for (int i = 0; i < 4; i++) {
            page.keyboard().press("2");
        }
        assertThat(page.locator("#score")).hasText("4\u20130");
        assertSent();
        assertThat(counts(Side.A)).containsExactly("2-2-0");
        assertThat(counts(Side.B)).containsExactly("0-4-0");
        assertThat(stored().rounds().get(1).lines().get(0).face()).isEqualTo(Face.FAST);
        assertThat(stored().rounds().get(0).lines().get(0).face()).isNull();
        assertThat(stored().rounds().get(1).thrown()).hasSize(4);
        // Undo brings the round back but for its last bag.
        page.locator("#undo").click();
        assertThat(page.locator("#call")).containsText("Next: side b");
        assertSent();
        assertThat(counts(Side.A)).isEmpty();
    }

    @Test
    void againstASecondPlayerWithTheHeadStartThatOddsGive() {
        var random = RandomSource.XO_RO_SHI_RO_128_PP.create(71);
        Player player = records.firstPlayer();
        Player robin = records.addPlayer("Robin", Player.Hand.RIGHT, Player.Hand.LEFT);
        for (int day = 1; day <= 6; day++) {
            Thrown.total(records, player.id(), random, day, 20, 0.5, 0.3);
            Thrown.total(records, robin.id(), random, day, 20, 0.3, 0.4);
        }
        Skill mine = Skills.of(records, player.id(), LocalDate.now());
        HeadStart fair = HeadStart.of(Race.solve(
                GameRules.STANDARD,
                RoundDistribution.of(mine.chances().orElseThrow().likely()),
                Opponents.player(robin, Skills.of(records, robin.id(), LocalDate.now()))));
        assertThat(fair.to()).isEqualTo(Side.VERSUS);

        page.navigate(url("/start/duel"));
        choose("sides", "versus");
        assertThat(page.getByText("Robin: " + fair.points() + " for Robin")).isVisible();
        page.locator("#opponent").fill("Robin");
        choose("head-start", "fair");
        picture("duel-head-start");
        assertAccessible();
        go();
        assertThat(page.locator("#score")).hasText("0\u2013" + fair.points());
        assertThat(page.locator("#against")).hasText("me against Robin \u00b7 Robin began with " + fair.points());
        tap("4-0-0", "0-0-4", "4-0-0", "0-0-4");
        assertThat(page.locator("#done-said")).hasText("Won 24\u2013" + fair.points());
        assertSent();
        page.locator("#summary").click();
        assertThat(page.locator("#result")).hasText("won 24\u2013" + fair.points());
        assertThat(page.locator("main h2:visible").first()).containsText("me");
        picture("duel-versus-summary");
    }

    @Test
    void aFairHeadStartNeedsRoundsToGoBy() {
        page.navigate(url("/start/duel"));
        choose("sides", "versus");
        page.locator("#opponent").fill("Stranger");
        choose("head-start", "fair");
        page.locator("#start").click();
        assertThat(page.getByRole(com.microsoft.playwright.options.AriaRole.ALERT))
                .containsText("A fair head start needs rounds of both sides");
        assertThat(page.locator("#opponent")).hasValue("Stranger");
    }

    @Test
    void aTournamentGameOfflineWithTheirBagsWhereKnown() {
        page.navigate(url("/start/game"));
        page.locator("#opponent").fill("Odile");
        choose("setting", "tournament");
        picture("game-start");
        assertAccessible();
        go();
        finish("4-0-0").waitFor();
        phone.setOffline(true);
        tap("3-1-0", "1-2-1");
        assertThat(page.locator("#score")).hasText("5\u20130");
        tap("2-0-2");
        picture("game-theirs");
        page.locator("#skip").click();
        assertThat(page.locator("[data-side=me]")).hasAttribute("aria-pressed", "true");
        page.locator("#undo").click();
        assertThat(page.locator("#skip")).isVisible();
        page.locator("#skip").click();
        // One round of theirs is not known: from here there is no score to show.
        tap("4-0-0", "0-1-3");
        assertThat(page.locator("#score")).hasText("?");
        assertThat(page.locator("#needed"))
                .hasText("Their points are not all known: tell the final score when it is over.");
        picture("game-unknown");
        assertThat(page.locator("#sent")).containsText("not yet sent");
        page.locator("#tell-score").click();
        page.locator("#score-mine").fill("21");
        page.locator("#score-theirs").fill("21");
        page.locator("#score-keep").click();
        assertThat(page.locator("#score-fault")).isVisible();
        picture("game-score");
        page.locator("#score-theirs").fill("17");
        page.locator("#score-keep").click();
        assertThat(page.locator("#done-said")).hasText("Won 21\u201317");
        phone.setOffline(false);
        summary();
        assertThat(page.locator("#result")).hasText("won 21\u201317");
        picture("game-summary");
        assertAccessible();
        Run run = stored().run();
        assertThat(run.score()).isEqualTo(new Run.Score(21, 17));
        assertThat(run.opponent()).isEqualTo("Odile");
        assertThat(run.finishedAt()).isNotNull();
        assertThat(counts(Side.ME)).containsExactly("3-1-0", "2-0-2", "4-0-0");
        assertThat(counts(Side.VERSUS)).containsExactly("1-2-1", "0-1-3");
        assertThat(stored().rounds())
                .allSatisfy(round -> assertThat(round.lines())
                        .allSatisfy(line -> assertThat(line.setting()).isEqualTo(Setting.TOURNAMENT)));

        // The score can be corrected in the journal, and the change undone there.
        page.navigate(url("/journal/runs/" + run.id()));
        page.locator("#score-theirs").fill("19");
        page.getByText("Keep", new com.microsoft.playwright.Page.GetByTextOptions().setExact(true))
                .click();
        assertThat(page.locator("h1")).hasText("won 21\u201319");
        // Names met before are offered.
        page.navigate(url("/start/game"));
        assertThat(page.locator("#opponents option")).hasAttribute("value", "Odile");
        assertThat(page.locator("#opponent")).hasValue("Odile");
    }

    @Test
    void myEndOfADoublesGameIsOneTapARound() {
        page.navigate(url("/start/game"));
        choose("doubles", "yes");
        choose("theirs", "no");
        go();
        tap("3-1-0", "2-2-0", "1-3-0");
        assertThat(page.locator("#where")).hasText("Round 4 at my end");
        Locator chips = page.locator("#setup button");
        assertThat(chips.first()).hasText("Final score \u2026");
        picture("game-doubles");
        assertAccessible();
        page.locator("#tell-score").click();
        page.locator("#score-mine").fill("12");
        page.locator("#score-theirs").fill("21");
        page.locator("#score-keep").click();
        assertThat(page.locator("#done-said")).hasText("opponent wins 21\u201312");
        page.locator("#undo").click();
        assertThat(page.locator("#where")).hasText("Round 4 at my end");
        assertSent();
        assertThat(stored().run().score()).isNull();
        assertThat(stored().run().finishedAt()).isNull();
    }

    @Test
    void aGameWithAllKnownEndsByItself() {
        start("game");
        tap("4-0-0", "0-0-4", "3-1-0", "0-1-3");
        assertThat(page.locator("#done-said")).hasText("Won 21\u20130");
        assertSent();
        assertThat(stored().run().finishedAt()).isNotNull();
        assertThat(stored().run().score()).isNull();
    }
}
