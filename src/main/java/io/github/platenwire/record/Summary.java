package io.github.platenwire.record;

import io.github.platenwire.method.MethodResult;
import java.util.List;
import java.util.Optional;

/**
 * All that a summary file tells of one closed test. Immutable.
 *
 * @param header the raw file's head
 * @param methodTitle the method in words
 * @param standard the standard it computes by
 * @param rawFileName the raw file's name, without folder
 * @param closing how the raw file was closed
 * @param result what the test came to
 * @param channels what came on each channel
 * @param observations what a person saw
 * @param calibrationStates each channel's calibration on the day, in words, by channel in header
 *     order
 * @param companions the companions' range in words, if this was the last of them
 * @param failure what went wrong, if anything did
 * @param provenance how this summary came about
 */
public record Summary(
    RawHeader header,
    String methodTitle,
    String standard,
    String rawFileName,
    Closing closing,
    MethodResult result,
    List<ChannelTally> channels,
    Observations observations,
    List<String> calibrationStates,
    Optional<String> companions,
    Optional<String> failure,
    Provenance provenance) {
  /** Makes the lists immutable. */
  public Summary {
    channels = List.copyOf(channels);
    calibrationStates = List.copyOf(calibrationStates);
  }
}
