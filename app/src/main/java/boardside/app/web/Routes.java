package boardside.app.web;

import static boardside.app.web.Access.DEVICE;
import static boardside.app.web.Access.EVERYONE;
import static boardside.app.web.Access.HOST;
import static boardside.app.web.Access.LOCAL;
import static boardside.app.web.Route.get;
import static boardside.app.web.Route.post;

import java.util.ArrayList;
import java.util.List;

/** The access table: every route there is, with the one rule that says who may call it. */
final class Routes {
    private Routes() {}

    /** The table in force: in a household devices are let in, in hosted mode accounts sign in; all else is the same. */
    static List<Route> all(Web web, boolean hosted, Live live) {
        List<Route> routes = new ArrayList<>(hosted ? hosted(web) : household(web));
        routes.addAll(common(web, live));
        routes.add(get("/openapi.json", EVERYONE, ctx -> web.answer(ctx, OpenApi.document(hosted))));
        return List.copyOf(routes);
    }

    private static List<Route> household(Web web) {
        PairPage pair = new PairPage(web);
        DevicesPage devices = new DevicesPage(web);
        return List.of(
                get("/pair", EVERYONE, pair::show),
                post("/pair", EVERYONE, pair::pair),
                get("/devices", LOCAL, devices::show),
                post("/devices/{id}/out", LOCAL, devices::shutOut));
    }

    private static List<Route> hosted(Web web) {
        SignInPage signIn = new SignInPage(web);
        TicketPage ticket = new TicketPage(web);
        AccountPage account = new AccountPage(web);
        AccountsPage accounts = new AccountsPage(web);
        return List.of(
                get("/sign-in", EVERYONE, signIn::show),
                post("/sign-in", EVERYONE, signIn::signIn),
                get("/invitation/{ticket}", EVERYONE, ticket::invitation),
                post("/invitation/{ticket}", EVERYONE, ticket::take),
                get("/reset/{ticket}", EVERYONE, ticket::reset),
                post("/reset/{ticket}", EVERYONE, ticket::setPassword),
                get("/account", DEVICE, account::show),
                post("/account/password", DEVICE, account::changePassword),
                post("/account/sign-out", DEVICE, account::signOut),
                post("/account/sign-out-everywhere", DEVICE, account::signOutEverywhere),
                post("/account/logins/{login}/out", DEVICE, account::end),
                get("/account/players/{player}/log.csv", DEVICE, account::log),
                get("/account/players/{player}/all.jsonl", DEVICE, account::all),
                get("/account/delete", DEVICE, account::askToDelete),
                post("/account/delete", DEVICE, account::delete),
                get("/accounts", HOST, accounts::show),
                post("/accounts/invite", HOST, accounts::invite),
                post("/accounts/invitations/{ticket}/withdraw", HOST, accounts::withdraw),
                post("/accounts/{account}/role", HOST, accounts::role),
                post("/accounts/{account}/close", HOST, accounts::close),
                post("/accounts/{account}/open", HOST, accounts::open),
                post("/accounts/{account}/reset", HOST, accounts::reset),
                post("/accounts/{account}/sign-out", HOST, accounts::signOut));
    }

