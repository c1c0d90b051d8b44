/** Who may do what: the devices of the house that were let in by a pairing code. */
@NullMarked
package boardside.app.account;

import org.jspecify.annotations.NullMarked;
