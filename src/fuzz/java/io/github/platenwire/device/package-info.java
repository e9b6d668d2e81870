/**
 * Coverage-guided fuzzing of decoders and of the definition reader, run by {@code mvn -P fuzz test}
 * only. The rule of each: decode, mark, or refuse; never throw, never hang, never grow.
 */
package io.github.platenwire.device;
