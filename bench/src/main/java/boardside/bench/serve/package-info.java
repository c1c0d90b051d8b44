/** The whole program under load, from outside: started by its own launcher and asked over HTTP. */
@NullMarked
package boardside.bench.serve;

import org.jspecify.annotations.NullMarked;
