package boardside.app.practice;

import boardside.engine.rules.Drill;
import boardside.engine.tactics.Position;
import org.jspecify.annotations.Nullable;

/**
 * Something a client asks to be stored. Every one may be repeated: applying it twice is applying it once, and an older
 * one that arrives late changes nothing.
 */
public sealed interface Operation {
    /** The client's id of this operation: UUIDv7, so that later ones sort later. */
    String op();

    /** Names a bag set; nothing happens if the id exists. */
    record NameBag(String op, String bag, String name) implements Operation {}

    /**
     * Starts a run (and its session, if new); nothing happens if the run exists.
     *
     * @param run id of the run, UUIDv7
     * @param session id of the session
     * @param startedAt ISO-8601 with offset
     */
    record StartRun(
            String op,
            String run,
            String session,
            Drill drill,
            String startedAt,
            boolean warmUp,
            String opponent,
            @Nullable Integer target,
            @Nullable Integer game,
            Setup setup)
            implements Operation {}

    /**
     * Sets one side's round, new or corrected; without lines, takes it back. The round's own {@code op} is this
     * operation's.
     */
    record PutRound(String run, Round round) implements Operation {
        @Override
        public String op() {
            return round.op();
        }
    }

    /** Sets one try, new or corrected; without what was played, takes it back. */
    record PutTry(String op, String run, int number, Try.@Nullable Played played) implements Operation {
        /** The try as it is to be. */
        public Try tried() {
            return new Try(number, op, played);
        }
    }

    /** Keeps a situation, new or changed; retired, it is no longer offered. */
    record KeepSituation(String op, String situation, String name, Position position, boolean retired)
            implements Operation {}

    /** Keeps a slide test, new or corrected; without what was tapped, deletes it. */
    record KeepSlideTest(String op, String test, SlideTest.@Nullable Tapped tapped) implements Operation {}

    /** Keeps how the run is set up now, for the rounds to come and for the next run. */
    record ChangeSetup(String op, String run, Setup setup) implements Operation {}

    /** Keeps a game's final score as it was told; null takes it back. */
    record ScoreRun(String op, String run, Run.@Nullable Score score) implements Operation {}

    /** Closes a run at an instant, ISO-8601 with offset. */
    record FinishRun(String op, String run, String at) implements Operation {}

    /** Opens a closed run again, to throw on. */
    record ReopenRun(String op, String run) implements Operation {}

    /** Says that a run is thrown for a trial; the run starts before. */
    record ThrowTrial(String op, String trial, String run) implements Operation {}

    /**
     * Says that a block of a plan is thrown in a run, which starts before; or, without a run, that one without a drill is done.
     *
     * @param plan id of the plan
     * @param choice of the block, by which it is found where a swap has moved it
     * @param place where it stood, from 0
     * @param run id of the run, or empty
     */
    record TakeBlock(String op, String plan, String choice, int place, String run) implements Operation {}

    /** Says that a run is a game of a league's fixture, numbered from 1; the run starts before. */
    record PlayFixture(String op, String fixture, int game, String run) implements Operation {}

    /**
     * Says that a run is a game of a match of a season that is run here, numbered from 1; the run starts before. From then on
     * the match has the run's rounds.
     */
    record PlayMatch(String op, String season, String match, int game, String run) implements Operation {}
}
