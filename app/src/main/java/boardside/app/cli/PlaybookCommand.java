package boardside.app.cli;

import boardside.app.record.Playbooks;
import boardside.engine.rules.Face;
import boardside.engine.tactics.advice.Approaches;
import boardside.engine.tactics.advice.Call;
import boardside.engine.tactics.advice.Playbook;
import boardside.engine.tactics.advice.Strength;
import com.fasterxml.jackson.databind.node.NullNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** What to play and what to practise in the common situations. */
@Command(
        name = "playbook",
        description = "Say for each common situation what to play and what to practise, by your own numbers.",
        footerHeading = "%n",
        footer = {
            "Ahead is 17-11, even 11-11, behind 11-17; you are next and both sides have as many bags left. docs/tactics.md"
                    + " says how it is worked out.",
            "",
            "Exit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input."
        })
final class PlaybookCommand implements Callable<Integer> {
    private final Context context;

    PlaybookCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Playbooks.Book book = Playbooks.of(
                context.records(),
                context.player(),
                LocalDate.now(context.surroundings().clock()));
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("bags", book.asked().bags());
        json.put(
                "situations",
                book.playbook().lines().stream().map(PlaybookCommand::json).toList());
        json.put(
                "worth",
                book.playbook().worths().stream().map(PlaybookCommand::json).toList());
        json.put("approaches", book.bags().stream().map(PlaybookCommand::json).toList());
        json.put(
                "strengths",
                book.strengths().stream().map(PlaybookCommand::json).toList());
        context.answer(json, words(book));
        return Cli.DONE;
    }

    private static Map<String, Object> json(Playbook.Line line) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("situation", line.situation().word());
        json.put("board", line.position().board().bags());
        json.put("standing", line.standing().name().toLowerCase(Locale.ROOT));
        json.put("play", json(line.play()));
        json.put("next", json(line.next()));
        json.put("behind", line.behind());
        json.put("asGood", line.asGood());
        json.put("practise", line.practise().shot().word());
        json.put("gain", line.gain());
        return json;
    }

    private static Map<String, Object> json(Playbook.Play play) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("shot", play.call().shot().word());
        json.put("aim", play.call().aim());
        json.put("winProbability", play.winProbability());
        json.put("simulationError", play.simulationError());
        Double needed = play.breakEven().needed();
        json.put("breakEven", needed == null ? NullNode.getInstance() : needed);
        json.put("made", play.breakEven().made());
        return json;
    }

    private static Map<String, Object> json(Playbook.Worth worth) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("shot", worth.shot().word());
        json.put("gain", worth.gain());
        json.put("perGame", worth.perGame());
        json.put("situations", worth.situations());
        return json;
    }

    private static Map<String, Object> json(Playbooks.Bag bag) {
        Map<String, Object> json = new LinkedHashMap<>();
        Face face = bag.face();
        json.put("bag", bag.name());
        json.put("face", face == null ? "" : face.word());
        json.put("conservative", bag.approaches().conservative());
        json.put("aggressive", bag.approaches().aggressive());
        json.put("difference", bag.approaches().difference());
        json.put("probabilityAggressive", bag.approaches().probabilityAggressive());
        json.put("duelsConservative", bag.careful());
        json.put("duelsAggressive", bag.bold());
        return json;
    }

    private static Map<String, Object> json(Strength strength) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("what", strength.what().name().toLowerCase(Locale.ROOT));
        json.put("side", strength.left() ? "left" : "right");
        json.put("probability", strength.probability());
        json.put("oddsRatio", strength.oddsRatio());
        json.put("tries", strength.tries());
        return json;
    }

    private static String words(Playbooks.Book book) {
        List<String> lines = new ArrayList<>();
        lines.add(
                book.asked().bags() == 0
                        ? "No counted throws in the last year: this is what is believed of any player."
                        : "By " + book.asked().bags() + " bags of the last year and your tries.");
        for (Playbook.Line line : book.playbook().lines()) {
            if (line.standing() == Playbook.Standing.AHEAD) {
                lines.add("");
                lines.add(line.situation().word());
            }
            lines.add(words(line));
        }
        lines.add("");
        lines.add(
                "Made ten times in a hundred more often, a shot adds to your chance to win each time one of these comes up,"
                        + " and wins so many more of 100 games:");
        for (Playbook.Worth worth : book.playbook().worths()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "  %-11s %.2f in a hundred (%.2f-%.2f), %.1f games (%.1f-%.1f)",
                    worth.shot().word(),
                    100 * worth.gain().estimate(),
                    100 * worth.gain().low(),
                    100 * worth.gain().high(),
                    100 * worth.perGame().estimate(),
                    100 * worth.perGame().low(),
                    100 * worth.perGame().high()));
        }
        lines.add("");
        book.bags().forEach(bag -> lines.add(words(bag)));
        book.strengths()
                .forEach(strength -> lines.add("You are better on the " + (strength.left() ? "left" : "right")
                        + (strength.what() == Strength.Pair.CUTS ? " with cuts" : " lane with placed bags") + ", by "
                        + strength.tries() + " tries."));
        return String.join("\n", lines);
    }

    private static String words(Playbook.Line line) {
        Call play = line.play().call();
        return String.format(
                Locale.ROOT,
                "  %-7s play the %s: you win %.1f %% (%.0f-%.0f)%s; practise the %s (+%.1f)",
                line.standing().name().toLowerCase(Locale.ROOT),
                AdviceWords.name(play),
                100 * line.play().winProbability().estimate(),
                100 * line.play().winProbability().low(),
                100 * line.play().winProbability().high(),
                line.asGood() ? ", the " + AdviceWords.name(line.next().call()) + " is as good" : "",
                AdviceWords.name(line.practise()),
                100 * line.gain());
    }

    private static String words(Playbooks.Bag bag) {
        Approaches approaches = bag.approaches();
        return String.format(
                Locale.ROOT,
                "%s: conservative wins %.0f %% (%.0f-%.0f) of whole games, aggressive %.0f %% (%.0f-%.0f); duels of the two:"
                        + " %d-%d.",
                bag.name().isEmpty() ? "Bags without a name" : bag.name(),
                100 * approaches.conservative().estimate(),
                100 * approaches.conservative().low(),
                100 * approaches.conservative().high(),
                100 * approaches.aggressive().estimate(),
                100 * approaches.aggressive().low(),
                100 * approaches.aggressive().high(),
                bag.careful(),
                bag.bold());
    }
}
