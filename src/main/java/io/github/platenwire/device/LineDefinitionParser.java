package io.github.platenwire.device;

import io.github.platenwire.toml.Suggestions;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads definitions of devices that send one ASCII line a reading. Stateless. */
final class LineDefinitionParser {
  private static final int LONGEST_UNSTATED = 80;
  private static final int LONGEST_POSSIBLE = 1024;

  private LineDefinitionParser() {}

  /** A device that sends unasked. */
  static DeviceDefinition parse(TomlSection root, String text) throws TomlException {
    root.allow("format", "name", "title", "kind", "serial", "line", "fields");
    return definition(root, text, /* asked= */ false);
  }

  /** A device that answers each request with a line. */
  static DeviceDefinition parseAsked(TomlSection root, String text) throws TomlException {
    root.allow("format", "name", "title", "kind", "serial", "ask", "line", "fields");
    return definition(root, text, /* asked= */ true);
  }

  private static DeviceDefinition definition(TomlSection root, String text, boolean asked)
      throws TomlException {
    String name = DefinitionParser.name(root);
    String title = DefinitionParser.title(root);
    TomlSection line = root.section("line");
    line.allow("layout", "terminator", "longest");
    Terminator terminator = Terminator.parse(line);
    List<LayoutPart> parts = parts(line, terminator);
    LineFields fields = new LineFields(line, fieldsInOrder(line, parts, root.section("fields")));
    Layout layout = compile(line, parts, fields);
    int longest = longest(line, layout);
    Optional<Asking> asking =
        asked ? Optional.of(AskTable.parse(root, terminator, longest)) : Optional.empty();
    return new LineDefinition(
        name,
        title,
        SerialTable.parse(root),
        fields.values(),
        text,
        layout,
        terminator,
        longest,
        asking);
  }

  private static List<LayoutPart> parts(TomlSection line, Terminator terminator)
      throws TomlException {
    try {
      List<LayoutPart> parts = LayoutPart.parse(line.string("layout"));
      for (LayoutPart part : parts) {
        if (part instanceof LayoutPart.Literal literal && terminator.isWithin(literal.bytes())) {
          throw line.error(
              "layout", "the layout holds the terminator, which ends the line; leave it out");
        }
      }
      return parts;
    } catch (IllegalArgumentException e) {
      throw line.error("layout", String.valueOf(e.getMessage()));
    }
  }

  /** The table of each field, in the order of the layout; both must name the same fields. */
  private static Map<String, TomlSection> fieldsInOrder(
      TomlSection line, List<LayoutPart> parts, TomlSection fields) throws TomlException {
    Map<String, TomlSection> defined = fields.namedSections();
    Map<String, TomlSection> ordered = new LinkedHashMap<>();
    for (LayoutPart part : parts) {
      if (part instanceof LayoutPart.Field field) {
        String name = field.name();
        TomlSection section = defined.get(name);
        if (section == null) {
          String hint =
              Suggestions.nearest(name, defined.keySet())
                  .map(s -> "did you mean {" + s + "}?")
                  .orElse("add a table [fields." + name + "]");
          throw line.error("layout", "{" + name + "} is not defined; " + hint);
        }
        if (ordered.put(name, section) != null) {
          throw line.error("layout", "{" + name + "} stands in the layout twice");
        }
      }
    }
    for (String name : defined.keySet()) {
      if (!ordered.containsKey(name)) {
        throw fields.error(
            name, "the layout has no {" + name + "}; put it there or take this table out");
      }
    }
    return ordered;
  }

  private static Layout compile(TomlSection line, List<LayoutPart> parts, LineFields fields)
      throws TomlException {
    try {
      return LayoutCompiler.compile(parts, fields.drafts());
    } catch (IllegalArgumentException e) {
      throw line.error("layout", String.valueOf(e.getMessage()));
    }
  }

  private static int longest(TomlSection line, Layout layout) throws TomlException {
    int stated = NumberField.wholeWithin(line, "longest", 1, LONGEST_POSSIBLE);
    int longest = stated == 0 ? LONGEST_UNSTATED : stated;
    if (longest < layout.shortest()) {
      throw line.error(
          "longest",
          "longest is "
              + longest
              + " bytes, but the shortest line of this layout has "
              + layout.shortest());
    }
    return longest;
  }
}
