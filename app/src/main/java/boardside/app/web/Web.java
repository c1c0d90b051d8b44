package boardside.app.web;

import boardside.app.account.Accounts;
import boardside.app.account.SignIns;
import boardside.app.account.Tokens;
import boardside.app.json.Json;
import boardside.app.practice.Account;
import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Ids;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.record.Ghosts;
import boardside.app.record.Ladder;
import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import boardside.app.record.Skills;
import boardside.app.record.Throws;
import boardside.app.watch.Metrics;
import boardside.engine.rules.Drill;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What pages share: records, wording, templates, and who is asking. */
final class Web {
    static final String PLAYER = "boardside-player";
    static final String LOOK = "boardside-look";

    /** Tells the service worker whose page it is given, so that it keeps those of one player at a time. */
    static final String WHOSE = "Boardside-Whose";

    private static final int WHOSE_DIGITS = 16;

    /** The status of a page that has not all of its answers yet; its script asks until it is another. */
    static final int WORKING = 202;

    /** A pause longer than this begins a new session. */
    private static final Duration SESSION_GAP = Duration.ofHours(3);

    private final Records records;
    private final TemplateEngine templates;
    private final Texts texts;
    private final Guard guard;
    private final House house;
    private final ServerOptions options;
    private final Clock clock;
    private final Ids ids;
    private final SecureRandom random;
    private final Executor workers;
    private final Executor aside;
    private final Skills skills;
    private final Accounts accounts;
    private final SignIns signIns;
    private final Metrics metrics;
    private final StaticFiles files = new StaticFiles();

    Web(
            Records records,
            TemplateEngine templates,
            Texts texts,
            Guard guard,
            House house,
            ServerOptions options,
            Clock clock,
            Executor workers,
            Executor aside,
            Metrics metrics) {
        this.records = records;
        this.skills = new Skills(records);
        this.accounts = records.accounts();
        this.signIns = records.signIns();
        this.workers = workers;
        this.aside = aside;
        this.templates = templates;
        this.texts = texts;
        this.guard = guard;
        this.house = house;
        this.options = options;
        this.clock = clock;
        this.random = new SecureRandom();
        this.ids = new Ids(clock, random);
        this.metrics = metrics;
    }

    Records records() {
        return records;
    }

    /** Accounts of hosted mode. */
    Accounts accounts() {
        return accounts;
    }

    /** Signing in and out in hosted mode. */
    SignIns signIns() {
        return signIns;
    }

    /** Figures of this server. */
    Metrics metrics() {
        return metrics;
    }

    /** What the engine makes of the records. */
    Skills skills() {
        return skills;
    }

    /** A memory for answers that take a while. */
    <V> Remembered<V> remembered() {
        return new Remembered<>(workers);
    }

    /** A memory for answers that take so long that others are not to wait behind them. */
    <V> Remembered<V> rememberedAside() {
        return new Remembered<>(aside);
    }

    /** Scripts and styles. */
    StaticFiles files() {
        return files;
    }

    Texts texts() {
        return texts;
    }

    Guard guard() {
        return guard;
    }

    House house() {
        return house;
    }

    ServerOptions options() {
        return options;
    }

    Describe describe() {
        return new Describe(texts);
    }

    Instant now() {
        return clock.instant();
    }

    LocalDate today() {
        return LocalDate.now(clock);
    }

