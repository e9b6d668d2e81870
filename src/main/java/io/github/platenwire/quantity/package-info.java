/**
 * Units, rounding and uncertainty as plain values: what a number of the trade means and how it is
 * written down. No I/O, no clocks, no knowledge of any test method.
 */
@NullMarked
package io.github.platenwire.quantity;

import org.jspecify.annotations.NullMarked;
