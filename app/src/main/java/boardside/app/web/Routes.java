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
        SummaryPage summary = new SummaryPage(web);
        FormPage form = new FormPage(web);
        JournalPage journal = new JournalPage(web);
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
                get("/runs/{id}/summary", DEVICE, summary::show),
                get("/form", DEVICE, form::show),
                get("/journal", DEVICE, journal::show),
                get("/journal/runs/{id}", DEVICE, journal::run),
                post("/journal/runs/{id}", DEVICE, journal::editRun),
                post("/journal/runs/{id}/delete", DEVICE, journal::deleteRun),
                post("/journal/sessions/{id}", DEVICE, journal::editSession),
                post("/journal/changes/{change}/undo", DEVICE, journal::undo),
                post("/api/outbox", DEVICE, run::receive),
                get("/api/token", DEVICE, run::token));
    }
}
