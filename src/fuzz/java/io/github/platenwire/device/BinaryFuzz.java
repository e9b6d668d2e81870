package io.github.platenwire.device;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;

/** Frames of fixed length. */
class BinaryFuzz {
  private static final List<DeviceDefinition> DEVICES =
      Target.shipped("binary-load", "binary-load-and-gauge");

  @FuzzTest(maxDuration = "3m")
  void accept_anything_isDecodedMarkedOrPassedOver(FuzzedDataProvider data) {
    Target.feed(data.pickValue(DEVICES), data);
  }
}
