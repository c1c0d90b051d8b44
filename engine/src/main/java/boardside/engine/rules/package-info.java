/**
 * The game as rules: where bags can end, how a round adds up, how two rounds cancel, when a game is over and who throws
 * first, with the words for what may change from throw to throw. Chances live in {@code boardside.engine.odds}.
 */
@NullMarked
package boardside.engine.rules;

import org.jspecify.annotations.NullMarked;
