/** What the program does when its machine, its network or its clock fails: recording loads, and what is left of them. See docs/faults.md. */
@NullMarked
package boardside.bench.fault;

import org.jspecify.annotations.NullMarked;
