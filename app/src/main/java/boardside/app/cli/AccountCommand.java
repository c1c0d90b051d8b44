package boardside.app.cli;

import boardside.app.account.Accounts;
import boardside.app.practice.Account;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.engine.rules.Word;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Accounts of hosted mode, for whoever has the store. */
@Command(name = "account", description = "Accounts of hosted mode: list them (unless said), invite, set roles, close.")
final class AccountCommand implements Callable<Integer> {
    private final Context context;

    @Option(
            names = "--address",
            paramLabel = "URL",
            scope = picocli.CommandLine.ScopeType.INHERIT,
            description =
                    "Where people reach the server, for links; http://localhost:" + ServeCommand.PORT + " unless said.")
    private String address = "http://localhost:" + ServeCommand.PORT;

    AccountCommand(Context context) {
        this.context = context;
    }

    private Accounts accounts() {
        return context.records().accounts();
    }

    @Override
    public Integer call() {
        return list();
    }

    @Command(name = "list", description = "All accounts with their roles.")
    int list() {
        List<Account> all = accounts().all();
        context.answer(
                Map.of("accounts", all.stream().map(this::json).toList()),
                all.stream()
                        .map(account -> account.name() + ": " + account.role().word() + ", since "
                                + day(account.madeAt()) + (account.closed() ? ", closed" : ""))
                        .reduce((one, other) -> one + "\n" + other)
                        .orElse("There is no account yet. Make a link for a host: boardside account first-host"));
        return all.isEmpty() ? Cli.NO : Cli.DONE;
    }

    private Map<String, Object> json(Account account) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("name", account.name());
        json.put("role", account.role());
        json.put("since", account.madeAt().toString());
        json.put("closed", account.closed());
        return json;
    }

    private String day(Instant instant) {
        return DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT)
                .format(instant.atZone(context.surroundings().clock().getZone()));
    }

    @Command(name = "first-host", description = "A link by which the first host makes an account.")
    int firstHost() {
        if (accounts().hasHost()) {
            throw new Failure.BadInput(
                    "there is a host already; invite another with: boardside account invite --role host");
        }
        return link(accounts().invite(Role.HOST, ""), "Whoever opens it becomes host.");
    }

    @Command(name = "invite", description = "A link by which somebody makes an account.")
    int invite(
            @Option(
                            names = "--role",
                            paramLabel = "ROLE",
                            description = "player (unless said), organiser or host.",
                            defaultValue = "player")
                    String role,
            @Option(
                            names = "--note",
                            paramLabel = "TEXT",
                            description = "For whom, to tell invitations apart.",
                            defaultValue = "")
                    String note) {
        return link(accounts().invite(role(role), note), "Whoever opens it makes an account.");
    }

    @Command(name = "reset", description = "A link by which an account sets a new password.")
    int reset(@Parameters(paramLabel = "NAME", description = "Who forgot it.") String name) {
        return link(accounts().reset(named(name).id()), "Whoever opens it sets the password of " + name + ".");
    }

    private int link(Accounts.Made made, String says) {
        String link =
                address.replaceFirst("/+$", "") + "/" + made.ticket().kind().word() + "/" + made.token();
        String until = day(made.ticket().until());
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("link", link);
        json.put("until", made.ticket().until().toString());
        context.answer(json, link);
        context.say(says + " It works once, until " + until + ", and is shown now and never again.");
        return Cli.DONE;
    }

    @Command(name = "role", description = "Set what an account may do.")
    int role(
            @Parameters(paramLabel = "NAME", description = "Whose.") String name,
            @Parameters(paramLabel = "ROLE", description = "player, organiser or host.") String role) {
        Account account = accounts().role(named(name).id(), role(role));
        context.answer(json(account), account.name() + " is " + account.role().word() + " now.");
        return Cli.DONE;
    }

    @Command(name = "close", description = "Close an account: signed out everywhere, its records kept.")
    int close(@Parameters(paramLabel = "NAME", description = "Whose.") String name) {
        Account account = accounts().close(named(name).id());
        context.answer(json(account), account.name() + " is closed and signed out everywhere.");
        return Cli.DONE;
    }

    @Command(name = "open", description = "Open a closed account again.")
    int open(@Parameters(paramLabel = "NAME", description = "Whose.") String name) {
        Account account = accounts().open(named(name).id());
        context.answer(json(account), account.name() + " is open again.");
        return Cli.DONE;
    }

    @Command(name = "sign-out", description = "Sign an account out everywhere.")
    int signOut(@Parameters(paramLabel = "NAME", description = "Whose.") String name) {
        Account account = named(name);
        context.records().signIns().signOutEverywhere(account);
        context.answer(json(account), account.name() + " is signed out everywhere.");
        return Cli.DONE;
    }

    @Command(name = "give", description = "Make a player recorded without accounts one of an account.")
    int give(
            @Parameters(paramLabel = "PLAYER", description = "Which player.") String player,
            @Parameters(paramLabel = "NAME", description = "Whose it becomes.") String name) {
        Account account = named(name);
        Player given = accounts().give(account.id(), context.player(player));
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("player", given.name());
        json.put("account", account.name());
        context.answer(json, given.name() + " is a player of " + account.name() + " now.");
        return Cli.DONE;
    }

    private Account named(String name) {
        return accounts().named(name).orElseThrow(() -> new Failure.NotFound("there is no account \"" + name + "\""));
    }

    private static Role role(String word) {
        try {
            return Word.of(Role.class, word);
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput("role: " + e.getMessage());
        }
    }
}
