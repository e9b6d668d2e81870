package io.github.platenwire.device;

import io.github.platenwire.device.PackedFrame.Verdict;
import io.github.platenwire.reading.Quality;
import java.util.List;

/**
 * Finds packed frames in a stream. A byte that no frame begins with is put aside; what was put
 * aside is reported as garbled once there is a frame's length of it or a frame follows. Not
 * thread-safe. Its buffers are made at the start; no reading allocates.
 */
final class PackedDecoder implements FrameDecoder {
  private final PackedFrame shape;
  private final List<PackedField> fields;
  private final LineValues values;
  private final byte[] frame;
  private final byte[] aside;
  private int length;
  private int asideLength;
  private boolean joined = true;
  private long lastArrivalNanos;
  private long asideArrivalNanos;

  PackedDecoder(PackedFrame shape, List<PackedField> fields, LineValues values) {
    this.shape = shape;
    this.fields = fields;
    this.values = values;
    this.frame = new byte[shape.longest()];
    this.aside = new byte[shape.longest()];
  }

  /** Decodes one whole frame, which did not come out of a stream joined in its middle. */
  void whole(byte[] bytes, long arrivalNanos, FrameSink sink) {
    joined = false;
    accept(bytes, 0, bytes.length, arrivalNanos, sink);
    cut(sink);
  }

  @Override
  public void accept(byte[] bytes, int from, int count, long arrivalNanos, FrameSink sink) {
    for (int i = from; i < from + count; i++) {
      frame[length++] = bytes[i];
      lastArrivalNanos = arrivalNanos;
      settle(sink);
    }
  }

  /** Judges what has come until it is the beginning of a frame or nothing is left. */
  private void settle(FrameSink sink) {
    Verdict verdict = Verdict.NONE;
    while (length > 0 && verdict == Verdict.NONE) {
      verdict = shape.judge(frame, length);
      switch (verdict) {
        case MORE -> {}
        case NONE -> putFirstAside(sink);
        case VALUES -> decode(sink);
        case REFUSAL -> {
          reportAside(sink);
          garbled(sink);
        }
      }
    }
  }

  private void putFirstAside(FrameSink sink) {
    aside[asideLength++] = frame[0];
    asideArrivalNanos = lastArrivalNanos;
    System.arraycopy(frame, 1, frame, 0, --length);
    joined = true;
    if (asideLength == aside.length) {
      reportAside(sink);
    }
  }

  private void reportAside(FrameSink sink) {
    int count = asideLength;
    asideLength = 0;
    if (count > 0) {
      sink.garbled(aside, 0, count, asideArrivalNanos);
    }
  }

  private void decode(FrameSink sink) {
    reportAside(sink);
    values.reset();
    for (PackedField field : fields) {
      if (!field.read(frame, shape.fieldsFrom(), values)) {
        garbled(sink);
        return;
      }
    }
    boolean doubtful = joined && !shape.isSure();
    int received = length;
    length = 0;
    joined = false;
    for (int i = 0; i < values.count(); i++) {
      Quality quality = doubtful ? Quality.SUSPECT : values.quality(i);
      if (Double.isNaN(values.value(i)) && quality != Quality.OVER) {
        quality = Quality.GARBLED;
      }
      sink.value(frame, 0, received, lastArrivalNanos, i, values.value(i), values.unit(i), quality);
    }
  }

  private void garbled(FrameSink sink) {
    int received = length;
    length = 0;
    sink.garbled(frame, 0, received, lastArrivalNanos);
  }

  @Override
  public void cut(FrameSink sink) {
    reportAside(sink);
    joined = true;
    if (length > 0) {
      garbled(sink);
    }
  }
}
