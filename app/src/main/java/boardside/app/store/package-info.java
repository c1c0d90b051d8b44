/** SQL: opens and migrates the database and maps rows to values of {@code boardside.app.practice}. Nothing outside {@code boardside.app.record} calls it. */
@NullMarked
package boardside.app.store;

import org.jspecify.annotations.NullMarked;
