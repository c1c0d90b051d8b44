package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Feat;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.League;
import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Session;
import boardside.app.practice.SlideTest;
import boardside.app.practice.Try;
import boardside.app.store.Transaction;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Looks whether what a sound file says makes sense. */
final class Checking {
    private final Transaction rows;
    private final List<String> faults;

    Checking(Transaction rows, List<String> faults) {
        this.rows = rows;
        this.faults = faults;
    }

    void check() {
        Snapshot snapshot = new Snapshot(rows);
        for (Player player : snapshot.players()) {
            Set<String> bags =
                    snapshot.bags(player.id()).stream().map(BagSet::id).collect(Collectors.toCollection(HashSet::new));
            bags.add("");
            Map<String, Session> sessions =
                    snapshot.sessions(player.id()).stream().collect(Collectors.toMap(Session::id, Function.identity()));
            sessions.values().forEach(session -> moment("session " + session.id(), session.startedAt()));
            snapshot.eachRun(player.id(), run -> run(player.id(), run, bags));
            snapshot.slideTests(player.id()).forEach(test -> slideTest(player.id(), test));
            league(snapshot, player.id());
        }
        snapshot.seasons().forEach(season -> faults.addAll(HostedSeasons.faults(season)));
    }

    private void slideTest(int player, SlideTest test) {
        SlideTest.Tapped tapped = test.tapped();
        if (tapped != null) {
            SlideTestRecording.faults(rows, player, tapped)
                    .forEach(fault -> faults.add("slide test " + test.id() + ": " + fault));
        }
    }

    private void league(Snapshot snapshot, int player) {
        Map<String, League> leagues =
                snapshot.leagues(player).stream().collect(Collectors.toMap(League::id, Function.identity()));
        for (Fixture fixture : snapshot.fixtures(player)) {
            League league = leagues.get(fixture.league());
            if (league != null) {
                Leagues.faults(league, fixture).forEach(fault -> faults.add("fixture " + fixture.id() + ": " + fault));
            }
        }
        for (FixtureRun game : snapshot.fixtureRuns(player)) {
            if (rows.runs().find(player, game.run()).isEmpty()) {
                faults.add("fixture " + game.fixture() + ", game " + game.game() + ": there is no run " + game.run());
            }
        }
    }

    private void moment(String where, String text) {
        try {
            Moment.of(text);
        } catch (IllegalArgumentException e) {
            faults.add(where + ": " + e.getMessage());
        }
    }

    private void run(int player, StoredRun stored, Set<String> bags) {
        String where = "run " + stored.run().id();
        moment(where, stored.run().startedAt());
        for (StoredRun.StoredRound one : stored.rounds()) {
            Round round = one.round();
            if (round.bags() > stored.run().drill().mostBags()) {
                faults.add(where + ", round " + round.number() + ": " + round.bags() + " bags of one side, at most "
                        + stored.run().drill().mostBags() + " make sense");
            }
            for (Line line : round.lines()) {
                if (!bags.contains(line.bag())) {
                    faults.add(where + ", round " + round.number() + ": there is no bag set " + line.bag());
                }
            }
        }
        for (Try tried : stored.tries()) {
            Try.Played played = tried.played();
            if (played != null && !bags.contains(played.how().bag())) {
                faults.add(where + ", try " + tried.number() + ": there is no bag set "
                        + played.how().bag());
            }
        }
        List<Round> rounds =
                stored.rounds().stream().map(StoredRun.StoredRound::round).toList();
        if (!rows.tallies().fits(player, stored.run(), rounds)) {
            faults.add(where + ": its sums are not those of its rounds");
        }
        Feat kept = rows.feats().of(player, stored.run().id()).orElse(Feat.NONE);
        if (!kept.equals(Deriving.feat(stored.run(), rounds))) {
            faults.add(where + ": what is kept of its streaks and games is not what its rounds say");
        }
    }
}
