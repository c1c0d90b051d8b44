package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.season.MatchEdit;
import boardside.app.season.MatchHead;
import boardside.app.season.MatchRound;
import boardside.app.season.MatchRun;
import boardside.app.season.MatchSide;
import boardside.app.season.SeasonChange.Kind;
import boardside.app.store.MatchRows;
import boardside.app.store.RoundRows;
import boardside.app.store.Transaction;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonChanges;
import boardside.engine.league.season.Voice;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Side;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Writes rounds of matches within one transaction. A round that a player throws goes into the match together with their own
 * record of it; once a side has all rounds of a game, its total is told of the match. While a match is settled, disputed or
 * given away, what is thrown or corrected stays with the player alone.
 */
final class MatchRecording {
    private final Transaction rows;
    private final Ids ids;
    private final Instant now;

    MatchRecording(Transaction rows, Ids ids, Instant now) {
        this.rows = rows;
        this.ids = ids;
        this.now = now;
    }

    /**
     * Says that a run is a game of a match.
     *
     * @return whether that is news
     * @throws IllegalArgumentException if it cannot be
     */
    boolean play(int player, Run run, Operation.PlayMatch play) {
        if (run.drill() != Drill.FIXTURE) {
            throw new IllegalArgumentException("a game of a match is a run of the drill fixture, not of "
                    + run.drill().word());
        }
        if (rows.matches().ofRun(player, run.id()).isPresent()) {
            return false;
        }
        MatchHead head = rows.matches()
                .head(play.season(), play.match())
                .filter(found -> found.side(player) != null)
                .orElseThrow(() -> new IllegalArgumentException("there is no such match of this player"));
        MatchSide side = Objects.requireNonNull(head.side(player));
        if (!head.throwing()) {
            throw new IllegalArgumentException(
                    "the match is settled, disputed or given away; ask the organiser to open it again");
        }
        if (!(play.game() >= 1 && play.game() <= head.games())) {
            throw new IllegalArgumentException(
                    "a match of this season has games 1 to " + head.games() + ", not " + play.game());
        }
        if (!Objects.equals(run.setup().rounds(), head.rounds())) {
            throw new IllegalArgumentException("a game of this season has " + head.rounds() + " rounds");
        }
        if (rows.matches().runs(play.season(), play.match()).stream()
                .anyMatch(other -> other.game() == play.game() && other.side() == side)) {
            throw new IllegalArgumentException("game " + play.game()
                    + " of this match is being thrown in another run; this one stays in the journal");
        }
        MatchRun of = new MatchRun(player, run.id(), play.season(), play.match(), play.game(), side);
        rows.matches().play(of);
        catchUp(of);
        return true;
    }

    /**
     * A round as it is to go into its match.
     *
     * @param round null where it is taken back
     */
    record Checked(Game game, int number, @Nullable MatchRound round) {}

    /**
     * A side of a game of a match as it was read.
     *
     * @param rounds the side's, by number
     */
    record Game(MatchRows.Played played, List<MatchRound> rounds) {
        MatchRun of() {
            return played.of();
        }

        MatchHead head() {
            return played.head();
        }
    }

    private Optional<Game> game(int player, String run) {
        return rows.matches()
                .played(player, run)
                .filter(played -> played.head().throwing())
                .map(played -> new Game(
                        played,
                        rows.matches()
                                .rounds(
                                        played.of().season(),
                                        played.of().match(),
                                        played.of().game(),
                                        played.of().side())));
    }

    /**
     * Looks whether a round of a run can be one of its match; nothing is written.
     *
     * @param ahead how far the clock that stamped it is ahead of ours
     * @return empty where the run is for no match or nothing can be added to it any more, and the round is the player's alone
     * @throws IllegalArgumentException if it cannot be
     */
    Optional<Checked> check(int player, String run, Round round, Duration ahead) {
        return game(player, run).map(game -> check(game, round, ahead));
    }

    private Checked check(Game game, Round round, Duration ahead) {
        if (round.lines().isEmpty()) {
            return new Checked(game, round.number(), null);
        }
        for (Line line : round.lines()) {
            if (line.in() == null || line.on() == null) {
                throw new IllegalArgumentException(
                        "round " + round.number() + " of a match needs all bags counted in, on and off");
            }
        }
        int most = game.head().rounds();
        if (round.number() > most) {
            throw new IllegalArgumentException("round " + round.number()
                    + " cannot be thrown: a game of this season has " + most + " rounds; start the next game for it");
        }
        return new Checked(game, round.number(), round(game, round, ahead));
    }

    /**
     * Puts a round into its match as it was put into its run; without bags, takes it back. Where it makes a total, or takes one
     * back, the season is changed too; whoever changes both takes the season first, and then waits for nobody who waits for it.
     *
     * @param several whether other rounds follow in this transaction, which may make a total
     */
    void put(Checked one, boolean several) {
        Game game = one.game();
        MatchRun of = game.of();
        if (several || game.rounds().size() >= game.head().rounds() - 1) {
            rows.seasons().hold(of.season());
        }
        long version = rows.matches().changed(of.season(), of.match());
        if (version != game.played().version() + 1) {
            // Somebody else changed the match since it was read. Now it stays as it is.
            Optional<Game> again = game(of.player(), of.run())
                    .filter(now -> one.number() <= now.head().rounds());
            if (again.isEmpty()) {
                return;
            }
            game = again.get();
        }
        set(
                game.head(),
                of.game(),
                of.side(),
                one.number(),
                one.round(),
                of.side().voice(),
                game.rounds());
    }

