package io.github.platenwire.report;

import java.util.Optional;

/** A list of what is what: a label on the left, its words on the right. Not thread-safe. */
public final class Facts {
  private final StringBuilder rows = new StringBuilder();

  /** An empty list. */
  public Facts() {}

  /** Adds a line. */
  public Facts add(String label, Inline words) {
    rows.append("<tr><th scope=\"row\">").append(Markup.escape(label)).append("</th><td>");
    rows.append(words.markup()).append("</td></tr>\n");
    return this;
  }

  /** Adds a line of plain words. */
  public Facts add(String label, String words) {
    return add(label, Inline.text(words));
  }

  /** Adds a line if there is something to say. */
  public Facts add(String label, Optional<String> words) {
    words.ifPresent(there -> add(label, there));
    return this;
  }

  String markup() {
    return rows.isEmpty() ? "" : "<table class=\"facts\"><tbody>\n" + rows + "</tbody></table>\n";
  }
}
