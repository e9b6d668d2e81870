package io.github.platenwire.audit;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Every check there is. Stateless. */
public final class Checks {
  private Checks() {}

  /** All of them, part by part as an audit goes through an archive. */
  public static List<Check> all() {
    return Stream.<Check[]>of(
            RawCheck.values(),
            SummaryVersionCheck.values(),
            RegisterLineCheck.values(),
            TestCheck.values(),
            TraceCheck.values(),
            EntryCheck.values())
        .flatMap(Arrays::stream)
        .toList();
  }
}
