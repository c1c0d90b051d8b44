/** Pages and the interface the phone talks to. Handlers parse, call {@code boardside.app.record} or the engine once, and show. */
@NullMarked
package boardside.app.web;

import org.jspecify.annotations.NullMarked;
