package io.github.platenwire.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Collects the findings of one part of an audit. Not thread-safe. */
final class Findings {
  private final List<Finding> list = new ArrayList<>();

  void add(Finding finding) {
    list.add(finding);
  }

  void add(Check check, Location location, String expected, String seen) {
    add(new Finding(check, location, Optional.empty(), expected, seen));
  }

  void add(Check check, Location location, String test, String expected, String seen) {
    add(new Finding(check, location, Optional.of(test), expected, seen));
  }

  List<Finding> list() {
    return List.copyOf(list);
  }
}
