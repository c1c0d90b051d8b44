package boardside.app.cli;

import boardside.app.practice.Challenge;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Challenges;
import boardside.app.record.Dealer;
import boardside.app.web.ChallengePage;
import boardside.app.web.Texts;
import boardside.engine.skill.Interval;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Today's challenge, as the page deals it. */
@Command(
        name = "challenge",
        description = "Today's challenge at about even odds, and what became of those taken up at the boards.")
final class ChallengeCommand implements Callable<Integer> {
    private static final int LATEST = 10;

    private final Context context;

    @Option(names = "--deal", paramLabel = "N", description = "Another one: 1, 2, ...")
    private int deal;

    ChallengeCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        Texts texts = Texts.in("en");
        Challenge challenge = Dealer.deal(
                        context.records(),
                        player.id(),
                        LocalDate.now(context.surroundings().clock()),
                        deal)
                .orElseThrow(() -> new Failure.NotFound(
                        "there are no counted rounds of " + player.name() + " to deal a challenge from; record some"));
        Interval chance = new Interval(challenge.chance(), challenge.low(), challenge.high());
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("day", challenge.day());
        answer.put("kind", challenge.kind().word());
        answer.put("rounds", challenge.rounds() == 0 ? null : (Integer) challenge.rounds());
        answer.put("ghost", challenge.kind() == Challenge.Kind.RACE ? (Integer) challenge.ghost() : null);
        answer.put("need", challenge.need());
        answer.put("chance", chance);
        String says = ChallengePage.says(texts, challenge);
        answer.put("sentence", says);
        List<Challenges.Told> taken = context.records().challenges().latest(player.id(), LATEST);
        answer.put(
                "taken",
                taken.stream()
                        .map(told -> {
                            Map<String, Object> one = new LinkedHashMap<>();
                            one.put("day", told.challenge().day());
                            one.put("run", told.challenge().run());
                            one.put("outcome", told.outcome().name().toLowerCase(java.util.Locale.ROOT));
                            one.put("sentence", ChallengePage.outcome(texts, told));
                            return one;
                        })
                        .toList());
        context.answer(
                answer,
                says + ".\nGoing by your records up to yesterday, you make it " + OddsWords.percent(chance)
                        + " of the time.");
        return Cli.DONE;
    }
}
