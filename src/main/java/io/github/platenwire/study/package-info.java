/**
 * What can be said after a week of breaking, and how surely: series, ratios, gain with age, crack
 * widths and fronts, each figure with its interval. Plain values in, plain values out: no I/O, no
 * clocks, and nobody else's statistics file is read here.
 */
@NullMarked
package io.github.platenwire.study;

import org.jspecify.annotations.NullMarked;