    private static List<Route> common(Web web, Live live) {
        PlaybookPage playbook = new PlaybookPage(web);
        PlanPage plan = new PlanPage(web, playbook);
        GoalsPage goals = new GoalsPage(web);
        CoachPage coach = new CoachPage(web, plan, goals);
        Nights nights = new Nights(web);
        HomePage home = new HomePage(web, plan, nights);
        StartPage start = new StartPage(web);
        LeaguesPage leagues = new LeaguesPage(web, nights);
        SeasonPage season = new SeasonPage(web, leagues);
        FixturePage fixture = new FixturePage(web, leagues, nights);
        RunPage run = new RunPage(web, nights, plan);
        ChallengePage challenge = new ChallengePage(web);
        CalendarPage calendar = new CalendarPage(web);
        BestsPage bests = new BestsPage(web);
        CardPage card = new CardPage(web);
        SummaryPage summary = new SummaryPage(web, plan);
        FormPage form = new FormPage(web);
        ComparePage compare = new ComparePage(web);
        ForecastsPage forecasts = new ForecastsPage(web);
        SpreadPage spread = new SpreadPage(web);
        JournalPage journal = new JournalPage(web);
        PlayersPage players = new PlayersPage(web);
        BagsPage bags = new BagsPage(web);
        BoardsPage boards = new BoardsPage(web);
        MorePage more = new MorePage(web);
        ThrowsPage throwing = new ThrowsPage(web);
        SlidesPage slides = new SlidesPage(web);
        WatchPage watching = new WatchPage(web);
        OddsPage odds = new OddsPage(web);
        TriesStart tries = new TriesStart(web);
        RatesPage rates = new RatesPage(web);
        SituationsPage situations = new SituationsPage(web);
        TrialsPage trials = new TrialsPage(web);
        TrialPage trial = new TrialPage(web);
        AdvisePage advise = new AdvisePage(web);
        ReportsPage reports = new ReportsPage(web);
        WithoutNetwork without = new WithoutNetwork(web);
        List<Route> routes = new ArrayList<>(SeasonRoutes.all(web, nights, live));
        routes.addAll(List.of(
                get("/static/<file>", EVERYONE, web.files()::serve),
                get("/worker.js", EVERYONE, without::worker),
                get("/offline", EVERYONE, without::offline),
                get("/throw", DEVICE, without::boards),
                get("/players", DEVICE, players::list),
                post("/players", DEVICE, players::add),
                get("/players/new", DEVICE, players::blank),
                get("/players/{id}", DEVICE, players::edit),
                post("/players/{id}", DEVICE, players::save),
                post("/players/{id}/choose", DEVICE, players::choose),
                get("/bags", DEVICE, bags::list),
                post("/bags", DEVICE, bags::add),
                get("/bags/new", DEVICE, bags::blank),
                get("/bags/{id}", DEVICE, bags::edit),
                post("/bags/{id}", DEVICE, bags::save),
                get("/boards", DEVICE, boards::list),
                post("/boards", DEVICE, boards::add),
                get("/boards/new", DEVICE, boards::blank),
                get("/boards/{id}", DEVICE, boards::edit),
                post("/boards/{id}", DEVICE, boards::save),
                get("/more", DEVICE, more::show),
                post("/look", DEVICE, more::look),
                get("/help", DEVICE, more::help),
                get("/glossary", DEVICE, more::glossary),
                get("/style", DEVICE, new StylePage(web)::show),
                get("/safety", DEVICE, more::safety),
                get("/", DEVICE, home::show),
                get("/start/placement", DEVICE, tries::placement),
                get("/start/situation", DEVICE, tries::situation),
                post("/runs/tries", DEVICE, tries::start),
                get("/rates/placement", DEVICE, rates::placement),
                get("/rates/situation", DEVICE, rates::situation),
                get("/advise", DEVICE, advise::show),
                get("/advise/shots", DEVICE, advise::shots),
                get("/playbook", DEVICE, playbook::show),
                get("/situations", DEVICE, situations::list),
                post("/situations", DEVICE, situations::take),
                get("/situations/new", DEVICE, situations::blank),
                get("/situations/{id}", DEVICE, situations::edit),
                get("/situations/{id}/file", DEVICE, situations::file),
                get("/start/trial", DEVICE, trials::list),
                get("/trials", DEVICE, trials::list),
                post("/trials", DEVICE, trials::add),
                get("/trials/new", DEVICE, trials::blank),
                post("/trials/take", DEVICE, trials::take),
                get("/trials/{trial}", DEVICE, trial::show),
                get("/trials/{trial}/file", DEVICE, trial::file),
                post("/trials/{trial}/throw", DEVICE, trial::start),
                post("/trials/{trial}/state", DEVICE, trial::set),
                post("/trials/{trial}/name", DEVICE, trial::rename),
                post("/trials/{trial}/delete", DEVICE, trial::delete),
                post("/trials/{trial}/restore", DEVICE, trial::restore),
                get("/start/{drill}", DEVICE, start::show),
                post("/runs", DEVICE, start::start),
                get("/runs/{id}", DEVICE, run::show),
                get("/runs/{id}/summary", DEVICE, summary::show),
                get("/form", DEVICE, form::show),
                get("/form/forecasts", DEVICE, forecasts::show),
                get("/compare", DEVICE, compare::show),
                get("/spread", DEVICE, spread::show),
                get("/journal", DEVICE, journal::show),
                get("/journal/runs/{id}", DEVICE, journal::run),
                post("/journal/runs/{id}", DEVICE, journal::editRun),
                post("/journal/runs/{id}/delete", DEVICE, journal::deleteRun),
                post("/journal/sessions/{id}", DEVICE, journal::editSession),
                post("/journal/changes/{change}/undo", DEVICE, journal::undo),
                get("/odds", DEVICE, odds::show),
                get("/plan", DEVICE, plan::show),
                post("/plan", DEVICE, plan::make),
                post("/plan/{plan}/close", DEVICE, plan::close),
                post("/plan/{plan}/blocks/{place}/start", DEVICE, plan::start),
                post("/plan/{plan}/blocks/{place}/swap", DEVICE, plan::swap),
                get("/goals", DEVICE, goals::show),
                post("/goals", DEVICE, goals::set),
                post("/goals/{goal}/drop", DEVICE, goals::drop),
                get("/coach", DEVICE, coach::show),
                post("/coach/grant", DEVICE, coach::grant),
                post("/coach/revoke", DEVICE, coach::revoke),
                get("/coach/{shared}", DEVICE, coach::see),
                get("/challenge", DEVICE, challenge::show),
                post("/challenge", DEVICE, challenge::take),
                get("/calendar", DEVICE, calendar::show),
                get("/bests", DEVICE, bests::show),
                get("/runs/{id}/card", DEVICE, card::run),
                get("/runs/{id}/card.svg", DEVICE, card::runSvg),
                get("/days/{day}/card", DEVICE, card::day),
                get("/days/{day}/card.svg", DEVICE, card::daySvg),
                get("/leagues", DEVICE, leagues::list),
                post("/leagues", DEVICE, leagues::add),
                get("/leagues/new", DEVICE, leagues::blank),
                get("/leagues/{league}", DEVICE, leagues::show),
                get("/leagues/{league}/ending", DEVICE, season::show),
                get("/leagues/{league}/settings", DEVICE, leagues::edit),
                post("/leagues/{league}/settings", DEVICE, leagues::save),
                post("/leagues/{league}/delete", DEVICE, leagues::delete),
                post("/leagues/{league}/restore", DEVICE, leagues::restore),
                post("/leagues/{league}/paste", DEVICE, leagues::paste),
                post("/leagues/{league}/changes/{change}/undo", DEVICE, leagues::undo),
                get("/leagues/{league}/fixtures/{fixture}", DEVICE, fixture::show),
                post("/leagues/{league}/fixtures/{fixture}", DEVICE, fixture::save),
                post("/leagues/{league}/fixtures/{fixture}/throw", DEVICE, fixture::start),
                post("/leagues/{league}/fixtures/{fixture}/delete", DEVICE, fixture::delete),
                get("/reports", DEVICE, reports::list),
                get("/reports/{kind}", DEVICE, reports::show),
                get("/reports/{kind}/paper", DEVICE, reports::paper),
                get("/throws", DEVICE, throwing::show),
                get("/throws/watch", DEVICE, watching::show),
                get("/slides", DEVICE, slides::list),
                post("/slides", DEVICE, slides::keep),
                get("/slides/{test}", DEVICE, slides::show),
                post("/slides/{test}/delete", DEVICE, slides::delete),
                post("/slides/{test}/changes/{change}/undo", DEVICE, slides::undo),
                post("/api/outbox", DEVICE, run::receive),
                get("/api/token", DEVICE, run::token)));
        return List.copyOf(routes);
    }
}
