/**
 * What a test of one kind demands and computes: geometry, bands, checks, results, and the running
 * of the live analysis. Bands and limits are data out of {@code config/methods}. No I/O, no clocks.
 */
@NullMarked
package io.github.platenwire.method;

import org.jspecify.annotations.NullMarked;
