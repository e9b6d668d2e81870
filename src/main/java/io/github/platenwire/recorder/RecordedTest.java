package io.github.platenwire.recorder;

import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.Closing;
import io.github.platenwire.record.RawHeader;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A test that is over. Immutable.
 *
 * @param file its raw file
 * @param header the head of it
 * @param result what it came to; departures include what went wrong with links and disk
 * @param closing its last line; empty if not even that could be written
 * @param channels what came on each channel, in rig order
 * @param failure what ended it against everybody's will
 */
public record RecordedTest(
    Path file,
    RawHeader header,
    MethodResult result,
    Optional<Closing> closing,
    List<ChannelTally> channels,
    Optional<Failure> failure) {
  /** Makes the list immutable. */
  public RecordedTest {
    channels = List.copyOf(channels);
  }

  /** The same test with a failure as an earlier summary of it tells. */
  RecordedTest withFailure(Optional<String> words) {
    return new RecordedTest(
        file, header, result, closing, channels, words.map(w -> new Failure(Kind.LINK, w)));
  }

  /** The same test with its result as the position of a beam's break has it. */
  RecordedTest placed(Method method, BreakPosition position) {
    return new RecordedTest(
        file,
        header,
        method.withBreakPosition(header.specimen(), result, position),
        closing,
        channels,
        failure);
  }

  /**
   * What ended a test against everybody's will.
   *
   * @param kind where it lies
   * @param words what happened, for a person
   */
  public record Failure(Kind kind, String words) {}

  /** Where a failure lies. */
  public enum Kind {
    /** The device or the link to it. */
    LINK,
    /** The disk. */
    STORAGE
  }
}
