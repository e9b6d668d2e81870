package io.github.platenwire.device;

import io.github.platenwire.reading.Quality;
import java.util.Arrays;
import java.util.Map;

/** What is done with a field of a packed frame. Immutable. */
sealed interface PackedField {
  /** The name in the definition. */
  String name();

  /** Where it stands. */
  PackedNumber number();

  /** Index of its first byte, counted from where fields begin. */
  default int at() {
    return number().at();
  }

  /** Index after its last byte. */
  default int end() {
    return number().end();
  }

  /**
   * Takes what the field says.
   *
   * @return false if it says nothing that the definition knows
   */
  boolean read(byte[] frame, int from, LineValues values);

  /**
   * A value.
   *
   * @param name its name
   * @param number where it stands
   * @param over raw numbers that mean overload
   * @param index among the definition's values
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Value(String name, PackedNumber number, double[] over, int index) implements PackedField {
    @Override
    public boolean read(byte[] frame, int from, LineValues values) {
      double raw = number.raw(frame, from);
      double value = number.value(raw);
      boolean beyond = Double.isInfinite(value) || Arrays.stream(over).anyMatch(o -> o == raw);
      if (beyond) {
        values.worsen(index, Quality.OVER);
      } else {
        values.setValue(index, value);
      }
      return true;
    }
  }

  /**
   * A state of some values.
   *
   * @param name its name
   * @param number where it stands
   * @param mask the bits that count
   * @param codes the states by their number under the mask
   * @param indices the values that it speaks of
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Status(
      String name, PackedNumber number, long mask, Map<Long, Quality> codes, int[] indices)
      implements PackedField {
    @Override
    public boolean read(byte[] frame, int from, LineValues values) {
      Quality quality = codes.get(number.bits(frame, from) & mask);
      if (quality == null) {
        return false;
      }
      for (int index : indices) {
        values.worsen(index, quality);
      }
      return true;
    }
  }
}
