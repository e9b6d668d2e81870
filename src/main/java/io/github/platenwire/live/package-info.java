/**
 * Live analysis as pure state machines: zero, rate, peak, break; alignment of gauges with a load,
 * and the crack they measure. Constant work and no allocation a reading, no clocks, no I/O; the
 * same code runs while a test is recorded and when its figures are computed again.
 */
@NullMarked
package io.github.platenwire.live;

import org.jspecify.annotations.NullMarked;
