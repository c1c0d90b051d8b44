/** What the plan is held against. */
@NullMarked
package boardside.bench.plan;

import org.jspecify.annotations.NullMarked;
