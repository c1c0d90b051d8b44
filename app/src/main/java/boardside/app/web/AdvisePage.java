package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.Player;
import boardside.app.record.AdviceQuestion;
import boardside.app.record.Advising;
import boardside.app.record.OfferedSituation;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.advice.Advice;
import boardside.engine.tactics.advice.Adviser;
import boardside.engine.tactics.advice.RoundPosition;
import com.fasterxml.jackson.core.JsonProcessingException;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;

/**
 * Which shot to throw: bags drawn on a board, what is left and the score, and a ranking that sharpens as more rests of the
 * round are played out. The question is in the address and kept nowhere.
 */
public final class AdvisePage {
    /** Samples of each step, from the first answer to the last. */
    private static final long[] STEPS = {3_000, 12_000, 48_000};

    private static final long SEED = 1;
    private static final List<String> FIELDS = List.of(
            "in-me",
            "in-versus",
            "left-me",
            "left-versus",
            "score-me",
            "score-versus",
            "approach",
            "their-approach",
            "versus-in",
            "versus-on");

    private final Web web;
    private final Remembered<Advising.Asked> asked;
    private final Remembered<Advice> advised;

    AdvisePage(Web web) {
        this.web = web;
        asked = web.remembered();
        advised = web.remembered();
    }

    /**
     * The form.
     *
     * @param values of its fields by name
     * @param wrong what is wrong
     * @param query of the answers, without the step; empty where there is no question yet
     */
    public record View(Map<String, String> values, String bags, Wrong wrong, String query) {
        /** A field's value. */
        public String value(String name) {
            return values.getOrDefault(name, "");
        }
    }

    /**
     * What is wrong with a question.
     *
     * @param faults a sentence each
     * @param fields names of fields that are meant
     * @param bags indices of bags that are meant
     */
    public record Wrong(List<String> faults, Set<String> fields, Set<Integer> bags) {
        static final Wrong NOTHING = new Wrong(List.of(), Set.of(), Set.of());
    }

    /**
     * The ranking.
     *
     * @param said the best shot and when it is right, in sentences
     * @param from whose numbers they are
     * @param next the next step, or -1 after the last
     */
    public record Shots(String said, String from, List<ShotWords.Line> lines, String sharpness, int next) {}

