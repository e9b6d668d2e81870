package io.github.platenwire.port;

/**
 * A serial port as the system lists it. Immutable.
 *
 * @param path what opens it
 * @param description what the system knows of it, perhaps no more than its name
 * @param place where it is plugged in, as the system says it; empty if unknown
 */
public record ListedPort(String path, String description, String place) {}