    /** Now as ISO-8601 with the offset here, to the second. */
    String isoNow() {
        return OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS).format(DateTimeFormatter.ISO_OFFSET_DATE_TIME);
    }

    /** The time zone here. */
    ZoneId zone() {
        return clock.getZone();
    }

    /** An instant as time of day here. */
    String time(Instant instant) {
        return DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT).format(instant.atZone(clock.getZone()));
    }

    /** An instant in ISO-8601 as day and time of day here. */
    String dayAndTime(String instant) {
        return texts.when(LocalDateTime.ofInstant(Instant.parse(instant), clock.getZone()));
    }

    /** Who is signed in, or null in a household, and where nobody is. */
    @Nullable
    Account account(Context ctx) {
        return guard.signed(ctx).map(SignIns.Signed::account).orElse(null);
    }

    /**
     * Whose players may be seen and recorded for: id of the account that is signed in, or null in a household, whose players
     * are those without an account.
     *
     * @throws Refusal in hosted mode if nobody is signed in
     */
    @Nullable
    String owner(Context ctx) {
        if (!options.hosted()) {
            return null;
        }
        Account account = account(ctx);
        if (account == null) {
            throw new Refusal(401, texts.of("account.signed-out"));
        }
        return account.id();
    }

    /** The players whose records may be seen and changed: all there are for whoever asks. */
    List<Player> players(Context ctx) {
        return records.players(owner(ctx));
    }

    /** Whose records this device shows: the chosen player, else the first. */
    Player player(Context ctx) {
        String chosen = ctx.cookie(PLAYER);
        if (chosen != null) {
            for (Player player : players(ctx)) {
                if (String.valueOf(player.id()).equals(chosen)) {
                    return player;
                }
            }
        }
        return records.firstPlayer(owner(ctx));
    }

    /**
     * The player a page recorded for, who may not be the one chosen since.
     *
     * @throws Refusal if there is no such player here
     */
    Player mayRecordFor(Context ctx, int id) {
        return players(ctx).stream()
                .filter(player -> player.id() == id)
                .findFirst()
                .orElseThrow(() -> new Refusal(404, "There is no player " + id + " in this store."));
    }

    Look look(Context ctx) {
        return Look.of(ctx.cookie(LOOK));
    }

    /** A run with its rounds. */
    RunDetail run(Player player, String id) {
        return records.run(player.id(), id)
                .orElseThrow(() -> new Refusal(
                        404, "There is no run \"" + id + "\" of " + player.name() + ". It may have been deleted."));
    }

    Map<String, String> bagNames(int player) {
        return records.bags(player).stream().collect(Collectors.toMap(BagSet::id, BagSet::name));
    }

    /** How the next run of a drill starts: as the last one was left. */
    Setup nextSetup(int player, Drill drill) {
        Setup last =
                records.lastRun(player, drill).map(run -> setup(run, drill)).orElseGet(() -> Setups.first(drill));
        OptionalInt rung = drill == Drill.CLIMB ? Ladder.next(records, player) : OptionalInt.empty();
        return rung.isEmpty()
                ? last
                : last.with(draft -> {
                    draft.ghost = rung.getAsInt();
                    GhostPlay play = last.ghostPlay();
                    draft.ghostPlay = play == null
                            ? null
                            : new GhostPlay(GhostPlay.Kind.LEVEL, String.valueOf(rung.getAsInt()), play.points());
                });
    }

    // Runs recorded elsewhere do not always say what their sides are.
    private static Setup setup(Run run, Drill drill) {
        Setup setup = run.setup();
        return setup.contest() != null
                ? setup
                : setup.with(draft -> draft.contest = Setups.first(drill).contest());
    }

    /** Who is played next: whoever was played last in that drill, or nobody. */
    String nextOpponent(int player, Drill drill) {
        return drill == Drill.DUEL || drill == Drill.GAME
                ? records.lastRun(player, drill).map(Run::opponent).orElse("")
                : "";
    }

    /** The id of the bag set with that name, made if new. */
    String bagNamed(int player, String name) {
        return records.bags(player).stream()
                .filter(bag -> bag.name().equals(name))
                .findFirst()
                .map(BagSet::id)
                .orElseGet(() ->
                        records.saveBag(player, BagSet.named(ids.next(), name)).id());
    }

    /** What starts a run: its operations, given its id, its session's and when it starts. */
    interface Starting {
        List<Operation> operations(String run, String session, String at);
    }

    /**
     * Starts a run in the session under way, or in a new one; returns its id.
     *
     * @throws Failure.BadInput if the ghost has no rounds to play
     */
    String startRun(Player player, Drill drill, Setup asked, boolean warmUp, String opponent) {
        return startRun(player, (run, session, at) -> {
            GhostPlay play = asked.ghostPlay();
            Setup setup = play == null
                    ? asked
                    : asked.with(
                            draft -> draft.ghostPlay = Ghosts.play(records, player.id(), play.kind(), play.of(), run));
            return List.of(new Operation.StartRun(
                    ids.next(), run, session, drill, at, warmUp, opponent, setup.target(), null, setup));
        });
    }

    /** Starts a run in the session under way, or in a new one, by operations of the caller's; returns its id. */
    String startRun(Player player, Starting starting) {
        String now = isoNow();
        OffsetDateTime start = OffsetDateTime.parse(now);
        String session = records.lastRun(player.id(), null)
                .filter(last -> within(last.startedAt(), start))
                .map(Run::session)
                .orElseGet(() -> ids.next());
        String run = ids.next();
        List<Operation> operations = starting.operations(run, session, now);
        try {
            records.applyAll(player.id(), operations, now());
        } catch (Failure.BadInput e) {
            throw new Refusal(422, sentence(e));
        }
        return run;
    }

    /** New ids for what is recorded here. */
    Ids ids() {
        return ids;
    }

    /** Whether an instant in ISO-8601 is no longer ago than a session lasts. */
    boolean recent(String at) {
        return within(at, OffsetDateTime.now(clock));
    }

    /** Where the order of a trial's blocks comes from. */
    long seed() {
        return random.nextLong();
    }

    private static boolean within(String last, OffsetDateTime now) {
        Duration since = Duration.between(OffsetDateTime.parse(last), now);
        return !since.isNegative() && since.compareTo(SESSION_GAP) < 0;
    }

    /** What was wrong, as a sentence or several. */
    static String sentence(Failure failure) {
        return failure.faults().stream()
                .map(fault -> fault.substring(0, 1).toUpperCase(Locale.ROOT) + fault.substring(1) + ".")
                .collect(Collectors.joining(" "));
    }

    /** Shows a page from a template. */
    void show(Context ctx, String template, String title, Map<String, ? extends @Nullable Object> values) {
        Map<String, @Nullable Object> model = new HashMap<>(values);
        Page page = page(ctx, title);
        model.put("page", page);
        ctx.header(WHOSE, whose(page));
        StringOutput out = new StringOutput(16 * 1024);
        templates.render(template + ".jte", model, out);
        ctx.html(out.toString());
    }

    /** Shows a page that is the same whoever asks, and bound to no visit: it names nobody and holds no form. */
    void showToAnyone(Context ctx, String template, String title, Map<String, ? extends @Nullable Object> values) {
        Map<String, @Nullable Object> model = new HashMap<>(values);
        model.put(
                "page",
                new Page(
                        texts,
                        files,
                        title,
                        ctx.path(),
                        "",
                        Look.USUAL,
                        options.demo(),
                        options.hosted(),
                        null,
                        null,
                        null));
        StringOutput out = new StringOutput();
        templates.render(template + ".jte", model, out);
        ctx.html(out.toString());
    }

    /** Shows a page with an answer that takes a while: as the last one, told to be behind, or a page that asks again soon. */
    void showFound(Context ctx, String template, String title, Optional<? extends Remembered.Found<?>> found) {
        showFound(ctx, template, title, found, "working.said");
    }

    /** The same, with the text that says what is waited for. */
    void showFound(
            Context ctx, String template, String title, Optional<? extends Remembered.Found<?>> found, String waiting) {
        if (found.isEmpty()) {
            ctx.status(WORKING);
            show(ctx, "working", title, Map.of("said", waiting));
        } else {
            show(
                    ctx,
                    template,
                    title,
                    Map.of("view", found.get().value(), "behind", found.get().behind()));
        }
    }

    /** Works out beside the requests what a player's records say by now, so that the next question finds it. */
    void refresh(int player) {
        LocalDate day = today();
        workers.execute(() -> skills.skill(player, day));
        refreshThrows(player);
    }

    /** The same of the throw models alone: one after another, so that questions asked meanwhile have their turn. */
    void refreshThrows(int player) {
        LocalDate day = today();
        workers.execute(() -> workOut(Throws.of(records, player, day).groups().stream()
                .filter(group -> group.known().isEmpty())
                .iterator()));
    }

    private void workOut(Iterator<Throws.Group> groups) {
        if (groups.hasNext()) {
            groups.next().sheet();
            try {
                workers.execute(() -> workOut(groups));
            } catch (RejectedExecutionException e) {
                // The server is stopping; nobody will ask.
            }
        }
    }

    /** Tells one player's pages from another's, also of another account, without naming either. */
    private String whose(Page page) {
        Player player = page.player();
        Account account = page.account();
        return player == null
                ? "nobody"
                : Tokens.hash(String.join(
                                "\n",
                                "whose",
                                account == null ? "" : account.id(),
                                String.valueOf(player.id()),
                                player.name(),
                                String.valueOf(options.demo())))
                        .substring(0, WHOSE_DIGITS);
    }

    private Page page(Context ctx, String title) {
        String said = ctx.queryParam("said");
        String key = "said." + Objects.requireNonNullElse(said, "");
        return new Page(
                texts,
                files,
                title,
                ctx.path(),
                guard.token(ctx),
                look(ctx),
                options.demo(),
                options.hosted(),
                account(ctx),
                guard.letIn(ctx) ? player(ctx) : null,
                texts.has(key) ? texts.of(key) : null);
    }

    /** Answers as JSON. */
    void answer(Context ctx, Object value) {
        ctx.contentType("application/json; charset=utf-8").result(Json.write(value));
    }

    /** Says why not; a page asked for by a device that is not let in becomes the page where it can be. */
    void refuse(Refusal refusal, Context ctx) {
        boolean page = ctx.method() == HandlerType.GET && !wantsJson(ctx);
        if (refusal.status() == 401 && page) {
            ctx.redirect(options.hosted() ? SignInPage.address(ctx) : "/pair");
        } else {
            fault(ctx, refusal.status(), Objects.requireNonNullElse(refusal.getMessage(), ""));
        }
    }

    private static boolean wantsJson(Context ctx) {
        return ctx.path().startsWith("/api/")
                || Objects.requireNonNullElse(ctx.header("Accept"), "").contains("application/json");
    }

    /** Says what could not be done: as JSON to a script, else as a page. */
    void fault(Context ctx, int status, String message) {
        ctx.status(status);
        if (wantsJson(ctx)) {
            answer(ctx, Map.of("message", message));
        } else {
            Page page = new Page(
                    texts,
                    files,
                    texts.of("fault.title"),
                    "",
                    guard.token(ctx),
                    look(ctx),
                    options.demo(),
                    options.hosted(),
                    account(ctx),
                    null,
                    null);
            StringOutput out = new StringOutput();
            templates.render("fault.jte", Map.of("page", page, "message", message), out);
            ctx.html(out.toString());
        }
    }

    /** A page for somebody of whom nothing is known, not even what was asked for. */
    String unread(String message) {
        StringOutput out = new StringOutput();
        String style = files.address("boardside.css");
        templates.render("unread.jte", Map.of("texts", texts, "style", style, "message", message), out);
        return out.toString();
    }
}
