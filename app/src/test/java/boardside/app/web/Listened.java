package boardside.app.web;

import boardside.app.record.Records;
import boardside.app.watch.Metrics;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/**
 * The routes over a store, with an ear at what handlers ask of a request: which fields of the address and of the form each of
 * them reads by name.
 */
final class Listened implements AutoCloseable {
    private static final Set<String> QUERY = Set.of("queryParam", "queryParams");
    private static final Set<String> FORM = Set.of("formParam", "formParams", "uploadedFile");

    private final Javalin javalin;
    private final ExecutorService answers = Executors.newSingleThreadExecutor();
    private final ExecutorService aside = Executors.newSingleThreadExecutor();
    private final List<Route> routes;

    /** Names read, by route ("GET /odds"); those of the address begin with a question mark. */
    private final Map<String, Set<String>> read = new TreeMap<>();

    Listened(Records records, ServerOptions options) {
        this(records, options, 0);
    }

    /** The same where what is worked out beside the requests begins late, as on a busy machine. */
    Listened(Records records, ServerOptions options, int lateMillis) {
        House house = new House(records.devices(), Network.NONE, "http", 0, options.hosting());
        Guard guard = new Guard(Network.NONE, options, records.devices(), records.signIns(), Guard::overLoopback);
        TemplateEngine templates = TemplateEngine.createPrecompiled(
                null, ContentType.Html, Server.class.getClassLoader(), "boardside.app.page");
        Web web = new Web(
                records,
                templates,
                Texts.in("en"),
                guard,
                house,
                options,
                Clock.systemDefaultZone(),
                late(answers, lateMillis),
                late(aside, lateMillis),
                new Metrics("test"));
        routes = Routes.all(web, options.hosted(), new Live(records.matchNights()));
        javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.concurrency.useVirtualThreads = false;
            for (Route route : routes) {
                config.routes.addHttpHandler(route.method(), route.path(), ctx -> {
                    guard.check(ctx, route.access());
                    route.handler().handle(heard(ctx, route.method() + " " + route.path()));
                });
            }
            config.routes.exception(Refusal.class, web::refuse);
            config.routes.exception(Exception.class, (fault, ctx) -> web.fault(ctx, 400, String.valueOf(fault)));
        });
        javalin.start("127.0.0.1", 0);
    }

    private static Executor late(ExecutorService workers, int millis) {
        return millis == 0 ? workers : CompletableFuture.delayedExecutor(millis, TimeUnit.MILLISECONDS, workers);
    }

    private Context heard(Context ctx, String route) {
        return (Context) Proxy.newProxyInstance(
                Context.class.getClassLoader(), new Class<?>[] {Context.class}, (proxy, method, given) -> {
                    if (QUERY.contains(method.getName())) {
                        hear(route, "?" + given[0]);
                    } else if (FORM.contains(method.getName())) {
                        hear(route, String.valueOf(given[0]));
                    }
                    try {
                        return method.invoke(ctx, given);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    private synchronized void hear(String route, String name) {
        read.computeIfAbsent(route, made -> new TreeSet<>()).add(name);
    }

    int port() {
        return javalin.port();
    }

    List<Route> routes() {
        return routes;
    }

    synchronized Map<String, Set<String>> read() {
        return new TreeMap<>(read);
    }

    @Override
    public void close() {
        javalin.stop();
        answers.shutdownNow();
        aside.shutdownNow();
    }
}
