package boardside.app.web;

import static boardside.app.web.Access.DEVICE;
import static boardside.app.web.Access.EVERYONE;
import static boardside.app.web.Access.ORGANISER;
import static boardside.app.web.Route.get;
import static boardside.app.web.Route.post;

import java.util.List;

/** The part of the access table that is about seasons run here. */
final class SeasonRoutes {
    private SeasonRoutes() {}

    static List<Route> all(Web web, Nights nights, Live live) {
        Hosted hosted = new Hosted(web);
        HostedDeskPage desk = new HostedDeskPage(web, hosted);
        HostedSettingsPage settings = new HostedSettingsPage(web, hosted);
        HostedMatchPage match = new HostedMatchPage(web, hosted);
        HostedPlayersPage players = new HostedPlayersPage(web, hosted);
        HostedPublicPage open = new HostedPublicPage(web, hosted);
        HostedEndingPage ending = new HostedEndingPage(web, hosted);
        HostedMinePage mine = new HostedMinePage(web, hosted, nights);
        HostedOrganisersPage organisers = new HostedOrganisersPage(web, hosted);
        LivePage watched = new LivePage(web, hosted, live);
        return List.of(
                // What players say of their own matches; whose they are is checked there.
                get("/seasons/mine", DEVICE, mine::list),
                get("/seasons/{season}/mine/{match}", DEVICE, mine::show),
                post("/seasons/{season}/mine/{match}", DEVICE, mine::tell),
                post("/seasons/{season}/mine/{match}/throw", DEVICE, mine::start),
                post("/seasons/{season}/mine/{match}/rounds", DEVICE, mine::typed),
                post("/seasons/{season}/mine/{match}/stream", DEVICE, mine::stream),
                post("/seasons/{season}/mine/{match}/confirm", DEVICE, mine::confirm),
                post("/seasons/{season}/mine/{match}/dispute", DEVICE, mine::dispute),
                get("/seasons", ORGANISER, desk::list),
                post("/seasons", ORGANISER, settings::add),
                get("/seasons/new", ORGANISER, settings::blank),
                get("/seasons/{season}", ORGANISER, desk::show),
                get("/seasons/{season}/settings", ORGANISER, settings::edit),
                post("/seasons/{season}/settings", ORGANISER, settings::save),
                post("/seasons/{season}/delete", ORGANISER, settings::delete),
                post("/seasons/{season}/restore", ORGANISER, settings::restore),
                post("/seasons/{season}/play-off", ORGANISER, desk::startPlayOff),
                post("/seasons/{season}/head-starts", ORGANISER, desk::fairHeadStarts),
                post("/seasons/{season}/changes/{change}/undo", ORGANISER, desk::undo),
                get("/seasons/{season}/organisers", ORGANISER, organisers::show),
                post("/seasons/{season}/organisers", ORGANISER, organisers::change),
                get("/seasons/{season}/players", ORGANISER, players::show),
                post("/seasons/{season}/players", ORGANISER, players::join),
                post("/seasons/{season}/players/{entrant}", ORGANISER, players::rename),
                post("/seasons/{season}/players/{entrant}/leave", ORGANISER, players::leave),
                post("/seasons/{season}/players/{entrant}/account", ORGANISER, players::link),
                get("/seasons/{season}/matches/{match}", ORGANISER, match::show),
                post("/seasons/{season}/matches/{match}", ORGANISER, match::tell),
                post("/seasons/{season}/matches/{match}/round", ORGANISER, match::round),
                post("/seasons/{season}/matches/{match}/confirm", ORGANISER, match::confirm),
                post("/seasons/{season}/matches/{match}/reopen", ORGANISER, match::reopen),
                post("/seasons/{season}/matches/{match}/dispute", ORGANISER, match::dispute),
                post("/seasons/{season}/matches/{match}/forfeit", ORGANISER, match::forfeit),
                post("/seasons/{season}/matches/{match}/extend", ORGANISER, match::extend),
                post("/seasons/{season}/matches/{match}/substitute", ORGANISER, match::substitute),
                post("/seasons/{season}/matches/{match}/head-start", ORGANISER, match::headStart),
                post("/seasons/{season}/matches/{match}/note", ORGANISER, match::note),
                // Whether a season is open to everybody is said by the season: see Hosted.visible.
                get("/seasons/{season}/table", EVERYONE, open::show),
                get("/seasons/{season}/ending", EVERYONE, ending::show),
                get("/seasons/{season}/matches/{match}/live", EVERYONE, watched::show),
                get("/seasons/{season}/matches/{match}/live/events", EVERYONE, watched::events),
                get("/seasons/{season}/matches/{match}/live/overlay", EVERYONE, watched::overlay),
                get("/seasons/{season}/matches/{match}/live.json", EVERYONE, watched::json),
                get("/seasons/{season}/results.csv", EVERYONE, open::csv),
                get("/seasons/{season}/results.json", EVERYONE, open::json),
                get("/seasons/{season}/calendar.ics", EVERYONE, open::calendar),
                get("/seasons/{season}/players/{entrant}/calendar.ics", EVERYONE, open::playerCalendar));
    }
}
