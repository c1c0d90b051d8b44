/** The log as CSV and JSON Lines, backup and restore. */
@NullMarked
package boardside.app.transfer;

import org.jspecify.annotations.NullMarked;
