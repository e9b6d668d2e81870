package io.github.platenwire.device;

import java.util.Optional;

/**
 * A field as it is defined, before its place in the layout is known. Immutable.
 *
 * @param name its name
 * @param step what matches it; empty for a text, whose end depends on what follows it
 * @param width bytes that it takes up, or 0 if that varies
 */
record FieldDraft(String name, Optional<Step> step, int width) {}
