/** What is recorded: players, bag sets, sessions, runs, rounds and lines, as plain values. No SQL, no HTTP. */
@NullMarked
package boardside.app.practice;

import org.jspecify.annotations.NullMarked;
