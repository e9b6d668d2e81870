/**
 * The raw file and the summary: writing, reading, and the formats themselves, which live here and
 * nowhere else. Called by the recorder and by whoever reads records; decides nothing about a test.
 */
@NullMarked
package io.github.platenwire.record;

import org.jspecify.annotations.NullMarked;
