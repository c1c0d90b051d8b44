package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import boardside.app.watch.Metrics;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running web app. */
public final class Server implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Server.class);
    private static final long STOP_SECONDS = 5;
    static final String SINCE = "boardside-since";
    private static final String ROUTE = "boardside-route";
    private static final Set<String> METHODS = Set.of("GET", "HEAD", "POST");
    private static final long MOST_BYTES = 4L << 20;

    private final Javalin javalin;
    private final House house;
    private final List<Route> routes;
    private final Live live;
    private final List<ExecutorService> workers;

    private Server(Javalin javalin, House house, List<Route> routes, Live live, List<ExecutorService> workers) {
        this.live = live;
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
        return start(records, options, clock, new Metrics(Version.number()));
    }

    /** The same with figures of the caller's, who counts there too. */
    public static Server start(Records records, ServerOptions options, Clock clock, Metrics metrics) {
        Network network = options.lan() ? Network.here() : Network.NONE;
        return start(records, options, clock, network, Guard::overLoopback, metrics);
    }

    /** The same with a network and a rule of the caller's that says which requests come from this machine. */
    static Server start(Records records, ServerOptions options, Clock clock, Network network, Predicate<Context> here) {
        return start(records, options, clock, network, here, new Metrics(Version.number()));
    }

    private static Server start(
            Records records,
            ServerOptions options,
            Clock clock,
            Network network,
            Predicate<Context> here,
            Metrics metrics) {
        Port port = Port.bind(options.port(), options.lan());
        try {
            String scheme = options.tls() == null ? "http" : "https";
            House house = new House(records.devices(), network, scheme, port.number(), options.hosting());
            return start(records, options, clock, house, here, port, metrics);
        } catch (RuntimeException e) {
            port.release();
            throw e;
        }
    }

    private static Server start(
            Records records,
            ServerOptions options,
            Clock clock,
            House house,
            Predicate<Context> here,
            Port port,
            Metrics metrics) {
        Guard guard = new Guard(house.network(), options, house.devices(), records.signIns(), here);
        TemplateEngine templates = TemplateEngine.createPrecompiled(
                null, ContentType.Html, Server.class.getClassLoader(), "boardside.app.page");
        // A fit uses several cores by itself, and a household is served by one worker; a club's players do not wait for
        // each
        // other.
        int atOnce = options.hosted() ? Math.max(1, Runtime.getRuntime().availableProcessors() / 2) : 1;
        ExecutorService answers = workers("answers", atOnce);
        ExecutorService playbooks = workers("playbooks", 1);
        Web web =
                new Web(records, templates, Texts.in("en"), guard, house, options, clock, answers, playbooks, metrics);
        ExecutorService watcher = workers("watch", 1);
        Live live = new Live(records.matchNights());
        List<Route> routes = new ArrayList<>(Routes.all(web, options.hosted(), live));
        routes.addAll(new WatchRoutes(records, metrics, watcher).routes());
        Javalin javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.http.maxRequestSize = MOST_BYTES;
            config.concurrency.useVirtualThreads = false;
            config.jetty.addConnector((server, http) -> port.connector(server, http, options.tls()));
            config.jetty.modifyServer(server -> {
                server.setErrorHandler(new Unread(web));
                // Requests under way when the server is stopped are finished, as far as that takes no longer.
                server.setHandler(new GracefulHandler());
                server.setStopTimeout(TimeUnit.SECONDS.toMillis(STOP_SECONDS));
            });
            config.routes.before(ctx -> {
                ctx.attribute(SINCE, System.nanoTime());
                guard.before(ctx);
            });
            for (Route route : routes) {
                config.routes.addHttpHandler(route.method(), route.path(), ctx -> {
                    ctx.attribute(ROUTE, route.path());
                    guard.check(ctx, route.access());
                    route.handler().handle(ctx);
                });
            }
            config.routes.exception(Refusal.class, web::refuse);
            config.routes.exception(Failure.NotFound.class, (failure, ctx) -> web.fault(ctx, 404, said(failure)));
            config.routes.exception(Failure.StoreUnusable.class, (failure, ctx) -> {
                metrics.storeError();
                LOG.error("{} {}: {}", ctx.method(), route(ctx), said(failure));
                web.fault(ctx, 503, web.texts().of("fault.store"));
            });
            config.routes.exception(Failure.class, (failure, ctx) -> web.fault(ctx, 422, said(failure)));
            config.routes.exception(IllegalArgumentException.class, (wrong, ctx) -> web.fault(ctx, 400, said(wrong)));
            config.routes.exception(Exception.class, (fault, ctx) -> {
                OptionalInt theirs = unreadable(fault);
                if (theirs.isPresent()) {
                    web.fault(ctx, theirs.getAsInt(), web.texts().of("fault.unreadable"));
                    return;
                }
                LOG.error("{} {}", ctx.method(), route(ctx), fault);
                web.fault(ctx, 500, web.texts().of("fault.ours"));
            });
            config.routes.after(ctx -> answered(ctx, metrics));
            config.routes.error(404, ctx -> {
                if (ctx.result() == null
                        || ctx.result().isEmpty()
                        || ctx.result().startsWith("Endpoint")) {
                    web.fault(ctx, 404, web.texts().of("fault.nothing"));
                }
            });
        });
        javalin.start();
        LOG.info("Serving {} as version {}, store {}", house.address(), Version.number(), records.location());
        return new Server(javalin, house, List.copyOf(routes), live, List.of(answers, playbooks, watcher));
    }

    /** The route a request took, without what stood in its address. */
    private static String route(Context ctx) {
        String route = ctx.attribute(ROUTE);
        return route == null ? "none" : route;
    }

    /** Counts an answered request. */
    private static void answered(Context ctx, Metrics metrics) {
        Long since = ctx.attribute(SINCE);
        if (since != null) {
            long nanos = System.nanoTime() - since;
            String method = METHODS.contains(ctx.method().name()) ? ctx.method().name() : "other";
            metrics.request(method, route(ctx), ctx.statusCode(), nanos);
            LOG.debug("{} {} {} {} ms", method, route(ctx), ctx.statusCode(), nanos / 1_000_000);
        }
    }

    private static ExecutorService workers(String name, int number) {
        return Executors.newFixedThreadPool(number, work -> {
            Thread thread = new Thread(work, name);
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Answers that Jetty gives before any of our code runs, to what is no request at all: in words, without what was sent. */
    private static final class Unread extends ErrorHandler {
        private final Web web;

        Unread(Web web) {
            this.web = web;
        }

        @Override
        public boolean handle(Request request, Response response, Callback callback) throws Exception {
            Guard.HEADERS.forEach(response.getHeaders()::put);
            return super.handle(request, response, callback);
        }

        @Override
        protected void generateResponse(
                Request request,
                Response response,
                int code,
                @Nullable String message,
                @Nullable Throwable cause,
                Callback callback) {
            String words = switch (code) {
                case HttpStatus.URI_TOO_LONG_414, HttpStatus.REQUEST_HEADER_FIELDS_TOO_LARGE_431 -> "fault.too-long";
                case HttpStatus.SERVICE_UNAVAILABLE_503 -> "fault.stopping";
                default -> HttpStatus.isServerError(code) ? "fault.ours" : "fault.unreadable";
            };
            String said = web.texts().of(words);
            // Where the request could not be read to its end, nobody knows whether a browser asked.
            String accepted = request.getHeaders().get(HttpHeader.ACCEPT);
            boolean page = accepted == null || accepted.contains("text/html");
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, (page ? "text/html" : "text/plain") + "; charset=utf-8");
            Content.Sink.write(response, true, page ? web.unread(said) : said + "\n", callback);
        }
    }

    /** The status for a request that could not be read, such as a form cut short; none where the fault is ours. */
    private static OptionalInt unreadable(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof HttpException told && told.getCode() >= 400 && told.getCode() < 500) {
                return OptionalInt.of(told.getCode());
            }
        }
        return OptionalInt.empty();
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
        LOG.info("Stopping: no new requests, those under way are finished");
        live.close();
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
