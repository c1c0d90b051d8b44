/** What the fuzzing of parsers shares. A target is a class {@code ...Fuzz} beside the parser; docs/testing.md tells how it is run. */
@NullMarked
package boardside.app.fuzz;

import org.jspecify.annotations.NullMarked;
