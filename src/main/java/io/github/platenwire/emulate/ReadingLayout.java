package io.github.platenwire.emulate;

import io.github.platenwire.quantity.Unit;

/** How an emulated device writes one reading. Every one is immutable and safe for any thread. */
public sealed interface ReadingLayout permits LineLayout, PackedLayout {
  /** The unit of force in which the load is shown. */
  Unit unit();

  /** Digits of the load after the decimal mark, 0 to 6. */
  int decimals();

  /** The greatest number of last-digit steps that can be shown. */
  long greatestCounts();

  /** What ends a reading and is never spoilt; empty where a frame has no such thing. */
  String terminator();

  /** One reading's bytes. */
  byte[] bytes(Shown shown);

  /** How many of the last digit's steps make one unit. */
  default long countsPerUnit() {
    long counts = 1;
    for (int i = 0; i < decimals(); i++) {
      counts *= 10;
    }
    return counts;
  }
}
