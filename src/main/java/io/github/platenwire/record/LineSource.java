package io.github.platenwire.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;

/**
 * The lines of a file as slices of one buffer, with the SHA-256 of everything before the line in
 * hand. Bytes are hashed in large pieces and looked at in place: a line costs no copy. Not
 * thread-safe.
 */
final class LineSource implements AutoCloseable {
  private static final int USUAL_BYTES = 1 << 17;

  private final InputStream in;
  private final MessageDigest digest = Digests.sha256();
  private byte[] buffer = new byte[USUAL_BYTES];
  private int hashed;
  private int start;
  private int end;
  private int limit;
  private long dropped;

  LineSource(InputStream in) {
    this.in = in;
  }

  /**
   * Goes to the next line feed after the line's beginning.
   *
   * @return false if the file ends before one; then the line in hand is what there is
   */
  boolean next() throws IOException {
    int at = start;
    while (true) {
      while (at < limit) {
        if (buffer[at] == '\n') {
          end = at;
          return true;
        }
        at++;
      }
      int before = start;
      if (!fill()) {
        end = limit;
        return false;
      }
      at -= before - start;
    }
  }

  /** Counts the line in hand, line feed and all, as read. */
  void swallow() {
    start = end + 1;
  }

  /** Reads on; the line in hand may move to the front of the buffer. */
  private boolean fill() throws IOException {
    if (limit == buffer.length) {
      makeRoom();
    }
    int count = in.read(buffer, limit, buffer.length - limit);
    if (count < 0) {
      return false;
    }
    limit += count;
    return true;
  }

  private void makeRoom() {
    if (start == 0) {
      buffer = Arrays.copyOf(buffer, Math.multiplyExact(2, buffer.length));
      return;
    }
    hash();
    System.arraycopy(buffer, start, buffer, 0, limit - start);
    dropped += start;
    limit -= start;
    end -= start;
    start = 0;
    hashed = 0;
  }

  private void hash() {
    digest.update(buffer, hashed, start - hashed);
    hashed = start;
  }

  /** Bytes before the line in hand. */
  long offset() {
    return dropped + start;
  }

  /** The buffer that holds the line in hand. */
  byte[] buffer() {
    return buffer;
  }

  /** Where the line in hand begins. */
  int start() {
    return start;
  }

  /** Where its line feed is, or the file's end. */
  int end() {
    return end;
  }

  int length() {
    return end - start;
  }

  /** The line in hand as text. */
  String text() {
    return new String(buffer, start, length(), StandardCharsets.UTF_8);
  }

  /** Whether the line in hand begins with some ASCII characters. */
  boolean startsWith(byte[] words) {
    return length() >= words.length
        && Arrays.equals(buffer, start, start + words.length, words, 0, words.length);
  }

  /** A digest over every byte before the line in hand, free to go on with. */
  MessageDigest digestBefore() {
    hash();
    return Digests.copyOf(digest);
  }

  /** A digest over every byte up to the line in hand and its line feed. */
  MessageDigest digestWith() {
    MessageDigest with = digestBefore();
    with.update(buffer, start, length());
    with.update((byte) '\n');
    return with;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
