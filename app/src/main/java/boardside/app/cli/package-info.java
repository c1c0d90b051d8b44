/** The {@code boardside} command: one class a subcommand, each calling what the page calls. */
@NullMarked
package boardside.app.cli;

import org.jspecify.annotations.NullMarked;
