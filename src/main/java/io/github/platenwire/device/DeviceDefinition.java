package io.github.platenwire.device;

import io.github.platenwire.port.LineSettings;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import java.util.List;
import java.util.Optional;

/**
 * What a kind of device sends, as a definition file tells it. Immutable; safe for any thread;
 * decoders made from it are not.
 */
public interface DeviceDefinition {
  /** The name by which rigs refer to it. */
  String name();

  /** What the device is, in a few words for a person. */
  String title();

  /** How its serial line is set. */
  LineSettings lineSettings();

  /** The values in each frame, at least one. */
  List<ValueField> valueFields();

  /** The definition file as it was read, to be kept in the raw file. */
  String text();

  /** A decoder at the start of a stream that it joins in mid-frame. */
  FrameDecoder newDecoder();

  /**
   * Decodes one whole frame again, as a raw file keeps it: without the terminator, and without
   * regard to where in a stream it stood: never suspect. An empty one says nothing.
   *
   * @param frame the frame as it was handed to a {@link FrameSink}
   * @param arrivalNanos handed on to the sink
   * @param sink told of the frame's values, or that it is garbled
   */
  default void decodeFrame(byte[] frame, long arrivalNanos, FrameSink sink) {
    newFrameReader().read(frame, arrivalNanos, sink);
  }

  /** What decodes many whole frames: its room is made once, not for each. */
  FrameReader newFrameReader();

  /**
   * How many frames end in some bytes that were lost before decoding, as nearly as can be told
   * without decoding.
   *
   * @param bytes what was lost
   */
  int countFrames(byte[] bytes);

  /** How the device is asked; empty if it speaks of its own accord. */
  Optional<Asking> asking();

  /**
   * Why some bytes could not be decoded.
   *
   * @param bytes what a decoder reported as garbled, or a frame with a value that is not there
   */
  Fault fault(byte[] bytes);

  /**
   * One value that each frame carries.
   *
   * @param name as a rig file refers to it
   * @param unit the unit that the definition states; a frame may say another of the same quantity
   */
  record ValueField(String name, Unit unit) {}

  /**
   * Reads a definition.
   *
   * @param text the TOML document
   * @param source its name for error messages
   * @throws TomlException if a key or value is wrong, with line and column
   */
  static DeviceDefinition parse(String text, String source) throws TomlException {
    return DefinitionParser.parse(text, source);
  }
}
