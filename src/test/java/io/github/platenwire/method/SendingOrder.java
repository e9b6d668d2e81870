package io.github.platenwire.method;

import io.github.platenwire.emulate.BeamReadings;
import java.util.List;
import java.util.function.BooleanSupplier;

/** Hands out what several devices send in the order in which they send it. */
final class SendingOrder {
  private SendingOrder() {}

  /** Takes the next reading of a device. */
  @FunctionalInterface
  interface Taker {
    void take(int device, BeamReadings.Reading reading);
  }

  /** Until all have sent everything, or somebody has had enough. */
  static void run(List<BeamReadings> streams, BooleanSupplier enough, Taker taker) {
    BeamReadings.Reading[] heads = new BeamReadings.Reading[streams.size()];
    while (!enough.getAsBoolean()) {
      int next = -1;
      for (int i = 0; i < heads.length; i++) {
        if (heads[i] == null && streams.get(i).hasNext()) {
          heads[i] = streams.get(i).next();
        }
        if (heads[i] != null && (next < 0 || heads[i].sentNanos() < heads[next].sentNanos())) {
          next = i;
        }
      }
      if (next < 0) {
        return;
      }
      taker.take(next, heads[next]);
      heads[next] = null;
    }
  }
}