    private MatchRound round(Game game, Round round, Duration ahead) {
        int in = 0;
        int on = 0;
        int off = 0;
        Instant thrown = null;
        for (Line line : round.lines()) {
            in += Objects.requireNonNullElse(line.in(), 0);
            on += Objects.requireNonNullElse(line.on(), 0);
            off += Objects.requireNonNullElse(line.off(), 0);
            if (!line.at().isEmpty()) {
                Instant at = Instant.ofEpochMilli(Moment.of(line.at()).millis()).minus(ahead);
                thrown = at.isAfter(now) ? now : at;
            }
        }
        Instant before = game.rounds().stream()
                .filter(one -> one.number() == round.number() - 1)
                .findFirst()
                .map(MatchRound::thrownAt)
                .orElse(null);
        return new MatchRound(
                game.of().game(),
                game.of().side(),
                round.number(),
                round.op(),
                in,
                on,
                off,
                thrown,
                now,
                MatchRound.way(thrown, now, before));
    }

    /** The organiser sets a round right; null takes it out. The season is held. */
    void correct(MatchHead head, int game, MatchSide side, int number, @Nullable MatchRound round) {
        rows.matches().changed(head.season(), head.match());
        List<MatchRound> rounds = rows.matches().rounds(head.season(), head.match(), game, side);
        set(head, game, side, number, round, Voice.ORGANISER, rounds);
    }

    /** @param rounds the side's, by number, as they are; nobody else can change the match */
    private void set(
            MatchHead head,
            int game,
            MatchSide side,
            int number,
            @Nullable MatchRound round,
            Voice by,
            List<MatchRound> rounds) {
        Optional<MatchRound> found =
                rounds.stream().filter(one -> one.number() == number).findFirst();
        if (found.isEmpty() && round == null
                || found.isPresent() && round != null && found.get().sameBags(round)) {
            return;
        }
        MatchRound before = found.orElse(null);
        if (by == Voice.ORGANISER || before != null && late(head, before)) {
            rows.matches()
                    .keep(
                            head.season(),
                            head.match(),
                            new MatchEdit(
                                    ids.next(),
                                    now.toString(),
                                    by,
                                    game,
                                    side,
                                    number,
                                    before == null ? "" : before.counts(),
                                    round == null ? "" : round.counts()));
        }
        List<MatchRound> after = new ArrayList<>(rounds);
        after.removeIf(one -> one.number() == number);
        if (round == null) {
            rows.matches().remove(head.season(), head.match(), game, side, number);
        } else {
            MatchRound now = before == null ? round : before.withBagsOf(round);
            rows.matches().put(head.season(), head.match(), now);
            after.add(now);
        }
        follow(head, game, side, total(head, rounds), total(head, after), by);
    }

    /** Whether a change of a round that is there comes too late to be part of throwing, or goes against the organiser's word. */
    private boolean late(MatchHead head, MatchRound before) {
        return Duration.between(before.receivedAt(), now).compareTo(MatchRound.GRACE) > 0
                || rows.matches().edits(head.season(), head.match()).stream()
                        .anyMatch(edit -> edit.by() == Voice.ORGANISER
                                && edit.game() == before.game()
                                && edit.side() == before.side()
                                && edit.round() == before.number());
    }

    private static @Nullable Integer total(MatchHead head, List<MatchRound> rounds) {
        return rounds.size() < head.rounds()
                ? null
                : (Integer) rounds.stream().mapToInt(MatchRound::points).sum();
    }

    /** A total follows from its rounds, once all are there; with one taken back, what followed from them is gone too. */
    private void follow(
            MatchHead head, int game, MatchSide side, @Nullable Integer before, @Nullable Integer after, Voice by) {
        if (before == null && after == null) {
            return;
        }
        GameScore score =
                rows.matches().totals(head.season(), head.match(), head.games()).get(game - 1);
        Integer told = side == MatchSide.FIRST ? score.first() : score.second();
        if (after == null ? before != null && before.equals(told) : !after.equals(told)) {
            HostedSeasons.change(
                    rows,
                    ids,
                    now.toString(),
                    head.season(),
                    Kind.RESULT,
                    season -> told(season, head.match(), game, side, after, by));
        }
    }

    private Season told(Season season, String match, int game, MatchSide side, @Nullable Integer total, Voice by) {
        List<GameScore> games = new ArrayList<>();
        for (int number = 1; number <= season.rules().games(); number++) {
            GameScore score = season.match(match).orElseThrow().game(number);
            games.add(
                    number != game
                            ? score
                            : side == MatchSide.FIRST
                                    ? new GameScore(total, score.second())
                                    : new GameScore(score.first(), total));
        }
        return SeasonChanges.told(season, match, games, by, ids::next);
    }

    /** Puts in what was thrown for a match while nothing could be added to it. */
    void catchUp(String season, String match) {
        rows.matches().runs(season, match).forEach(this::catchUp);
    }

    private void catchUp(MatchRun of) {
        for (RoundRows.Stored stored : rows.rounds().counted(of.player(), of.run())) {
            if (stored.round().side() == Side.ME) {
                check(of.player(), of.run(), stored.round(), Duration.ZERO).ifPresent(one -> put(one, true));
            }
        }
    }

    /** The match, as the organiser may change it. */
    static MatchHead changeable(Transaction rows, String season, String match) {
        MatchHead head = rows.matches()
                .head(season, match)
                .filter(found -> !found.deleted())
                .orElseThrow(() -> new Failure.NotFound("there is no match " + match + " in this season"));
        if (head.stands()) {
            throw new Failure.BadInput(
                    "this match stands as it is: a player left the season, or the play-off has begun");
        }
        return head;
    }
}
