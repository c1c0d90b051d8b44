package boardside.app.web;

import boardside.app.account.Devices;
import boardside.app.practice.Failure;
import boardside.app.record.Records;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import io.javalin.Javalin;
import java.time.Clock;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running web app. */
public final class Server implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Server.class);
    private static final long MOST_BYTES = 4L << 20;

    private final Javalin javalin;
    private final ServerOptions options;
    private final int port;

    private Server(Javalin javalin, ServerOptions options, int port) {
        this.javalin = javalin;
        this.options = options;
        this.port = port;
    }

    /**
     * Starts to serve.
     *
     * @throws Failure.BadInput if the port is taken
     */
    public static Server start(Records records, ServerOptions options, Clock clock) {
        Port port = Port.bind(options.port(), options.lan());
        try {
            return start(records, options, clock, port);
        } catch (RuntimeException e) {
            port.release();
            throw e;
        }
    }

    private static Server start(Records records, ServerOptions options, Clock clock, Port port) {
        Devices devices = records.devices();
        Set<String> hosts = new HashSet<>(Set.of("localhost", "127.0.0.1", "[::1]"));
        Guard guard = new Guard(hosts, options.tls() != null, devices);
        TemplateEngine templates = TemplateEngine.createPrecompiled(
                null, ContentType.Html, Server.class.getClassLoader(), "boardside.app.page");
        Web web = new Web(records, templates, Texts.in("en"), guard, options, clock);
        List<Route> routes = Routes.all(web);
        Javalin javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.http.maxRequestSize = MOST_BYTES;
            config.concurrency.useVirtualThreads = false;
            config.jetty.addConnector(port::connector);
            config.jetty.modifyServer(server -> server.setErrorHandler(new PlainErrors()));
            config.routes.before(Guard::headers);
            for (Route route : routes) {
                config.routes.addHttpHandler(route.method(), route.path(), ctx -> {
                    guard.check(ctx, route.access());
                    route.handler().handle(ctx);
                });
            }
            config.routes.exception(Refusal.class, (refusal, ctx) -> web.fault(ctx, refusal.status(), said(refusal)));
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
        return new Server(javalin, options, port.number());
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
        return port;
    }

    /** The address on this machine. */
    public String address() {
        return (options.tls() == null ? "http" : "https") + "://localhost:" + port + "/";
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
