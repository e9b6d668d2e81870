package io.github.platenwire.device;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;

/** Answers of Modbus RTU devices. */
class ModbusFuzz {
  private static final List<DeviceDefinition> DEVICES =
      Target.shipped("registers-load", "registers-load-and-gauge");

  @FuzzTest(maxDuration = "3m")
  void accept_anything_isDecodedMarkedOrPassedOver(FuzzedDataProvider data) {
    Target.feed(data.pickValue(DEVICES), data);
  }
}
