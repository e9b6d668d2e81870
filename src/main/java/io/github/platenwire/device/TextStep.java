package io.github.platenwire.device;

import org.jspecify.annotations.Nullable;

/** Characters that say nothing of the reading and are passed over. */
final class TextStep implements Step {
  private final String name;
  private final boolean endsAtBlank;
  private final @Nullable LiteralStep endsAt;

  private TextStep(String name, boolean endsAtBlank, @Nullable LiteralStep endsAt) {
    this.name = name;
    this.endsAtBlank = endsAtBlank;
    this.endsAt = endsAt;
  }

  /** A text that goes on to the end of the line, or of its width. */
  static TextStep toEnd(String name) {
    return new TextStep(name, /* endsAtBlank= */ false, null);
  }

  /** A text that goes on to the next blank. */
  static TextStep toBlank(String name) {
    return new TextStep(name, /* endsAtBlank= */ true, null);
  }

  /** A text that goes on to the first place where a literal stands. */
  static TextStep toLiteral(String name, LiteralStep literal) {
    return new TextStep(name, /* endsAtBlank= */ false, literal);
  }

  @Override
  public int match(byte[] line, int at, int end, LineValues values) {
    if (!endsAtBlank && endsAt == null) {
      return end;
    }
    for (int i = at; i < end; i++) {
      if (endsAt == null ? Blanks.isBlank(line[i]) : endsAt.isAt(line, i, end)) {
        return i;
      }
    }
    return -1;
  }

  @Override
  public ByteSet starts() {
    return ByteSet.ALL;
  }

  @Override
  public ByteSet rests() {
    return ByteSet.ALL;
  }

  @Override
  public ByteSet continues() {
    return ByteSet.NONE; // it ends where the next piece begins, by its making
  }

  @Override
  public int shortest() {
    return 0;
  }

  @Override
  public int longest() {
    return UNBOUNDED;
  }

  @Override
  public String label() {
    return "{" + name + "}";
  }
}
