package io.github.platenwire.audit;

/**
 * What a check says of itself. Immutable.
 *
 * @param severity how much its findings weigh
 * @param meaning what a finding means, one sentence for a lab manager
 * @param advice what to do about it, one or two sentences
 */
public record CheckText(Severity severity, String meaning, String advice) {}
