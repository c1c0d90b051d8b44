package boardside.app.web;

import static boardside.app.web.Access.DEVICE;
import static boardside.app.web.Access.EVERYONE;
import static boardside.app.web.Access.LOCAL;
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
        PairPage pair = new PairPage(web);
        DevicesPage devices = new DevicesPage(web);
        StaticFiles files = new StaticFiles();
        return List.of(
                get("/static/<file>", EVERYONE, files::serve),
                get("/pair", EVERYONE, pair::show),
                post("/pair", EVERYONE, pair::pair),
                get("/devices", LOCAL, devices::show),
                post("/devices/{id}/out", LOCAL, devices::shutOut),
                get("/", DEVICE, home::show),
                get("/start/{drill}", DEVICE, start::show),
                post("/runs", DEVICE, start::start),
                get("/runs/{id}", DEVICE, run::show),
                post("/api/outbox", DEVICE, run::receive),
                get("/api/token", DEVICE, run::token));
    }
}
