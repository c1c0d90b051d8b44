package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.Playbooks;
import boardside.engine.physics.Range;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.advice.Playbook;
import boardside.engine.tactics.advice.Strength;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What to play and what to practise in the common situations. */
public final class PlaybookPage {
    private final Web web;
    private final Remembered<Playbooks.Book> books;

    PlaybookPage(Web web) {
        this.web = web;
        books = web.remembered();
    }

    /**
     * One situation.
     *
     * @param id for its address
     * @param lines ahead, even, behind
     */
    public record Entry(String id, String name, Position position, List<Line> lines) {}

    /** One standing: what it is, and what to do in sentences. */
    public record Line(String standing, String said) {}

    /** What the page shows, all in sentences but the situations. */
    public record View(
            String from, List<Entry> entries, List<String> worths, List<String> approaches, List<String> strengths) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        LocalDate today = web.today();
        web.showFound(
                ctx,
                "playbook",
                web.texts().of("playbook.title"),
                books.soon(player, today, "", () -> Playbooks.of(web.records(), player.id(), today))
                        .map(found -> new Remembered.Found<>(view(found.value()), found.behind())));
    }

    private View view(Playbooks.Book book) {
        List<Entry> entries = new ArrayList<>();
        for (Situation situation : Situation.values()) {
            ShotWords words = new ShotWords(web.texts(), situation.position());
            entries.add(new Entry(
                    situation.word(),
                    web.texts().of("situation." + situation.word()),
                    situation.position(),
                    book.playbook().lines().stream()
                            .filter(line -> line.situation() == situation)
                            .map(line -> line(words, line))
                            .toList()));
        }
        int situations = Situation.values().length;
        return new View(
                new ShotWords(web.texts(), Position.EMPTY).from(book.asked()),
                entries,
                book.playbook().worths().stream()
                        .filter(worth -> worth.gain().estimate() > 0)
                        .map(worth -> worth(worth, situations))
                        .toList(),
                book.bags().stream().map(this::approaches).toList(),
                strengths(book.strengths()));
    }

    private Line line(ShotWords words, Playbook.Line line) {
        List<String> said = new ArrayList<>();
        said.add(web.texts()
                .of(
                        "playbook.play",
                        words.name(line.play().call()),
                        ShotWords.win(line.play().winProbability())));
        said.add(words.right(line.play().breakEven()));
        said.add(
                line.asGood()
                        ? web.texts()
                                .of("playbook.asgood", words.name(line.next().call()))
                        : web.texts()
                                .of("playbook.next", words.name(line.next().call()), Numbers.one(100 * line.behind())));
        said.add(
                line.gain() < 0.0005
                        ? web.texts().of("playbook.practise.none")
                        : web.texts()
                                .of("playbook.practise", words.name(line.practise()), Numbers.one(100 * line.gain())));
        String standing = line.standing().name().toLowerCase(Locale.ROOT);
        return new Line(
                web.texts()
                        .of(
                                "playbook." + standing,
                                line.standing().mine(),
                                line.standing().theirs()),
                String.join(" ", said));
    }

    private String worth(Playbook.Worth worth, int situations) {
        Range gain = worth.gain();
        return web.texts()
                .of(
                        "playbook.worth",
                        web.texts().of("shot." + worth.shot().word()),
                        Numbers.two(100 * gain.estimate()),
                        Numbers.two(100 * gain.low()),
                        Numbers.two(100 * gain.high()),
                        worth.situations(),
                        situations);
    }

    private String approaches(Playbooks.Bag bag) {
        Range difference = bag.approaches().difference();
        String verdict = difference.low() > 0
                ? "playbook.approach.signal"
                : difference.high() < 0 ? "playbook.approach.careful" : "playbook.approach.open";
        String name = bag.name().isEmpty() ? ShotWords.capital(web.texts().of("advise.bag.none")) : bag.name();
        int duels = bag.careful() + bag.bold();
        String played = duels == 0
                ? web.texts().of("playbook.duels.none")
                : web.texts()
                        .of(
                                "playbook.duels",
                                side("conservative", bag.careful(), duels) + ", "
                                        + side("aggressive", bag.bold(), duels));
        return web.texts()
                        .of(
                                "playbook.approach",
                                bag.face() == null
                                        ? name
                                        : name + ", "
                                                + web.texts()
                                                        .of("face." + bag.face().word()),
                                ShotWords.win(bag.approaches().conservative()),
                                ShotWords.win(bag.approaches().aggressive()),
                                web.texts().of(verdict))
                + " " + played;
    }

    private String side(String approach, int won, int of) {
        return web.texts().of("playbook.duels.side", web.texts().of("approach." + approach), won, of);
    }

    private List<String> strengths(List<Strength> strengths) {
        return strengths.isEmpty()
                ? List.of(web.texts().of("playbook.strengths.none"))
                : strengths.stream()
                        .map(one -> web.texts()
                                .of(
                                        "playbook.strength."
                                                + one.what().name().toLowerCase(Locale.ROOT) + "."
                                                + (one.left() ? "left" : "right"),
                                        one.tries()))
                        .toList();
    }
}
