package io.github.platenwire.device;

import io.github.platenwire.port.LineSettings;
import java.util.List;
import java.util.Optional;

/** A device that sends one ASCII line a reading, asked or unasked. Immutable. */
record LineDefinition(
    String name,
    String title,
    LineSettings lineSettings,
    List<ValueField> valueFields,
    String text,
    Layout layout,
    Terminator terminator,
    int longest,
    Optional<Asking> asking)
    implements DeviceDefinition {
  LineDefinition {
    valueFields = List.copyOf(valueFields);
  }

  @Override
  public FrameDecoder newDecoder() {
    return decoder();
  }

  @Override
  public FrameReader newFrameReader() {
    return decoder()::whole;
  }

  private LineDecoder decoder() {
    return new LineDecoder(layout, terminator, longest, new LineValues(valueFields));
  }

  @Override
  public int countFrames(byte[] bytes) {
    return terminator.count(bytes);
  }

  @Override
  public Fault fault(byte[] bytes) {
    if (bytes.length >= longest) {
      return new Fault(longest, "a line has at most " + longest + " bytes before its terminator");
    }
    return layout.fault(bytes, new LineValues(valueFields));
  }
}
