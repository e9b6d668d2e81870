package io.github.platenwire.device;

import io.github.platenwire.port.LineSettings;
import java.util.List;

/** A device that sends one ASCII line a reading, unasked. Immutable. */
record LineDefinition(
    String name,
    String title,
    LineSettings lineSettings,
    List<ValueField> valueFields,
    String text,
    Layout layout,
    Terminator terminator,
    int longest)
    implements DeviceDefinition {
  LineDefinition {
    valueFields = List.copyOf(valueFields);
  }

  @Override
  public FrameDecoder newDecoder() {
    return new LineDecoder(layout, terminator, longest, new LineValues(valueFields));
  }

  @Override
  public void decodeFrame(byte[] frame, long arrivalNanos, FrameSink sink) {
    new LineDecoder(layout, terminator, longest, new LineValues(valueFields))
        .whole(frame, arrivalNanos, sink);
  }

  @Override
  public int countFrames(byte[] bytes) {
    return terminator.count(bytes);
  }
}
