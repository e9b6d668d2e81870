package io.github.platenwire.device;

import io.github.platenwire.reading.Quality;

/**
 * Cuts a stream into lines and matches each. Not thread-safe. Its one buffer is made at the start;
 * no reading allocates, save a number of more than fifteen significant digits.
 */
final class LineDecoder implements FrameDecoder {
  private final Layout layout;
  private final Terminator terminator;
  private final int longest;
  private final LineValues values;

  /** Room for the longest line and the part of its terminator that comes before the last byte. */
  private final byte[] line;

  private int length;
  private int matched;
  private boolean passingOver;
  private boolean joined = true;
  private long lastArrivalNanos;

  LineDecoder(Layout layout, Terminator terminator, int longest, LineValues values) {
    this.layout = layout;
    this.terminator = terminator;
    this.longest = longest;
    this.values = values;
    int before = terminator.takesReturnBefore() ? 1 : terminator.length() - 1;
    this.line = new byte[longest + before];
  }

  @Override
  public void accept(byte[] bytes, int from, int length, long arrivalNanos, FrameSink sink) {
    if (length > 0) {
      lastArrivalNanos = arrivalNanos;
    }
    for (int i = from; i < from + length; i++) {
      take(bytes[i], sink);
    }
  }

  private void take(byte b, FrameSink sink) {
    matched = terminator.advance(matched, b);
    if (matched == terminator.length()) {
      endLine(sink);
    } else if (passingOver || (b == '\n' && length == 0 && terminator.takesFeedsAfter())) {
      return;
    } else if (length < line.length) {
      line[length++] = b;
    } else {
      passingOver = true;
      sink.garbled(line, 0, longest, lastArrivalNanos);
    }
  }

  private void endLine(FrameSink sink) {
    boolean reported = passingOver;
    boolean torn = joined && !layout.showsTornLines();
    int received = reported ? 0 : length - (terminator.length() - 1);
    if (received > 0 && terminator.takesReturnBefore() && line[received - 1] == '\r') {
      received--;
    }
    // Ready for the next line before the sink is told, whatever the sink does.
    length = 0;
    matched = 0;
    passingOver = false;
    joined = false;
    if (received > longest) {
      sink.garbled(line, 0, longest, lastArrivalNanos);
    } else if (received > 0) {
      decode(received, torn, sink);
    }
  }

  /** Decodes one line that was cut out of a stream before. */
  void whole(byte[] frame, long arrivalNanos, FrameSink sink) {
    if (frame.length == 0) {
      return;
    }
    lastArrivalNanos = arrivalNanos;
    if (frame.length > longest) {
      sink.garbled(frame, 0, longest, arrivalNanos);
      return;
    }
    System.arraycopy(frame, 0, line, 0, frame.length);
    decode(frame.length, false, sink);
  }

  private void decode(int received, boolean torn, FrameSink sink) {
    if (!layout.match(line, received, values)) {
      sink.garbled(line, 0, received, lastArrivalNanos);
      return;
    }
    for (int i = 0; i < values.count(); i++) {
      Quality quality = torn ? Quality.SUSPECT : values.quality(i);
      sink.value(line, 0, received, lastArrivalNanos, i, values.value(i), values.unit(i), quality);
    }
  }

  @Override
  public void cut(FrameSink sink) {
    int received = passingOver ? 0 : Math.min(length, longest);
    length = 0;
    matched = 0;
    passingOver = false;
    joined = true;
    if (received > 0) {
      sink.garbled(line, 0, received, lastArrivalNanos);
    }
  }
}
