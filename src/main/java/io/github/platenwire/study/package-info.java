/**
 * What can be said after a week of breaking, and how surely: the plan with its due breaks, and
 * series, ratios, gain with age, crack widths and fronts, each figure with its interval and its way
 * back to record and row. The lab folder is only read; there is no text layout and no clock here.
 */
@NullMarked
package io.github.platenwire.study;

import org.jspecify.annotations.NullMarked;
