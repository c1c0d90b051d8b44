package boardside.app.cli;

import boardside.app.practice.Failure;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.IDefaultValueProvider;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Options that are given once and for all: as BOARDSIDE_NAME in the environment, or as a line {@code name = value} in a
 * settings file. An option on the command line wins over the environment, the environment over the file. They are the
 * options of {@code serve}, and {@code --data} and {@code --player} of every command.
 */
final class Settings implements IDefaultValueProvider {
    /** Where another settings file is named. */
    private static final String FILE = "BOARDSIDE_SETTINGS";

    /** Global options that say what to work on; the others say how one answer is given. */
    private static final Set<String> EVERYWHERE = Set.of("data", "player");

    private static final Set<String> NEVER = Set.of("json", "quiet", "help", "version");

    private final Map<String, String> environment;
    private final Properties file;

    private Settings(Map<String, String> environment, Properties file) {
        this.environment = environment;
        this.file = file;
    }

    /**
     * The settings in force.
     *
     * @param serve the command whose options may be set
     * @throws Failure.BadInput if the file cannot be read or names what is no setting
     */
    static Settings of(Map<String, String> environment, Supplier<CommandSpec> serve) {
        Properties file = new Properties();
        Path path = path(environment);
        if (path == null || !Files.exists(path)) {
            if (environment.containsKey(FILE)) {
                throw new Failure.BadInput(FILE + ": there is no file " + path + "; make it, or unset " + FILE);
            }
            return new Settings(environment, file);
        }
        try (Reader in = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
            file.load(in);
        } catch (IOException | IllegalArgumentException e) {
            throw new Failure.BadInput("the settings file " + path + " cannot be read (" + e + ")");
        }
        Set<String> known = known(serve.get());
        List<String> faults = new TreeSet<>(file.stringPropertyNames())
                .stream()
                        .filter(name -> !known.contains(name))
                        .map(name -> "the settings file " + path + ": \"" + name + "\" is no setting; there are "
                                + String.join(", ", known))
                        .toList();
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
        return new Settings(environment, file);
    }

    /** Where the settings file lies: named in the environment, else in the user's configuration folder (XDG). */
    static @Nullable Path path(Map<String, String> environment) {
        String named = environment.getOrDefault(FILE, "");
        if (!named.isBlank()) {
            return Path.of(named);
        }
        String folder = environment.getOrDefault("XDG_CONFIG_HOME", "");
        String home = environment.getOrDefault("HOME", "");
        if (folder.startsWith("/")) {
            return Path.of(folder, "boardside", "settings.properties");
        }
        return home.isBlank() ? null : Path.of(home, ".config", "boardside", "settings.properties");
    }

    private static Set<String> known(CommandSpec serve) {
        Set<String> known = new TreeSet<>(EVERYWHERE);
        serve.options().stream()
                .map(Settings::name)
                .filter(name -> !NEVER.contains(name))
                .forEach(known::add);
        return known;
    }

    private static String name(OptionSpec option) {
        return option.longestName().replaceFirst("^--(no-)?", "");
    }

    @Override
    public @Nullable String defaultValue(ArgSpec argument) {
        if (!(argument instanceof OptionSpec option) || option.command() == null) {
            return null;
        }
        String name = name(option);
        if (NEVER.contains(name)
                || !EVERYWHERE.contains(name) && !option.command().name().equals("serve")) {
            return null;
        }
        String variable = "BOARDSIDE_" + name.toUpperCase(Locale.ROOT).replace('-', '_');
        String set = environment.getOrDefault(variable, "");
        String where = variable;
        if (set.isBlank()) {
            set = file.getProperty(name, "").strip();
            where = "the settings file, " + name;
        }
        if (set.isBlank()) {
            return null;
        }
        boolean flag = option.arity().max() == 0;
        if (!flag) {
            return set;
        }
        return switch (set.toLowerCase(Locale.ROOT)) {
            case "true", "yes", "on", "1" -> "true";
            case "false", "no", "off", "0" -> "false";
            default -> throw new Failure.BadInput(where + ": yes or no, not \"" + set + "\"");
        };
    }
}
