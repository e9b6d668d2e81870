/** A disk that fails, forgets and is slow, for tests of what must survive that. */
@NullMarked
package io.github.platenwire.faults;

import org.jspecify.annotations.NullMarked;
