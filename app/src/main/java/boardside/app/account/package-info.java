/**
 * Who may do what: in a household the devices that were let in by a pairing code, in hosted mode the accounts that sign in.
 * Whether a request may have what it asks for is decided in {@code boardside.app.web.Guard}.
 */
@NullMarked
package boardside.app.account;

import org.jspecify.annotations.NullMarked;
