package boardside.app.practice;

import org.jspecify.annotations.Nullable;

/**
 * A game of a fixture that the player threw here.
 *
 * @param fixture id of the fixture
 * @param game number of the game, 1 or more
 * @param run id of the run
 * @param rounds rounds thrown so far
 * @param points total so far, or null where not all bags were counted
 * @param finished whether the run was closed
 */
public record FixtureRun(
        String fixture,
        int game,
        String run,
        int rounds,
        @Nullable Integer points,
        boolean finished) {}
