package io.github.platenwire.device;

import io.github.platenwire.port.LineSettings;
import java.util.List;
import java.util.Optional;

/** A device that sends packed numbers in frames of known length. Immutable. */
record PackedDefinition(
    String name,
    String title,
    LineSettings lineSettings,
    List<ValueField> valueFields,
    String text,
    PackedFrame frame,
    List<PackedField> fields,
    Optional<Asking> asking)
    implements DeviceDefinition {
  PackedDefinition {
    valueFields = List.copyOf(valueFields);
    fields = List.copyOf(fields);
  }

  @Override
  public FrameDecoder newDecoder() {
    return decoder();
  }

  @Override
  public FrameReader newFrameReader() {
    return decoder()::whole;
  }

  private PackedDecoder decoder() {
    return new PackedDecoder(frame, fields, new LineValues(valueFields));
  }

  @Override
  public int countFrames(byte[] bytes) {
    return bytes.length / frame.longest();
  }

  @Override
  public Fault fault(byte[] bytes) {
    boolean whole =
        bytes.length > 0
            && bytes.length <= frame.longest()
            && frame.judge(bytes, bytes.length) == PackedFrame.Verdict.VALUES;
    if (whole) {
      LineValues values = new LineValues(valueFields);
      for (PackedField field : fields) {
        if (!field.read(bytes, frame.fieldsFrom(), values)) {
          int at = frame.fieldsFrom() + field.at();
          return new Fault(at, "'" + field.name() + "' holds a code that is not among its codes");
        }
      }
    }
    return frame.fault(bytes);
  }
}
