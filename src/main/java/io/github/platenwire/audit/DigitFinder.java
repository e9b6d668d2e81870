package io.github.platenwire.audit;

/**
 * Finds in a frame of decimal text the number that its value was decoded from: of all numbers in
 * it, the one nearest the value. Not thread-safe.
 */
final class DigitFinder {
  /**
   * How far a calibration's correction may take a value from what the device showed, as a share of
   * the value. Chosen far above any correction that a usable machine has.
   */
  private static final double FARTHEST_SHARE = 0.05;

  private static final int MOST_DIGITS = 15;
  private static final double[] TENS = new double[MOST_DIGITS + 1];

  static {
    for (int i = 0; i < TENS.length; i++) {
      TENS[i] = Math.pow(10, i);
    }
  }

  private long count;
  private int decimals;
  private double distance;

  // the number being scanned
  private long scanned;
  private int scannedDigits;
  private int scannedDecimals;
  private boolean afterMark;

  /** Looks for the number; false if none comes near the value. */
  boolean find(byte[] frame, double value) {
    distance = Double.POSITIVE_INFINITY;
    boolean negative = false;
    begin();
    for (byte b : frame) {
      if (b >= '0' && b <= '9') {
        digit(b - '0');
      } else if ((b == '.' || b == ',') && scannedDigits > 0 && !afterMark) {
        afterMark = true;
      } else {
        end(negative, value);
        negative = b == '-';
      }
    }
    end(negative, value);
    return distance <= FARTHEST_SHARE * Math.abs(value) + 50 / TENS[decimals];
  }

  private void begin() {
    scanned = 0;
    scannedDigits = 0;
    scannedDecimals = 0;
    afterMark = false;
  }

  private void digit(int digit) {
    scanned = scannedDigits < MOST_DIGITS ? 10 * scanned + digit : scanned;
    scannedDigits++;
    scannedDecimals += afterMark ? 1 : 0;
  }

  private void end(boolean negative, double value) {
    if (scannedDigits > 0 && scannedDigits <= MOST_DIGITS) {
      double number = (negative ? -scanned : scanned) / TENS[scannedDecimals];
      if (Math.abs(number - value) < distance) {
        distance = Math.abs(number - value);
        count = negative ? -scanned : scanned;
        decimals = scannedDecimals;
      }
    }
    begin();
  }

  /** The digits of the number found, as one whole number. */
  long count() {
    return count;
  }

  /** How many of them stand after the decimal mark. */
  int decimals() {
    return decimals;
  }
}
