package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running web app. */
public final class Server implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Server.class);
    private static final long STOP_SECONDS = 5;
    private static final long MOST_BYTES = 4L << 20;

    private final Javalin javalin;
    private final House house;
    private final List<Route> routes;
    private final List<ExecutorService> workers;

    private Server(Javalin javalin, House house, List<Route> routes, List<ExecutorService> workers) {
        this.workers = workers;
        this.javalin = javalin;
        this.house = house;
        this.routes = routes;
    }

    /**
     * Starts to serve.
     *
     * @throws Failure.BadInput if the port is taken
     */
    public static Server start(Records records, ServerOptions options, Clock clock) {
        return start(records, options, clock, options.lan() ? Network.here() : Network.NONE, Guard::overLoopback);
    }

    /** The same with a network and a rule of the caller's that says which requests come from this machine. */
    static Server start(Records records, ServerOptions options, Clock clock, Network network, Predicate<Context> here) {
        Port port = Port.bind(options.port(), options.lan());
        try {
            String scheme = options.tls() == null ? "http" : "https";
            House house = new House(records.devices(), network, scheme, port.number(), options.hosting());
            return start(records, options, clock, house, here, port);
        } catch (RuntimeException e) {
            port.release();
            throw e;
        }
    }

    private static Server start(
            Records records, ServerOptions options, Clock clock, House house, Predicate<Context> here, Port port) {
        Guard guard = new Guard(house.network(), options, house.devices(), records.signIns(), here);
        TemplateEngine templates = TemplateEngine.createPrecompiled(
                null, ContentType.Html, Server.class.getClassLoader(), "boardside.app.page");
        ExecutorService answers = worker("answers");
        ExecutorService playbooks = worker("playbooks");
        Web web = new Web(records, templates, Texts.in("en"), guard, house, options, clock, answers, playbooks);
        List<Route> routes = Routes.all(web, options.hosted());
        Javalin javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.http.maxRequestSize = MOST_BYTES;
            config.concurrency.useVirtualThreads = false;
            config.jetty.addConnector((server, http) -> port.connector(server, http, options.tls()));
            config.jetty.modifyServer(server -> server.setErrorHandler(new PlainErrors()));
            config.routes.before(guard::before);
            for (Route route : routes) {
                config.routes.addHttpHandler(route.method(), route.path(), ctx -> {
                    guard.check(ctx, route.access());
                    route.handler().handle(ctx);
                });
            }
            config.routes.exception(Refusal.class, web::refuse);
            config.routes.exception(Failure.NotFound.class, (failure, ctx) -> web.fault(ctx, 404, said(failure)));
            config.routes.exception(Failure.class, (failure, ctx) -> web.fault(ctx, 422, said(failure)));
            config.routes.exception(IllegalArgumentException.class, (wrong, ctx) -> web.fault(ctx, 400, said(wrong)));
            config.routes.exception(Exception.class, (fault, ctx) -> {
                LOG.error("{} {}", ctx.method(), ctx.path(), fault);
                web.fault(ctx, 500, web.texts().of("fault.ours"));
            });
            config.routes.error(404, ctx -> {
                if (ctx.result() == null
                        || ctx.result().isEmpty()
                        || ctx.result().startsWith("Endpoint")) {
                    web.fault(ctx, 404, web.texts().of("fault.nothing"));
                }
            });
        });
        javalin.start();
        return new Server(javalin, house, routes, List.of(answers, playbooks));
    }

    private static ExecutorService worker(String name) {
        return Executors.newSingleThreadExecutor(work -> {
            Thread thread = new Thread(work, name);
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Answers to what is no request at all; Jetty gives them before any of our code runs. */
    private static final class PlainErrors extends ErrorHandler {
        @Override
        public boolean handle(Request request, Response response, Callback callback) throws Exception {
            Guard.HEADERS.forEach(response.getHeaders()::put);
            return super.handle(request, response, callback);
        }
    }

    private static String said(Exception e) {
        return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }

    /** The port served on. */
    public int port() {
        return house.port();
    }

    /** The address on this machine. */
    public String address() {
        return house.address();
    }

    /** Addresses for other devices of the house, the likeliest first; empty while they may not ask. */
    public List<String> houseAddresses() {
        return house.addresses();
    }

    /** How another device gets in, with a code that works now; empty while other devices may not ask. */
    public Optional<Invitation> invite() {
        return house.invite();
    }

    /** The access table in force. */
    List<Route> routes() {
        return routes;
    }

    @Override
    public void close() {
        javalin.stop();
        // What is under way reads the store, which is closed next.
        workers.forEach(ExecutorService::shutdown);
        try {
            for (ExecutorService worker : workers) {
                worker.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
