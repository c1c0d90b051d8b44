package boardside.app.web;

import static boardside.app.web.Access.DEVICE;
import static boardside.app.web.Access.EVERYONE;
import static boardside.app.web.Route.get;
import static boardside.app.web.Route.post;

import java.util.List;

/** The access table: every route there is, with the one rule that says who may call it. */
final class Routes {
    private Routes() {}

    static List<Route> all(Web web) {
        HomePage home = new HomePage(web);
        StartPage start = new StartPage(web);
        RunPage run = new RunPage(web);
        StaticFiles files = new StaticFiles();
        return List.of(
                get("/static/<file>", EVERYONE, files::serve),
                get("/", DEVICE, home::show),
                get("/start/{drill}", DEVICE, start::show),
                post("/runs", DEVICE, start::start),
                get("/runs/{id}", DEVICE, run::show),
                post("/api/outbox", DEVICE, run::receive),
                get("/api/token", DEVICE, run::token));
    }
}
