package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Contest;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.TrialPlan;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Face;
import com.microsoft.playwright.Locator;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** The plan from the first page to its end, goals, and what a coach is shown. */
class PlanPagesTest extends Browser {
    private int me;

    private void practise() {
        me = records.firstPlayer().id();
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(7_700);
        for (int day = 12; day > 0; day--) {
            Thrown.total(records, me, random, day, 10, 0.45, 0.35);
        }
    }

    /** Throws until the run is over, and goes to its summary. */
    private void throwOn() {
        Locator done = page.locator("#done-said");
        for (int round = 0; round < 40 && !done.isVisible(); round++) {
            page.locator("[data-finish='3-1-0']").click();
        }
        assertThat(page.locator("#sent")).hasText("all stored");
        page.locator("#summary").click();
    }

    @Test
    void fromTheFirstPageToAFinishedPlan() {
        practise();
        page.navigate(url("/"));
        assertAccessible();
        page.locator("#plan button[value='8']").click();
        assertThat(page.locator("#blocks > li")).hasCount(1);
        assertThat(page.locator("#progress")).containsText("0 of 1 blocks done");
        picture("plan");
        assertAccessible();

        String first = page.locator("#block-0 h2").textContent();
        page.locator("#block-0 button.plain").click();
        assertThat(page.locator("#block-0 h2")).not().hasText(first);
        assertThat(records.plans().refused(me, java.time.LocalDate.now()).values())
                .containsExactly(1.0);
        while (!page.locator("#block-0 h2").textContent().contains("Rounds of four")) {
            page.locator("#block-0 button.plain").click();
        }
        page.locator("#block-0 button.main").click();
        assertThat(page.locator("#entry")).isVisible();
        throwOn();
        picture("plan-summary");
        // The page asks again by itself while it is worked out, which would swallow a click.
        assertThat(page.locator("#plan")).hasAttribute("href", "/plan");
        page.navigate(url("/plan"));
        assertThat(page.locator("#changed")).containsText("blocks done");
        assertThat(page.locator("#changed"))
                .containsText(Pattern.compile("they speak for \\d+\\.\\d \\(\\d+\\.\\d–\\d+\\.\\d\\)"));
        assertThat(page.locator("#block-0 .chosen")).containsText("Done.");
        picture("plan-done");
        assertAccessible();
    }

    /** A trial under way is offered, its block throws the trial's next one, and one laid aside starts nothing. */
    @Test
    void aTrialUnderWayIsThrownFromThePlan() {
        practise();
        TrialPlan trial = records.trials()
                .add(
                        me,
                        new TrialPlan(
                                "",
                                "Which face",
                                List.of(new Contest.Way("", Face.SLOW, null), new Contest.Way("", Face.FAST, null)),
                                BoardKind.REGULATION,
                                25,
                                0.5,
                                7,
                                "",
                                TrialPlan.State.OPEN,
                                false));
        page.navigate(url("/plan"));
        page.locator("#minutes").fill("8");
        page.locator("#ask button.main").click();
        Locator block = page.locator("#block-0");
        for (int swaps = 0; swaps < 8 && !block.textContent().contains("Which face"); swaps++) {
            block.locator("button.plain").click();
        }
        assertThat(block).containsText("25");
        records.trials().set(me, trial.id(), TrialPlan.State.PAUSED);
        block.locator("button.main").click();
        assertThat(page.locator("main")).containsText("That trial is not thrown any more");
        assertThat(records.trials().find(me, trial.id()).orElseThrow().runs()).isEmpty();

        records.trials().set(me, trial.id(), TrialPlan.State.OPEN);
        page.navigate(url("/plan"));
        block.locator("button.main").click();
        assertThat(page.locator("#entry")).isVisible();
        Run run = records.trials()
                .find(me, trial.id())
                .orElseThrow()
                .runs()
                .get(0)
                .run();
        assertThat(page.url()).endsWith("/runs/" + run.id());
        assertThat(records.plans()
                        .of(me, run.id())
                        .orElseThrow()
                        .blocks()
                        .get(0)
                        .run())
                .isEqualTo(run.id());
    }

    @Test
    void whatMakesNoSenseIsRefusedInPlace() {
        page.navigate(url("/plan"));
        page.locator("#minutes").fill("3");
        page.locator("#ask button.main").click();
        assertThat(page.locator("[role=alert]")).containsText("Minutes: a session takes 5 to 240 minutes, not 3");
        assertThat(page.locator("#minutes")).hasValue("3");
        assertThat(records.plans().latest(records.firstPlayer().id())).isEmpty();
    }

    @Test
    void aGoalIsSetLookedAtAndPutAway() {
        practise();
        page.navigate(url("/goals"));
        page.locator("#value").fill("70");
        page.locator("#set button.main").click();
        Locator goal = page.locator("section[id^='goal-']");
        assertThat(goal).containsText(Pattern.compile("Now: \\d+\\.\\d \\(\\d+\\.\\d–\\d+\\.\\d\\) of 100 in"));
        assertThat(goal).containsText("of 100 a month");
        picture("goals");
        assertAccessible();
        goal.locator("button.plain").click();
        assertThat(goal).hasCount(0);
        page.locator("#value").fill("lots");
        page.locator("#set button.main").click();
        assertThat(page.locator("[role=alert]")).containsText("A goal is a number such as 70");
    }

    /** A coach sees what is shared, no more, and nothing once it is taken back. */
    @Test
    void aCoachSeesWhatIsSharedAndOnlyThat() {
        practise();
        Player coach = records.addPlayer("Hale", Player.Hand.RIGHT, Player.Hand.LEFT);
        Player other = records.addPlayer("Odd", Player.Hand.RIGHT, Player.Hand.LEFT);
        page.navigate(url("/plan"));
        page.locator("#ask button.main").click();
        page.navigate(url("/coach"));
        page.locator("button[value='" + coach.id() + "']").click();
        assertThat(page.locator("#coach")).containsText("Hale may see your form and plan");
        assertAccessible();

        choose(coach.id());
        page.navigate(url("/coach"));
        page.locator("#shared a").click();
        assertThat(page.locator("#form")).containsText("points");
        assertThat(page.locator("#blocks > li").first()).isVisible();
        assertThat(page.locator("main form")).hasCount(0);
        assertThat(page.locator("main a[href^='/runs']")).hasCount(0);
        picture("coach");
        assertAccessible();

        choose(other.id());
        assertThat(page.navigate(url("/coach/" + me)).status()).isEqualTo(404);
        String refused = page.locator("main").textContent();
        // Somebody who shares nothing and nobody at all look the same.
        assertThat(page.navigate(url("/coach/99999")).status()).isEqualTo(404);
        assertThat(page.locator("main")).hasText(refused);
        choose(me);
        page.navigate(url("/coach"));
        page.locator("#revoke").click();
        choose(coach.id());
        assertThat(page.navigate(url("/coach/" + me)).status()).isEqualTo(404);
    }

    private void choose(int player) {
        page.navigate(url("/players"));
        Locator choice = page.locator("form[action='/players/" + player + "/choose'] button");
        choice.click();
    }
}
