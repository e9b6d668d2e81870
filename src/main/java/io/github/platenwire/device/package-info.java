/**
 * What the bytes of a device mean: definitions in TOML, and decoders that make frames and values
 * out of any split of the bytes. Called by the recorder and by whoever decodes a record again;
 * never opens a port or a file of its own accord.
 */
@NullMarked
package io.github.platenwire.device;

import org.jspecify.annotations.NullMarked;
