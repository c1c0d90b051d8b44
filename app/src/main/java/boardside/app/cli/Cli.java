package boardside.app.cli;

import boardside.app.practice.Failure;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The {@code boardside} command with all its subcommands. */
public final class Cli {
    /** The answer is yes, the work is done. */
    public static final int DONE = 0;

    /** The answer is no, nothing was found. */
    public static final int NO = 1;

    /** Wrong usage or bad input. */
    public static final int WRONG = 2;

    private final Surroundings surroundings;

    /** A command in its surroundings. */
    public Cli(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    /** Subcommands by name, in the order of the help. */
    private static Map<String, Function<Context, Object>> commands() {
        Map<String, Function<Context, Object>> commands = new LinkedHashMap<>();
        commands.put("serve", ServeCommand::new);
        commands.put("demo", DemoCommand::new);
        commands.put("record", RecordCommand::new);
        commands.put("form", FormCommand::new);
        commands.put("compare", CompareCommand::new);
        commands.put("climb", ClimbCommand::new);
        commands.put("rates", RatesCommand::new);
        commands.put("bests", BestsCommand::new);
        commands.put("challenge", ChallengeCommand::new);
        commands.put("load", LoadCommand::new);
        commands.put("plan", PlanCommand::new);
        commands.put("goal", GoalCommand::new);
        commands.put("coach", CoachCommand::new);
        commands.put("skill", SkillCommand::new);
        commands.put("import", ImportCommand::new);
        commands.put("export", ExportCommand::new);
        commands.put("backup", BackupCommand::new);
        commands.put("restore", RestoreCommand::new);
        commands.put("check", CheckCommand::new);
        commands.put("account", AccountCommand::new);
        commands.put("throw", ThrowCommand::new);
        commands.put("slide", SlideCommand::new);
        commands.put("throw-model", ThrowModelCommand::new);
        commands.put("advise", AdviseCommand::new);
        commands.put("playbook", PlaybookCommand::new);
        commands.put("report", ReportCommand::new);
        commands.put("openapi", OpenApiCommand::new);
        commands.put("licences", LicencesCommand::new);
        commands.put("warm-up", WarmUpCommand::new);
        commands.put("odds", OddsCommand::in);
        commands.put("league", LeagueCommand::in);
        commands.put("season", SeasonCommand::in);
        commands.put("trial", TrialCommand::in);
        return commands;
    }

    /**
     * The command with the subcommands that a line may be for. Reading the annotations of all of them takes longer than
     * most commands, so they are all there only where the line names none, or takes part of itself from a file. Asked for the
     * version alone, it needs none.
     */
    private static CommandLine line(Context context, String... args) {
        CommandLine line = new CommandLine(new Root(context));
        Map<String, Function<Context, Object>> commands = commands();
        Set<String> said = new HashSet<>(List.of(args));
        boolean all = Collections.disjoint(said, commands.keySet()) && !said.equals(Set.of("--version"))
                || said.stream().anyMatch(word -> word.startsWith("@"));
        commands.forEach((name, command) -> {
            if (all || said.contains(name)) {
                line.addSubcommand(name, command.apply(context));
            }
        });
        return line;
    }

    /**
     * Runs one command line.
     *
     * @return the exit status
     */
    public int run(String... args) {
        Context context = new Context(surroundings);
        CommandLine line = line(context, args);
        line.setOut(new PrintWriter(surroundings.out(), true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(surroundings.err(), true, StandardCharsets.UTF_8));
        line.setParameterExceptionHandler((wrong, given) -> wrong(wrong));
        line.setExecutionExceptionHandler((failed, command, given) -> failed(failed));
        line.setUsageHelpWidth(100);
        try {
            line.setDefaultValueProvider(Settings.of(
                    surroundings.environment(), () -> CommandSpec.forAnnotatedObject(new ServeCommand(context))));
            return line.execute(args);
        } catch (Failure e) {
            // A setting that is none; what a command itself fails with does not come out here.
            return failed(e);
        } finally {
            context.close();
        }
    }

    private int wrong(CommandLine.ParameterException e) {
        if (e.getCause() instanceof Failure setting) {
            return failed(setting);
        }
        surroundings.err().println(oneLine(e.getMessage()));
        String command = e.getCommandLine().getCommandSpec().qualifiedName();
        surroundings.err().println("See " + command + " --help.");
        return WRONG;
    }

    private int failed(Exception e) {
        if (!(e instanceof Failure failure)) {
            surroundings.err().println("boardside failed, through no fault of yours: " + oneLine(e.toString()));
            if (surroundings.environment().containsKey("BOARDSIDE_DEBUG")) {
                e.printStackTrace(surroundings.err());
            } else {
                surroundings.err().println("Set BOARDSIDE_DEBUG=1 and try again to see where.");
            }
            return WRONG;
        }
        failure.faults().forEach(surroundings.err()::println);
        return status(failure);
    }

    /** The exit status of a failure. */
    static int status(Failure failure) {
        return switch (failure.kind()) {
            case NOT_FOUND -> NO;
            case BAD_INPUT, STORE_UNUSABLE -> WRONG;
        };
    }

    private static String oneLine(@Nullable String message) {
        return message == null ? "" : message.strip().replaceAll("\\s*\\R\\s*", " ");
    }

    /** What {@code boardside} alone and the options of every command are. */
    @Command(
            name = "boardside",
            versionProvider = Version.class,
            scope = CommandLine.ScopeType.INHERIT,
            mixinStandardHelpOptions = true,
            synopsisSubcommandLabel = "COMMAND",
            descriptionHeading = "%n",
            parameterListHeading = "%n",
            optionListHeading = "%nOptions:%n",
            commandListHeading = "%nCommands (each with --help):%n",
            footer = "%nExit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input.",
            description = "Records cornhole practice at the boards and says honestly what it shows.")
    static final class Root implements Callable<Integer> {
        @CommandLine.Mixin
        private final Context context;

        @Spec
        private @Nullable CommandSpec spec;

        Root(Context context) {
            this.context = context;
        }

        @Override
        public Integer call() {
            CommandLine line = Objects.requireNonNull(spec).commandLine();
            throw new CommandLine.ParameterException(
                    line,
                    "say what to do: one of "
                            + String.join(", ", line.getSubcommands().keySet()));
        }
    }

    /** The version this program was built as. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"boardside " + boardside.app.web.Version.number()};
        }
    }
}
