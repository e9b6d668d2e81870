package io.github.platenwire.device;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** What the fuzz targets have in common. */
final class Target {
  /** Most bytes of one piece, well beyond the longest frame. */
  private static final int LONGEST_PIECE = 3000;

  private Target() {}

  static String text(String name) {
    try {
      return Files.readString(Path.of("devices", name + ".toml"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static DeviceDefinition shipped(String name) {
    try {
      return DeviceDefinition.parse(text(name), name);
    } catch (TomlException e) {
      throw new AssertionError(e);
    }
  }

  static List<DeviceDefinition> shipped(String... names) {
    return Arrays.stream(names).map(Target::shipped).toList();
  }

  /** Feeds a decoder in pieces, cuts it now and then, and decodes what was fed as whole frames. */
  static void feed(DeviceDefinition device, FuzzedDataProvider data) {
    RuleSink sink = new RuleSink();
    FrameDecoder decoder = device.newDecoder();
    long fed = 0;
    while (data.remainingBytes() > 0) {
      byte[] piece = data.consumeBytes(data.consumeInt(0, LONGEST_PIECE));
      decoder.accept(piece, 0, piece.length, fed, sink);
      fed += piece.length;
      if (data.consumeBoolean()) {
        decoder.cut(sink);
      }
      sink.assertAtMost(fed);
      again(device, piece);
    }
    decoder.cut(sink);
    sink.assertAtMost(fed);
  }

  /** As reduce and explain meet a frame that a raw file keeps. */
  private static void again(DeviceDefinition device, byte[] frame) {
    device.decodeFrame(frame, 0, new RuleSink());
    Fault fault = device.fault(frame);
    if (fault.at() < 0 || fault.why().isBlank()) {
      throw new AssertionError(fault);
    }
    int frames = device.countFrames(frame);
    if (frames < 0 || frames > frame.length) {
      throw new AssertionError(frames + " frames in " + frame.length + " bytes");
    }
  }
}
