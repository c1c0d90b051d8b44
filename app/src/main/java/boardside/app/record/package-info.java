/** The life of sessions and runs: starting, recording, correcting, undoing, reading. What every edge (web, cli, transfer) calls. */
@NullMarked
package boardside.app.record;

import org.jspecify.annotations.NullMarked;
