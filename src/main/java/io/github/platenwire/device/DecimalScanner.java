package io.github.platenwire.device;

import java.nio.charset.StandardCharsets;

/**
 * Reads a decimal number out of bytes and gives the double nearest to it. Not thread-safe; one is
 * used again for each number and allocates nothing up to fifteen significant digits.
 */
final class DecimalScanner {
  /* Up to 2^53 a whole number is exact in a double, and so are the powers of ten up to 10^22; one
   * division or multiplication of two exact doubles is rounded once, hence to the nearest (Clinger,
   * "How to read floating point numbers accurately", 1990). What lies beyond goes to the library. */
  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };
  private static final long EXACT = 1L << 53;

  /** A long takes eighteen digits without running over. */
  private static final int MOST_DIGITS = 18;

  /** An exponent of more digits is no reading. */
  private static final int MOST_EXPONENT_DIGITS = 3;

  private boolean negative;
  private long mantissa;
  private int significant;
  private int decimals;
  private int exponent;
  private int digitsFrom;
  private int digitsTo;

  /**
   * Reads a number: sign, blanks, digits with at most one mark, exponent, as the format allows.
   *
   * @return index of the first byte after it, or -1 if there is none
   */
  int scan(NumberFormat format, byte[] line, int at, int end) {
    negative = false;
    mantissa = 0;
    significant = 0;
    decimals = format.impliedDecimals();
    exponent = 0;
    int from = scanSign(format, line, at, end);
    if (from < 0) {
      return -1;
    }
    digitsFrom = from;
    digitsTo = scanDigits(format, line, from, end);
    int to = digitsTo;
    if (to >= 0 && format.exponent() && to < end && (line[to] | 32) == 'e') {
      to = scanExponent(line, to + 1, end);
    }
    return to >= 0 && format.sign() == NumberFormat.Sign.AFTER ? scanSignAfter(line, to, end) : to;
  }

  /** Plus, minus or one blank; at the end of a field its padding was taken off before. */
  private int scanSignAfter(byte[] line, int at, int end) {
    if (at == end) {
      return at;
    }
    negative = line[at] == '-';
    return negative || line[at] == '+' || Blanks.isBlank(line[at]) ? at + 1 : -1;
  }

  private int scanSign(NumberFormat format, byte[] line, int at, int end) {
    boolean there = at < end && (line[at] == '-' || line[at] == '+');
    if (!there) {
      return format.sign() == NumberFormat.Sign.REQUIRED ? -1 : at;
    }
    if (format.sign() == NumberFormat.Sign.NONE || format.sign() == NumberFormat.Sign.AFTER) {
      return -1;
    }
    negative = line[at] == '-';
    return Blanks.skip(line, at + 1, end);
  }

  private int scanDigits(NumberFormat format, byte[] line, int from, int end) {
    int wanted = format.digits();
    int count = 0;
    boolean marked = false;
    int i = from;
    for (; i < end; i++) {
      int digit = line[i] - '0';
      if (digit >= 0 && digit <= 9 && (wanted == 0 || count < wanted)) {
        count++;
        push(digit);
        decimals += marked ? 1 : 0;
      } else if (!marked && line[i] == format.mark() && format.mark() != 0) {
        marked = true;
      } else {
        break;
      }
    }
    boolean whole = count > 0 && (wanted == 0 || count == wanted);
    return whole ? i : -1;
  }

  private void push(int digit) {
    if (significant > 0 || digit > 0) {
      significant++;
      if (significant <= MOST_DIGITS) {
        mantissa = mantissa * 10 + digit;
      }
    }
  }

  private int scanExponent(byte[] line, int at, int end) {
    boolean signed = at < end && (line[at] == '-' || line[at] == '+');
    boolean below = signed && line[at] == '-';
    int first = signed ? at + 1 : at;
    int i = first;
    while (i < end && i - first < MOST_EXPONENT_DIGITS && line[i] >= '0' && line[i] <= '9') {
      exponent = exponent * 10 + (line[i] - '0');
      i++;
    }
    exponent = below ? -exponent : exponent;
    return i == first ? -1 : i;
  }

  /**
   * The number last read, as the nearest double; infinite if there is none so great. Zero has no
   * sign, whatever was sent.
   */
  double value(byte[] line) {
    int power = exponent - decimals;
    double size;
    if (mantissa == 0) {
      return 0.0;
    } else if (significant <= MOST_DIGITS && mantissa <= EXACT && Math.abs(power) < POWERS.length) {
      size = power < 0 ? mantissa / POWERS[-power] : mantissa * POWERS[power];
    } else {
      size = parseLong(line, power);
    }
    return negative && size != 0 ? -size : size;
  }

  private double parseLong(byte[] line, int power) {
    StringBuilder text = new StringBuilder();
    String sent = new String(line, digitsFrom, digitsTo - digitsFrom, StandardCharsets.ISO_8859_1);
    sent.chars().filter(c -> c >= '0' && c <= '9').forEach(c -> text.append((char) c));
    return Double.parseDouble(text.append('e').append(power).toString());
  }
}
