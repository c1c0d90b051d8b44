/** What several concepts need of linear algebra. */
@NullMarked
package boardside.engine.linear;

import org.jspecify.annotations.NullMarked;
