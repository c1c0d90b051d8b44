package boardside.app.cli;

import boardside.app.practice.Failure;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
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

    /** Subcommands, in the order of the help. */
    private static List<Callable<Integer>> commands(Context context) {
        return List.of(
                new ServeCommand(context),
                new DemoCommand(context),
                new RecordCommand(context),
                new FormCommand(context),
                new CompareCommand(context),
                new ClimbCommand(context),
                new RatesCommand(context),
                new BestsCommand(context),
                new ChallengeCommand(context),
                new LoadCommand(context),
                new PlanCommand(context),
                new GoalCommand(context),
                new CoachCommand(context),
                new SkillCommand(context),
                new ImportCommand(context),
                new ExportCommand(context),
                new BackupCommand(context),
                new RestoreCommand(context),
                new CheckCommand(context),
                new AccountCommand(context),
                new ThrowCommand(context),
                new SlideCommand(context),
                new ThrowModelCommand(context),
                new AdviseCommand(context),
                new PlaybookCommand(context),
                new ReportCommand(context),
                new OpenApiCommand(context),
                new LicencesCommand(context),
                new WarmUpCommand(context));
    }

    /**
     * Runs one command line.
     *
     * @return the exit status
     */
    public int run(String... args) {
        Context context = new Context(surroundings);
        CommandLine line = new CommandLine(new Root(context));
        commands(context).forEach(line::addSubcommand);
        line.addSubcommand(OddsCommand.in(context));
        line.addSubcommand(LeagueCommand.in(context));
        line.addSubcommand(SeasonCommand.in(context));
        line.addSubcommand(TrialCommand.in(context));
        line.setOut(new PrintWriter(surroundings.out(), true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(surroundings.err(), true, StandardCharsets.UTF_8));
        line.setParameterExceptionHandler((wrong, given) -> wrong(wrong));
        line.setExecutionExceptionHandler((failed, command, given) -> failed(failed));
        line.setUsageHelpWidth(100);
        try {
            line.setDefaultValueProvider(Settings.of(
                    surroundings.environment(),
                    Objects.requireNonNull(line.getSubcommands().get("serve")).getCommandSpec()));
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
