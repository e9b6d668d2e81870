package io.github.platenwire.device;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Makes steps out of a layout's parts, and refuses a layout whose pieces cannot be told apart. Used
 * once a layout.
 */
final class LayoutCompiler {
  private final List<LayoutPart> parts;
  private final Map<String, FieldDraft> drafts;
  private final List<Step> steps = new ArrayList<>();

  private LayoutCompiler(List<LayoutPart> parts, Map<String, FieldDraft> drafts) {
    this.parts = parts;
    this.drafts = drafts;
  }

  /**
   * Compiles a layout.
   *
   * @param drafts every field that the layout names
   * @throws IllegalArgumentException if two neighbours cannot be told apart; the message says why
   */
  static Layout compile(List<LayoutPart> parts, Map<String, FieldDraft> drafts) {
    return new LayoutCompiler(parts, drafts).compile();
  }

  private Layout compile() {
    for (int i = 0; i < parts.size(); i++) {
      addStep(i);
    }
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i) instanceof BlankStep) {
        checkBlank(i);
      } else {
        checkEnd(i);
      }
    }
    return new Layout(steps);
  }

  private void addStep(int index) {
    LayoutPart part = parts.get(index);
    if (part instanceof LayoutPart.Literal literal) {
      steps.add(new LiteralStep(literal.bytes()));
    } else if (part instanceof LayoutPart.Field field) {
      FieldDraft draft = drafts.get(field.name());
      if (draft == null) {
        throw new IllegalArgumentException("{" + field.name() + "} is not defined");
      }
      steps.add(fieldStep(draft, index));
    } else if (index == 0 || !isOpenText(index - 1)) {
      steps.add(new BlankStep(0));
    } else if (index < parts.size() - 1) {
      steps.add(new BlankStep(1)); // a blank is what ends the text
    }
  }

  private boolean isOpenText(int index) {
    if (parts.get(index) instanceof LayoutPart.Field field) {
      FieldDraft draft = drafts.get(field.name());
      return draft != null && draft.step().isEmpty() && draft.width() == 0;
    }
    return false;
  }

  private Step fieldStep(FieldDraft draft, int index) {
    if (draft.width() > 0) {
      return new FixedWidthStep(
          draft.step().orElseGet(() -> TextStep.toEnd(draft.name())), draft.width());
    }
    return draft.step().orElseGet(() -> openText(draft.name(), index));
  }

  private Step openText(String name, int index) {
    List<LayoutPart> after = parts.subList(index + 1, parts.size());
    if (after.stream().allMatch(LayoutPart.Gap.class::isInstance)) {
      return TextStep.toEnd(name);
    }
    LayoutPart next = parts.get(index + 1);
    if (next instanceof LayoutPart.Literal literal) {
      return TextStep.toLiteral(name, new LiteralStep(literal.bytes()));
    }
    if (next instanceof LayoutPart.Gap) {
      return TextStep.toBlank(name);
    }
    throw new IllegalArgumentException(
        "the text {"
            + name
            + "} is followed by another field at once, so its end cannot be told; put a character"
            + " between them or give {"
            + name
            + "} a width");
  }

  /** A run of blanks must not swallow what the next piece counts as its own. */
  private void checkBlank(int index) {
    if (index + 1 == steps.size()) {
      return;
    }
    Step next = steps.get(index + 1);
    boolean counts = next instanceof FixedWidthStep || next instanceof LiteralStep;
    if (counts && next.starts().meets(ByteSet.BLANKS)) {
      throw new IllegalArgumentException(
          "the space before "
              + next.label()
              + " stands for any run of blanks, but "
              + next.label()
              + " may begin with blanks itself; write \\x20 for just one space, or leave it out");
    }
  }

  /** Where a piece could go on, what follows must not begin with the same byte. */
  private void checkEnd(int index) {
    Step step = steps.get(index);
    int gap = -1;
    for (int next = index + 1; next < steps.size(); next++) {
      Step follower = steps.get(next);
      boolean blank = follower instanceof BlankStep;
      if (step.continues().meets(follower.starts())) {
        if (blank || gap < 0) {
          throw inseparable(step, follower);
        }
        steps.set(gap, new BlankStep(1));
        return;
      }
      gap = blank ? next : gap;
      if (follower.shortest() > 0) {
        return;
      }
    }
  }

  private static IllegalArgumentException inseparable(Step step, Step follower) {
    int common = step.continues().firstCommon(follower.starts());
    return new IllegalArgumentException(
        "where "
            + step.label()
            + " ends and "
            + follower.label()
            + " begins cannot be told, because "
            + ByteText.show(common)
            + " could belong to either; put a character between them that neither can hold, or"
            + " give "
            + step.label()
            + " a width");
  }
}
