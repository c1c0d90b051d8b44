/** An invented player's practice, to look at and to measure with. Everybody and everything in it is made up. */
@NullMarked
package boardside.app.demo;

import org.jspecify.annotations.NullMarked;
