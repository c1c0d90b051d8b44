/** Pictures: SVG that serves page and print alike. */
@NullMarked
package boardside.app.report;

import org.jspecify.annotations.NullMarked;
