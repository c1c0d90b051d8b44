/** What tests of several packages share. */
@NullMarked
package boardside.engine;

import org.jspecify.annotations.NullMarked;
