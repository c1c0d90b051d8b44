/** What advice is worth in whole games, how exact it is in a second, and how often it sees strengths that are not there. */
@NullMarked
package boardside.bench.tactics;

import org.jspecify.annotations.NullMarked;
