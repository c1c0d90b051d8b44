/** What is kept of seasons that are run here, beside the engine's own values: settings and changes as they are stored. */
@NullMarked
package boardside.app.season;

import org.jspecify.annotations.NullMarked;
