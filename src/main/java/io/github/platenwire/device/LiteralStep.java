package io.github.platenwire.device;

/** Bytes that must be there as they are. */
final class LiteralStep implements Step {
  private final byte[] bytes;

  LiteralStep(byte[] bytes) {
    this.bytes = bytes.clone();
  }

  @Override
  public int match(byte[] line, int at, int end, LineValues values) {
    return isAt(line, at, end) ? at + bytes.length : -1;
  }

  boolean isAt(byte[] line, int at, int end) {
    if (end - at < bytes.length) {
      return false;
    }
    for (int i = 0; i < bytes.length; i++) {
      if (line[at + i] != bytes[i]) {
        return false;
      }
    }
    return true;
  }

  @Override
  public ByteSet starts() {
    return ByteSet.of(bytes, 0, 1);
  }

  @Override
  public ByteSet rests() {
    return ByteSet.of(bytes, 1, bytes.length);
  }

  @Override
  public ByteSet continues() {
    return ByteSet.NONE;
  }

  @Override
  public int shortest() {
    return bytes.length;
  }

  @Override
  public int longest() {
    return bytes.length;
  }

  @Override
  public String label() {
    return "the character " + ByteText.show(Byte.toUnsignedInt(bytes[0]));
  }
}
