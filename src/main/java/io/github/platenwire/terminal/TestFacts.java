package io.github.platenwire.terminal;

/**
 * What stays the same on the screen while a test runs.
 *
 * @param specimen its name
 * @param series what it is a companion in; may be empty
 * @param rig the rig's name
 * @param fileName the raw file's name, without its folder
 */
public record TestFacts(String specimen, String series, String rig, String fileName) {}
