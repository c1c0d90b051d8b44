/** What the skill model says, held against simulated players, and how fast it says it. */
@NullMarked
package boardside.bench.skill;

import org.jspecify.annotations.NullMarked;
