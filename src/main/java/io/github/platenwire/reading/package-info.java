/**
 * What one reading is, and the clocks it is stamped with. No I/O and no meaning: whether a reading
 * is a peak or a crack is for the packages above.
 */
@NullMarked
package io.github.platenwire.reading;

import org.jspecify.annotations.NullMarked;
