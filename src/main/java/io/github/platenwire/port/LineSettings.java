package io.github.platenwire.port;

/**
 * How a serial line is set. Ignored by ports that are no serial line. Immutable.
 *
 * @param baud bits a second, 50 to 4 000 000
 * @param dataBits 7 or 8
 * @param parity whether and how a parity bit is sent
 * @param stopBits 1 or 2
 * @param flow flow control
 */
public record LineSettings(int baud, int dataBits, Parity parity, int stopBits, Flow flow) {
  /** 9600 baud, 8 data bits, no parity, 1 stop bit, no flow control. */
  public static final LineSettings COMMON = new LineSettings(9600, 8, Parity.NONE, 1, Flow.NONE);

  /** Parity of a serial line. */
  public enum Parity {
    /** No parity bit. */
    NONE,
    /** Even number of ones. */
    EVEN,
    /** Odd number of ones. */
    ODD
  }

  /** Flow control of a serial line. */
  public enum Flow {
    /** None. */
    NONE,
    /** RTS and CTS lines. */
    HARDWARE,
    /** XON and XOFF characters. */
    SOFTWARE
  }

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException if a value is out of range
   */
  public LineSettings {
    if (baud < 50 || baud > 4_000_000) {
      throw new IllegalArgumentException("baud must be 50 to 4000000, baud=" + baud);
    }
    if (dataBits != 7 && dataBits != 8) {
      throw new IllegalArgumentException("data bits must be 7 or 8, dataBits=" + dataBits);
    }
    if (stopBits != 1 && stopBits != 2) {
      throw new IllegalArgumentException("stop bits must be 1 or 2, stopBits=" + stopBits);
    }
  }

  /** Bits on the wire for one byte: start, data, parity, stop. */
  public int bitsPerByte() {
    return 1 + dataBits + (parity == Parity.NONE ? 0 : 1) + stopBits;
  }
}
