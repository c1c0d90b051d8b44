/** What whoever runs the program watches it by: figures and logs. Knows nothing of what is recorded. */
@NullMarked
package boardside.app.watch;

import org.jspecify.annotations.NullMarked;
