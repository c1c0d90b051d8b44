/** How recorded values are written as JSON: one mapper for the store, the web, the command line and transfers. */
@NullMarked
package boardside.app.json;

import org.jspecify.annotations.NullMarked;
