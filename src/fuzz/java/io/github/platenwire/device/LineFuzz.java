package io.github.platenwire.device;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;

/** Lines, asked for or not. */
class LineFuzz {
  private static final List<DeviceDefinition> DEVICES =
      Target.shipped("signed-line-lbf", "status-line-kn", "two-gauges-line-mm", "query-line-n", "plain-number-kn");

  @FuzzTest(maxDuration = "3m")
  void accept_anything_isDecodedMarkedOrPassedOver(FuzzedDataProvider data) {
    Target.feed(data.pickValue(DEVICES), data);
  }
}
