package io.github.platenwire.audit;

import java.util.Locale;

/**
 * One thing that an audit looks for. Implemented by enums, one for each part of an archive; all of
 * them stand in {@link Checks} and in {@code src/docs/audit.md}. Immutable.
 */
public interface Check {
  /** The constant's name. */
  String name();

  /** How much its findings weigh. */
  Severity severity();

  /** What a finding means, one sentence for a lab manager. */
  String meaning();

  /** What to do about it, one or two sentences. */
  String advice();

  /** The stable word by which programs know it, such as {@code seal-broken}. */
  default String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
