package io.github.platenwire.device;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/** One piece of a layout as it is written. Immutable. */
sealed interface LayoutPart {
  /** Bytes that must be there. Nobody changes the array. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Literal(byte[] bytes) implements LayoutPart {}

  /** A run of blanks. */
  record Gap() implements LayoutPart {}

  /** A field in braces. */
  record Field(String name) implements LayoutPart {}

  /**
   * Takes a layout apart.
   *
   * @throws IllegalArgumentException if it is malformed; the message is fit for a person
   */
  static List<LayoutPart> parse(String layout) {
    List<LayoutPart> parts = new ArrayList<>();
    ByteArrayOutputStream literal = new ByteArrayOutputStream();
    int at = 0;
    while (at < layout.length()) {
      char c = layout.charAt(at);
      boolean doubled = layout.startsWith("{{", at) || layout.startsWith("}}", at);
      if (doubled) {
        literal.write(c);
        at += 2;
      } else if (c == '{') {
        endLiteral(literal, parts);
        String name = nameAt(layout, at);
        parts.add(new Field(name));
        at += name.length() + 2;
      } else if (c == '}') {
        throw new IllegalArgumentException(
            "character " + (at + 1) + " is a '}' that closes nothing; the character itself is }}");
      } else if (c == ' ' || c == '\t') {
        endLiteral(literal, parts);
        parts.add(new Gap());
        while (at < layout.length() && (layout.charAt(at) == ' ' || layout.charAt(at) == '\t')) {
          at++;
        }
      } else {
        literal.write(ByteText.byteAt(layout, at));
        at += ByteText.lengthAt(layout, at);
      }
    }
    endLiteral(literal, parts);
    return parts;
  }

  private static void endLiteral(ByteArrayOutputStream literal, List<LayoutPart> parts) {
    if (literal.size() > 0) {
      parts.add(new Literal(literal.toByteArray()));
      literal.reset();
    }
  }

  private static String nameAt(String layout, int at) {
    int end = layout.indexOf('}', at);
    if (end < 0) {
      throw new IllegalArgumentException(
          "character " + (at + 1) + " is a '{' that is never closed; the character itself is {{");
    }
    String name = layout.substring(at + 1, end);
    if (!DefinitionParser.isSafeName(name)) {
      throw new IllegalArgumentException(
          "{" + name + "} is no field name: use lower-case letters, digits and hyphens");
    }
    return name;
  }
}
