package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.Ids;
import boardside.app.practice.Run;
import boardside.app.season.MatchHead;
import boardside.app.season.MatchId;
import boardside.app.season.MatchMarks;
import boardside.app.season.MatchNight;
import boardside.app.season.MatchRound;
import boardside.app.season.MatchRun;
import boardside.app.season.MatchSide;
import boardside.app.store.Database;
import boardside.app.store.MatchRows;
import boardside.app.store.Signals;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.rules.Finish;
import java.net.URI;
import java.net.URISyntaxException;
import java.time.InstantSource;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Matches of seasons run here as they are thrown. Every method is one transaction. Thread safe. */
public final class MatchNights {
    /** Characters of the longest address of a stream. */
    public static final int LONGEST_ADDRESS = 300;

    /** Matches that may be asked for at once. */
    public static final int MOST_AT_ONCE = MatchRows.MOST_AT_ONCE;

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;

    MatchNights(Database database, InstantSource clock, Ids ids) {
        this.database = database;
        this.clock = clock;
        this.ids = ids;
    }

    /** A match as it is thrown; empty if there is none, or its season was deleted. */
    public Optional<MatchNight> find(String season, String match) {
        MatchId asked = new MatchId(season, match);
        return Optional.ofNullable(find(List.of(asked)).get(asked));
    }

    /** Whether the season of a match is open to everybody; empty if there is no such match, or its season was deleted. */
    public Optional<Boolean> open(MatchId match) {
        return database.ask(rows -> rows.matches().open(match));
    }

    /** Matches as they are thrown, up to {@value #MOST_AT_ONCE} at once, all in one state; those that do not exist are missing. */
    public Map<MatchId, MatchNight> find(Collection<MatchId> matches) {
        return database.read(rows -> rows.matches().nights(matches));
    }

    /**
     * What changes whenever what is shown of a match changes, or who may look; of up to {@value #MOST_AT_ONCE} matches at once.
     * Those that do not exist are missing.
     */
    public Map<MatchId, String> stamps(Collection<MatchId> matches) {
        return database.read(rows -> rows.matches().stamps(matches));
    }

    /** That of a match that was read. */
    public static String stamp(MatchNight night) {
        return MatchRows.stamp(night.version(), night.head().open());
    }

    /** How rounds came in, by match, of a season's matches that have any. */
    public Map<String, MatchMarks> marks(String season) {
        return database.read(rows -> rows.matches().marks(season));
    }

    /** Rounds in the matches of a stage of a season, counted. */
    public int rounds(Season season, SeasonMatch.Stage stage) {
        Map<String, MatchMarks> marks = marks(season.id());
        return season.matches(stage).stream()
                .map(match -> marks.get(match.id()))
                .filter(Objects::nonNull)
                .mapToInt(mark -> mark.live() + mark.late() + mark.typed())
                .sum();
    }

    /** The game that a player's run is thrown for; empty where it is for no match. */
    public Optional<MatchRun> ofRun(int player, String run) {
        return database.read(rows -> rows.matches().ofRun(player, run));
    }

    /** A player's own games of a match, as thrown here; the fixture is the match. */
    public List<FixtureRun> thrown(int player, String season, String match) {
        return database.read(rows -> rows.matches().runs(season, match).stream()
                .filter(of -> of.player() == player)
                .flatMap(of -> rows.runs().find(player, of.run()).filter(run -> !run.deleted()).stream()
                        .map(run -> thrown(of, run)))
                .toList());
    }

    private static FixtureRun thrown(MatchRun of, Run run) {
        return new FixtureRun(
                of.match(), of.game(), run.id(), run.sum().rounds(), run.sum().points(), !run.open());
    }

    /**
     * Sets where a side of a match shows itself throwing; empty for nowhere.
     *
     * @throws Failure.BadInput if it is no https address
     */
    public void stream(String season, String match, MatchSide side, String typed) {
        String address = typed.isBlank() ? "" : address(typed.strip());
        database.write(rows -> {
            if (rows.matches()
                    .head(season, match)
                    .filter(head -> !head.deleted())
                    .isEmpty()) {
                throw new Failure.NotFound("there is no match " + match + " in this season");
            }
            rows.matches().changed(season, match);
            rows.matches().stream(season, match, side, address);
            return match;
        });
    }

    private static String address(String typed) {
        try {
            URI uri = new URI(typed);
            if ("https".equalsIgnoreCase(uri.getScheme())
                    && uri.getHost() != null
                    && uri.getUserInfo() == null
                    && typed.length() <= LONGEST_ADDRESS) {
                return uri.toASCIIString();
            }
        } catch (URISyntaxException e) {
            // Said below.
        }
        throw new Failure.BadInput("the address of a stream begins with https:// and has at most " + LONGEST_ADDRESS
                + " characters; copy it from the browser's address line");
    }

    /**
     * The organiser sets a round right, or with null takes it out; that is logged.
     *
     * @throws Failure.BadInput if the match stands as it is, or there is no such round
     */
    public void correct(String season, String match, int game, MatchSide side, int number, @Nullable Finish finish) {
        database.write(rows -> {
            rows.seasons().hold(season);
            MatchHead head = MatchRecording.changeable(rows, season, match);
            if (!(game >= 1 && game <= head.games() && number >= 1 && number <= head.rounds())) {
                throw new Failure.BadInput("a match of this season has games 1 to " + head.games() + " of rounds 1 to "
                        + head.rounds() + ", not round " + number + " of game " + game);
            }
            new MatchRecording(rows, ids, clock.instant())
                    .correct(head, game, side, number, finish == null ? null : typed(game, side, number, finish));
            return match;
        });
    }

    private MatchRound typed(int game, MatchSide side, int number, Finish finish) {
        return new MatchRound(
                game,
                side,
                number,
                "",
                finish.in(),
                finish.on(),
                finish.off(),
                null,
                clock.instant(),
                MatchRound.Way.TYPED);
    }

    /** Whoever watches matches. Called on threads of others: must not wait. */
    public interface Watcher {
        /** What is shown of a match has changed. */
        void changed(String season, String match);

        /** What is shown of any match of a season may have changed. */
        void changed(String season);

        /** Changes may have gone unheard. */
        void missed();
    }

    /**
     * Tells a watcher of every match that changes from now on, whichever instance over the same PostgreSQL database changes it.
     *
     * @return ends that
     */
    public AutoCloseable watch(Watcher watcher) {
        Signals.Listener listener = new Signals.Listener() {
            @Override
            public void changed(String topic) {
                int space = topic.indexOf(' ');
                if (space > 0 && topic.substring(space + 1).equals(MatchRows.ALL)) {
                    watcher.changed(topic.substring(0, space));
                } else if (space > 0) {
                    watcher.changed(topic.substring(0, space), topic.substring(space + 1));
                }
            }

            @Override
            public void missed() {
                watcher.missed();
            }
        };
        database.signals().listen(listener);
        return () -> database.signals().leave(listener);
    }
}
