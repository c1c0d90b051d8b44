package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.Playbooks;
import boardside.engine.physics.Board;
import boardside.engine.physics.Range;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Target;
import boardside.engine.tactics.advice.Playbook;
import boardside.engine.tactics.advice.Strength;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** What to play and what to practise in the common situations. */
public final class PlaybookPage {
    private final Web web;
    private final Remembered<Playbooks.Book> books;

    PlaybookPage(Web web) {
        this.web = web;
        books = web.rememberedAside();
    }

    /**
     * One situation.
     *
     * @param id for its address
     * @param brief what to play ahead, even and behind, in a line
     * @param lines ahead, even, behind
     */
    public record Entry(String id, String name, Position position, String brief, List<Line> lines) {}

    /** Situations that ask much the same. */
    public record Group(String name, List<Entry> entries) {}

    /** One standing: what it is, and what to do in sentences. */
    public record Line(String standing, String said) {}

    /**
     * What the page shows, all in sentences but the situations.
     *
     * @param brief the most important of it
     */
    public record View(
            String from,
            List<String> brief,
            List<Group> groups,
            List<String> worths,
            List<String> approaches,
            List<String> strengths) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        web.showFound(
                ctx,
                "playbook",
                web.texts().of("playbook.title"),
                soon(player).map(found -> new Remembered.Found<>(view(player, found.value()), found.behind())));
    }

    private Optional<Remembered.Found<Playbooks.Book>> soon(Player player) {
        LocalDate today = web.today();
        return books.soon(player, today, "", () -> Playbooks.of(web.records(), player, today));
    }

    /** Begins to work out a player's book where there has been none yet, so that it is there when it is asked for. */
    void prepare(Player player) {
        if (books.last(player, "").isEmpty()) {
            soon(player);
        }
    }

    /** A player's book as far as it is there: of their records as they are, else the last one there was. */
    Optional<Playbooks.Book> book(Player player) {
        return soon(player).map(Remembered.Found::value);
    }

    private View view(Player player, Playbooks.Book book) {
        List<Entry> barred = new ArrayList<>();
        List<Entry> free = new ArrayList<>();
        for (Situation situation : Situation.values()) {
            List<Playbook.Line> lines = book.playbook().lines().stream()
                    .filter(line -> line.situation() == situation)
                    .toList();
            Position position = lines.get(0).position().board();
            ShotWords words = new ShotWords(web.texts(), position);
            (barred(position) ? barred : free)
                    .add(new Entry(
                            situation.word(),
                            web.texts().of("situation." + situation.word()),
                            position,
                            lines.stream().map(line -> brief(words, line)).collect(Collectors.joining(" ")),
                            lines.stream().map(line -> line(words, line)).toList()));
        }
        int situations = Situation.values().length;
        List<String> approaches = book.bags().stream().map(this::approaches).toList();
        List<String> strengths = strengths(book.strengths());
        return new View(
                new ShotWords(web.texts(), Position.EMPTY).from(book.asked()) + " "
                        + web.texts().of("playbook.side." + player.throwsFrom().word()),
                brief(book, strengths),
                List.of(
                        new Group(web.texts().of("playbook.group.barred"), barred),
                        new Group(web.texts().of("playbook.group.free"), free)),
                book.playbook().worths().stream()
                        .filter(worth -> worth.gain().estimate() > 0)
                        .map(worth -> worth(worth, situations))
                        .toList(),
                approaches,
                strengths);
    }

    /** Whether a bag of theirs lies in front of the hole in the middle lane. */
    private static boolean barred(Position position) {
        return position.bags().stream()
                .filter(bag -> bag.side() == Side.VERSUS)
                .map(bag -> Target.at(bag.spot(), Board.REGULATION_WIDTH))
                .anyMatch(
                        target -> target.lane() == Lane.MIDDLE && target.depth().inFront());
    }

    /** What is most worth practising, which approach wins more with the usual bag, and what one is good at. */
    private List<String> brief(Playbooks.Book book, List<String> strengths) {
        List<String> brief = new ArrayList<>();
        book.playbook().worths().stream()
                .filter(worth -> worth.perGame().estimate() > 0)
                .findFirst()
                .ifPresent(worth -> brief.add(web.texts()
                        .of(
                                "playbook.brief.worth",
                                web.texts().of("shot." + worth.shot().word()).toLowerCase(Locale.ENGLISH),
                                games(worth.perGame()))));
        book.bags().stream()
                .findFirst()
                .ifPresent(bag -> brief.add(web.texts().of("playbook.brief.approach", name(bag), verdict(bag))));
        if (!book.strengths().isEmpty()) {
            brief.addAll(strengths);
        }
        return brief;
    }

    private static String games(Range perGame) {
        return Numbers.one(100 * perGame.estimate()) + " (" + Numbers.one(100 * perGame.low()) + "\u2013"
                + Numbers.one(100 * perGame.high()) + ")";
    }

    private String brief(ShotWords words, Playbook.Line line) {
        String standing = line.standing().name().toLowerCase(Locale.ROOT);
        String best = words.brief(line.play().call());
        String next = words.brief(line.next().call());
        String named = line.asGood() && !next.equals(best) ? web.texts().of("playbook.brief.or", best, next) : best;
        return web.texts().of("playbook.brief." + standing, named);
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
                        situations,
                        games(worth.perGame()));
    }

    private String verdict(Playbooks.Bag bag) {
        Range difference = bag.approaches().difference();
        return web.texts()
                .of(
                        difference.low() > 0
                                ? "playbook.approach.signal"
                                : difference.high() < 0 ? "playbook.approach.careful" : "playbook.approach.open");
    }

    private String name(Playbooks.Bag bag) {
        String name = bag.name().isEmpty() ? ShotWords.capital(web.texts().of("advise.bag.none")) : bag.name();
        return bag.face() == null
                ? name
                : name + ", " + web.texts().of("face." + bag.face().word());
    }

    private String approaches(Playbooks.Bag bag) {
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
                                name(bag),
                                ShotWords.win(bag.approaches().conservative()),
                                ShotWords.win(bag.approaches().aggressive()),
                                verdict(bag))
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
