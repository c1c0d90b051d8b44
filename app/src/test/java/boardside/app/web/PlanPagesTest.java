package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Contest;
import boardside.app.practice.Exercise;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.Setup;
import boardside.app.practice.TrialPlan;
import boardside.app.practice.Try;
import boardside.app.record.Refusals;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
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

        swapFirst();
        assertThat(records.plans().refused(me, LocalDate.now()).values()).containsExactly(1.0);
        while (!page.locator("#block-0 h2").textContent().contains("Rounds of four")) {
            swapFirst();
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

    /** Twenty-four slides at a bag of theirs before the hole, half of which work. */
    private void trySlides() {
        Try.How how = new Try.How("", null, null, BoardKind.REGULATION, Setting.PRACTICE, null);
        List<Exercise.Step> steps = List.of(new Exercise.Step(Shot.SLIDE, null, Situation.GATE.position()));
        Setup setup = Setup.plain()
                .with(draft -> draft.exercise =
                        new Exercise(List.of(), steps, false, Exercise.Call.MINE, null, 24, "gate", "gate", ""));
        String start = OffsetDateTime.now()
                .minusDays(3)
                .truncatedTo(ChronoUnit.SECONDS)
                .toString();
        String run = records.ids().next();
        List<Operation> operations = new ArrayList<>();
        operations.add(new Operation.StartRun(
                records.ids().next(), run, records.ids().next(), Drill.SITUATION, start, false, "", null, null, setup));
        for (int number = 1; number <= 24; number++) {
            Try.Played played = new Try.Played(
                    Side.ME,
                    Shot.SLIDE,
                    null,
                    Situation.GATE.position(),
                    "gate",
                    null,
                    true,
                    number % 2 == 0,
                    null,
                    how,
                    "");
            operations.add(new Operation.PutTry(records.ids().next(), run, number, played));
        }
        operations.add(new Operation.FinishRun(records.ids().next(), run, start));
        records.applyAll(me, operations, Instant.now());
    }

    /** One round, as a finish, or as bags in where only those are counted. */
    private void round(String finish, int in) {
        Locator whole = page.locator("[data-finish='" + finish + "']");
        (whole.count() > 0 ? whole : page.locator("[data-count='" + in + "']")).click();
    }

    /** Puts something else in the first block's place. */
    private void swapFirst() {
        Locator block = page.locator("#block-0");
        String before = block.textContent();
        page.locator("#block-0 button.plain").click();
        assertThat(block).not().hasText(before, new LocatorAssertions.HasTextOptions().setTimeout(60_000));
    }

    private void closeByHand() {
        page.locator("#more").click();
        page.locator("#finish").click();
    }

    /** Block after block on one page, sent later; a page that has to be loaded is not lost for want of the network. */
    @Test
    void aPlanIsFollowedWithoutTheNetwork() {
        practise();
        page.navigate(url("/plan"));
        page.locator("#minutes").fill("60");
        page.locator("#ask button.main").click();
        assertThat(page.locator("#block-0 h2"))
                .containsText("Warm-up", new LocatorAssertions.ContainsTextOptions().setTimeout(60_000));
        page.locator("#block-0 button.main").click();
        assertThat(page.locator("#entry section, #entry table").first()).isVisible();
        String first = page.url();

        phone.setOffline(true);
        round("1-2-1", 1);
        closeByHand();
        assertThat(page.locator("#done-said")).containsText("Closed, with 4 bags thrown");
        assertThat(page.locator("#plan-next h2")).containsText("Next: ");
        picture("plan-next");
        // What would have to be loaded is not: it says so and stays.
        page.locator("#summary").click();
        assertThat(page.locator("#problem")).containsText("there is no network");
        assertThat(page.url()).isEqualTo(first);

        page.locator("#next-block").click();
        assertThat(page.locator("#rounds li")).hasCount(0);
        assertThat(page.locator("#done-said")).hasCount(0);
        round("2-1-1", 2);
        round("4-0-0", 4);
        assertThat(page.locator("#rounds li")).hasCount(2);
        page.locator("#undo").click();
        assertThat(page.locator("#rounds li")).hasCount(1);
        closeByHand();
        assertThat(page.locator("#plan-next")).isVisible();

        phone.setOffline(false);
        assertThat(page.locator("#sent"))
                .hasText("all stored", new LocatorAssertions.HasTextOptions().setTimeout(60_000));
        SessionPlan plan = records.plans().latest(me).orElseThrow();
        List<SessionPlan.Placed> thrown =
                plan.blocks().stream().filter(placed -> !placed.run().isEmpty()).toList();
        assertThat(thrown).hasSize(2);
        Run second = records.run(me, thrown.get(1).run()).orElseThrow().run();
        assertThat(second.sum().thrown()).isEqualTo(4);
        assertThat(second.sum().in()).isEqualTo(2);
        assertThat(second.open()).isFalse();
        assertThat(records.run(me, thrown.get(0).run()).orElseThrow().run().session())
                .isEqualTo(second.session());
        // The page now has the address of what was thrown last, and the plan knows what was done.
        assertThat(page.url()).endsWith("/runs/" + second.id());
        page.reload();
        assertThat(page.locator("#rounds li")).hasCount(1);
        page.navigate(url("/plan"));
        assertThat(page.locator("#progress")).containsText("2 of ");

        // The plan itself stays too, when there is no network.
        phone.setOffline(true);
        page.locator("#blocks button.main").first().click();
        assertThat(page.locator("#offline")).isVisible();
        assertThat(page.url()).endsWith("/plan");
        phone.setOffline(false);
        page.reload();
        assertThat(page.locator("#progress")).containsText("2 of ");
        assertThat(page.locator("#offline")).isHidden();
    }

    /** What the playbook says of shots gives a block its reason; before it is there, nothing is said of it. */
    @Test
    void aShotIsPlannedForWhatThePlaybookSaysItIsWorth() {
        practise();
        trySlides();
        Refusals.of(
                records,
                me,
                LocalDate.now().minusDays(1),
                "volume",
                "total:aggressive",
                "total:conservative",
                "race",
                "slide",
                "placement:2-middle");
        page.navigate(url("/playbook"));
        assertThat(page.locator("#brief li").first())
                .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(180_000));
        page.navigate(url("/plan"));
        page.locator("#minutes").fill("8");
        page.locator("#ask button.main").click();
        assertThat(page.locator("#block-0 h2")).containsText("Situation");
        assertThat(page.locator("#block-0"))
                .containsText(Pattern.compile(
                        "Ten times more in a hundred would win \\d+\\.\\d \\(\\d+\\.\\d–\\d+\\.\\d\\) more of"
                                + " 100 games, by your playbook"));
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
            swapFirst();
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
