/**
 * What several packages ask of statistics: lines through points, Student's t, quotients with their
 * interval. Plain values in, plain values out; nothing of specimens, records or words lives here.
 */
@NullMarked
package io.github.platenwire.statistics;

import org.jspecify.annotations.NullMarked;
