package io.github.platenwire.terminal;

/**
 * Where something of a test is kept.
 *
 * @param label what it is, such as {@code raw file}
 * @param path where, as the operator would type it
 */
public record Place(String label, String path) {}
