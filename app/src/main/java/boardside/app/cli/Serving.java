package boardside.app.cli;

import boardside.app.record.Records;
import boardside.app.web.Server;
import boardside.app.web.ServerOptions;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** Serves a store until the process is asked to stop. */
final class Serving {
    /** How long the process waits at most for open requests and the store when it is asked to stop. */
    private static final long STOP_SECONDS = 10;

    private Serving() {}

    /**
     * Serves until SIGTERM, Ctrl-C or an interrupt; then finishes the requests under way and closes the store.
     *
     * @throws boardside.app.practice.Failure.BadInput if the port is taken
     */
    static int untilStopped(Context context, Records records, ServerOptions options) {
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
                Server server =
                        Server.start(records, options, context.surroundings().clock())) {
            tell(context, server);
            asked.await();
        } catch (InterruptedException e) {
            // Whoever runs this command inside a program asks it to stop this way.
        } finally {
            if (asked.getCount() > 0) {
                Runtime.getRuntime().removeShutdownHook(hook);
            }
            closed.countDown();
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

    private static void tell(Context context, Server server) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("address", server.address());
        context.answer(answer, server.address());
        context.out().flush();
        context.say("Boardside is served there. Ctrl-C stops it; what is recorded stays.");
    }
}