    /** What the page's script starts from: the bags, and the indices of those that are wrong. */
    record Boot(List<Lying> bags, Set<Integer> wrong) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        String bags = ctx.queryParam("bags");
        if (bags == null) {
            Position position = position(player, Objects.requireNonNullElse(ctx.queryParam("situation"), ""));
            form(ctx, blank(position), position.bags());
            return;
        }
        Map<String, String> values = values(ctx);
        AdviceQuestion.Parsed parsed = AdviceQuestion.parse(json(bags, values));
        if (parsed instanceof AdviceQuestion.Parsed.Faulty faulty) {
            ctx.status(422);
            Wrong wrong = new AdviceFaultWords(web.texts()).wrong(faulty, values);
            form(ctx, new View(values, Json.write(faulty.bags()), wrong, ""), faulty.bags());
        } else {
            AdviceQuestion question = ((AdviceQuestion.Parsed.Sound) parsed).question();
            form(
                    ctx,
                    new View(values, bags, Wrong.NOTHING, query(bags, values)),
                    question.position().board().bags());
        }
    }

    private void form(Context ctx, View view, List<Lying> bags) {
        Map<String, Object> model = new HashMap<>();
        model.put("view", view);
        model.put("boot", Json.write(new Boot(bags, view.wrong().bags())));
        model.put("texts", Json.write(web.texts().startingWith("board.", "run.", "situations.", "advise.script.")));
        web.show(ctx, "advise", web.texts().of("advise.title"), model);
    }

    /** A situation by its name, or an empty board. */
    private Position position(Player player, String id) {
        return OfferedSituation.of(web.records(), player).stream()
                .filter(offered -> offered.id().equals(id))
                .map(OfferedSituation::position)
                .findFirst()
                .orElse(Position.EMPTY);
    }

    private static View blank(Position position) {
        long mine =
                position.bags().stream().filter(bag -> bag.side() == Side.ME).count();
        long most = Math.max(mine, position.bags().size() - mine);
        String left = String.valueOf(position.bags().isEmpty() ? RoundPosition.BAGS : RoundPosition.BAGS - most);
        Map<String, String> values = new LinkedHashMap<>();
        FIELDS.forEach(field -> values.put(field, field.startsWith("left") ? left.equals("0") ? "1" : left : "0"));
        values.put("approach", "");
        values.put("their-approach", "");
        values.put("versus-in", "");
        values.put("versus-on", "");
        return new View(values, Json.write(position.bags()), Wrong.NOTHING, "");
    }

    private static Map<String, String> values(Context ctx) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String field : FIELDS) {
            values.put(
                    field, Objects.requireNonNullElse(ctx.queryParam(field), "").strip());
        }
        return values;
    }

    /** The question as the adviser reads it; numbers that are none are left for it to refuse. */
    private static String json(String bags, Map<String, String> values) {
        Map<String, Object> json = new LinkedHashMap<>();
        try {
            json.put("bags", Json.MAPPER.readTree(bags));
        } catch (JsonProcessingException e) {
            // Told as what it is: no list of bags.
            json.put("bags", bags);
        }
        for (String pair : List.of("in", "left", "score")) {
            json.put(pair, Map.of("me", number(values, pair + "-me"), "versus", number(values, pair + "-versus")));
        }
        json.put("next", "me");
        String in = values.getOrDefault("versus-in", "");
        String on = values.getOrDefault("versus-on", "");
        if (!in.isEmpty() || !on.isEmpty()) {
            json.put("versus", Map.of("in", share(in), "on", share(on)));
        }
        String approach = values.getOrDefault("approach", "");
        if (!approach.isEmpty()) {
            json.put("approach", approach);
        }
        String theirs = values.getOrDefault("their-approach", "");
        if (!theirs.isEmpty()) {
            json.put("theirApproach", theirs);
        }
        return Json.write(json);
    }

    private static Object number(Map<String, String> values, String field) {
        String text = values.getOrDefault(field, "");
        try {
            return Integer.valueOf(text);
        } catch (NumberFormatException e) {
            return text;
        }
    }

    private static Object share(String text) {
        try {
            return Double.parseDouble(text.replace(',', '.')) / 100;
        } catch (NumberFormatException e) {
            return text;
        }
    }

    private static String query(String bags, Map<String, String> values) {
        StringJoiner query = new StringJoiner("&");
        query.add("bags=" + URLEncoder.encode(bags, StandardCharsets.UTF_8));
        values.forEach((field, value) -> query.add(field + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8)));
        return query.toString();
    }

    /** One step of the ranking, as a part of the page; 202 while it is being worked out. */
    void shots(Context ctx) {
        Player player = web.player(ctx);
        LocalDate today = web.today();
        String bags = Objects.requireNonNullElse(ctx.queryParam("bags"), "[]");
        String text = json(bags, values(ctx));
        AdviceQuestion question = AdviceQuestion.read(text);
        int step = step(ctx.queryParam("step"));
        String who = question.approach() + " " + question.versus() + " " + question.theirApproach();
        Optional<Remembered.Found<Advising.Asked>> matchup =
                asked.soon(player, today, who, () -> Advising.of(web.records(), player.id(), today, question));
        Optional<Remembered.Found<Advice>> found = matchup.flatMap(known -> advised.soon(
                player,
                today,
                step + " " + text,
                () -> new Adviser(known.value().matchup())
                        .advise(question.position(), question.game(), STEPS[step], SEED)));
        ctx.header("Cache-Control", "no-store");
        if (matchup.isEmpty() || found.isEmpty()) {
            ctx.status(202).result("");
            return;
        }
        Advice advice = found.get().value();
        ShotWords words = new ShotWords(web.texts(), question.position().board());
        web.show(
                ctx,
                "advise_shots",
                web.texts().of("advise.title"),
                Map.of(
                        "view",
                        new Shots(
                                words.said(advice),
                                words.from(matchup.get().value()),
                                words.lines(advice),
                                web.texts()
                                        .of(
                                                "advise.sharpness",
                                                String.valueOf(advice.samples()),
                                                Numbers.two(100 * advice.best().simulationError())),
                                step + 1 < STEPS.length ? step + 1 : -1)));
    }

    private static int step(@Nullable String text) {
        for (int step = 0; step < STEPS.length; step++) {
            if (String.valueOf(step).equals(text)) {
                return step;
            }
        }
        return 0;
    }
}
