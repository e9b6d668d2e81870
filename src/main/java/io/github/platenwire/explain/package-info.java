/**
 * Where a figure of a record comes from, in words and numbers that a client can follow at the
 * counter. Computes a record again and tells of it; never changes anything.
 */
@NullMarked
package io.github.platenwire.explain;

import org.jspecify.annotations.NullMarked;
