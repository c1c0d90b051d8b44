package boardside.app.cli;

import boardside.app.account.QrCode;
import boardside.app.record.Records;
import boardside.app.transfer.DailyBackups;
import boardside.app.watch.Metrics;
import boardside.app.web.Invitation;
import boardside.app.web.Server;
import boardside.app.web.ServerOptions;
import boardside.app.web.Version;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Serves a store until the process is asked to stop. */
final class Serving {
    /** How long the process waits at most for open requests and the store when it is asked to stop. */
    private static final long STOP_SECONDS = 10;

    private Serving() {}

    /**
     * Serves until SIGTERM, Ctrl-C or an interrupt; then finishes the requests under way and closes the store.
     *
     * @param backups the folder for automatic backups, or null for none
     * @throws boardside.app.practice.Failure.BadInput if the port is taken
     */
    static int untilStopped(Context context, Records records, ServerOptions options, @Nullable Path backups) {
        return untilStopped(context, records, options, backups, () -> {});
    }

    /** The same without backups, with something to do when the store is closed, before the process ends. */
    static int untilStopped(Context context, Records records, ServerOptions options, Runnable afterwards) {
        return untilStopped(context, records, options, null, afterwards);
    }

    private static int untilStopped(
            Context context, Records records, ServerOptions options, @Nullable Path backups, Runnable afterwards) {
        Clock clock = context.surroundings().clock();
        Metrics metrics = new Metrics(Version.number());
        CountDownLatch asked = new CountDownLatch(1);
        CountDownLatch closed = new CountDownLatch(1);
        // The process ends when its hooks have run, so this one waits until everything is closed.
        Thread hook = new Thread(
                () -> {
                    asked.countDown();
                    await(closed);
                },
                "stop");
        Runtime.getRuntime().addShutdownHook(hook);
        try (records;
                DailyBackups daily = backups == null ? null : DailyBackups.start(records, backups, clock, metrics);
                Server server = Server.start(records, options, clock, metrics)) {
            tell(context, server, options);
            if (options.hosted()) {
                tellOfHosts(context, records);
            } else if (options.lan()) {
                invite(context, server);
            }
            asked.await();
        } catch (InterruptedException e) {
            // Whoever runs this command inside a program asks it to stop this way.
        } finally {
            if (asked.getCount() > 0) {
                Runtime.getRuntime().removeShutdownHook(hook);
            }
            try {
                afterwards.run();
            } finally {
                closed.countDown();
            }
        }
        return Cli.DONE;
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await(STOP_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void tell(Context context, Server server, ServerOptions options) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("address", server.address());
        answer.put("houseAddresses", server.houseAddresses());
        String words = String.join(
                System.lineSeparator(),
                Stream.concat(Stream.of(server.address()), server.houseAddresses().stream())
                        .toList());
        context.answer(answer, words);
        context.out().flush();
        context.say(
                options.demo()
                        ? "An invented player's practice is served there. Ctrl-C stops it and throws it away."
                        : "Boardside is served there. Ctrl-C stops it; what is recorded stays.");
    }

    /** Says how the first host gets an account, while there is none. */
    private static void tellOfHosts(Context context, Records records) {
        if (!records.accounts().hasHost()) {
            context.say("There is no host yet. Make a link for one: boardside account first-host");
        }
    }

    /** Says how a phone gets in, and again with a code that works whenever Enter is pressed. */
    private static void invite(Context context, Server server) {
        if (server.invite().isEmpty()) {
            context.say("No house network was found, so only this machine can open it.");
            return;
        }
        say(context, server);
        if (context.surroundings().terminal()) {
            Thread enter = new Thread(() -> onEnter(context, server), "enter");
            enter.setDaemon(true);
            enter.start();
        }
    }

    private static void onEnter(Context context, Server server) {
        BufferedReader in =
                new BufferedReader(new InputStreamReader(context.surroundings().in(), StandardCharsets.UTF_8));
        try {
            while (in.readLine() != null) {
                say(context, server);
            }
        } catch (IOException e) {
            // No terminal any more; the page Devices shows the code as well.
        }
    }

    private static void say(Context context, Server server) {
        Invitation invitation = server.invite().orElseThrow();
        if (context.surroundings().terminal()) {
            context.say(QrCode.of(invitation.link()).halfBlocks());
        }
        String until = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT)
                .format(invitation.until().atZone(context.surroundings().clock().getZone()));
        context.say("To let a phone in: " + invitation.link());
        context.say("Code " + invitation.spaced() + ", works once, until " + until
                + (context.surroundings().terminal() ? "; press Enter for one that works." : "."));
    }
}
