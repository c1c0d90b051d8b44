package boardside.app.watch;

import boardside.engine.rules.Word;
import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.JsonEncoder;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.encoder.Encoder;
import ch.qos.logback.core.spi.ContextAwareBase;
import java.util.Map;
import org.slf4j.LoggerFactory;

/** Logs go to standard error: a line an event, and only what somebody should look into unless more is asked for. */
public final class Logs extends ContextAwareBase implements Configurator {
    /** How a line looks. */
    public enum Format implements Word {
        /** For people; what led to an error follows on lines of its own. */
        TEXT,
        /** One JSON object a line, what led to an error included. */
        JSON
    }

    /** From which weight on events are told. */
    public enum Detail implements Word {
        ERROR,
        WARN,
        INFO,
        DEBUG
    }

    /** What would fill the log and says nothing: a stranger could do so with the first. */
    private static final Map<String, Level> QUIET = Map.of(
            "org.eclipse.jetty.util.HostPort", Level.OFF,
            "org.apache.pdfbox", Level.ERROR,
            "org.apache.fontbox", Level.ERROR);

    /** Libraries, of which no more than warnings are ever told. */
    private static final Level LIBRARIES = Level.WARN;

    /** For logback, which finds this class by itself. */
    public Logs() {}

    @Override
    public ExecutionStatus configure(LoggerContext context) {
        set(context, Format.TEXT, Detail.WARN);
        return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
    }

    /** From now on. */
    public static void set(Format format, Detail detail) {
        set((LoggerContext) LoggerFactory.getILoggerFactory(), format, detail);
    }

    private static void set(LoggerContext context, Format format, Detail detail) {
        ConsoleAppender<ILoggingEvent> appender = new ConsoleAppender<>();
        appender.setContext(context);
        appender.setTarget("System.err");
        appender.setEncoder(encoder(context, format));
        appender.start();
        Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        root.detachAndStopAllAppenders();
        root.addAppender(appender);
        Level level = Level.valueOf(detail.name());
        root.setLevel(level.isGreaterOrEqual(LIBRARIES) ? level : LIBRARIES);
        context.getLogger("boardside").setLevel(level);
        QUIET.forEach((name, quiet) -> context.getLogger(name).setLevel(quiet));
    }

    private static Encoder<ILoggingEvent> encoder(LoggerContext context, Format format) {
        if (format == Format.JSON) {
            JsonEncoder json = new JsonEncoder();
            json.setContext(context);
            json.setWithContext(false);
            json.setWithSequenceNumber(false);
            json.setWithMDC(false);
            json.setWithNanoseconds(false);
            json.setWithFormattedMessage(true);
            json.setWithMessage(false);
            json.setWithArguments(false);
            json.start();
            return json;
        }
        PatternLayoutEncoder text = new PatternLayoutEncoder();
        text.setContext(context);
        text.setPattern("%d{yyyy-MM-dd HH:mm:ss} %-5level %logger{0}: %msg%n");
        text.start();
        return text;
    }
}
