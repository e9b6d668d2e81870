package io.github.platenwire.commission;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** A line format thrown together at random, and lines written in it. */
final class RandomLineFormat {
  private static final List<List<String>> FORCES =
      List.of(
          List.of("kN", "kN"),
          List.of("KN", "kN"),
          List.of("lb", "lbf"),
          List.of("LBF", "lbf"),
          List.of("N", "N"),
          List.of("KIP", "kip"));
  private static final List<List<String>> LENGTHS =
      List.of(
          List.of("mm", "mm"),
          List.of("MM", "mm"),
          List.of("in", "in"),
          List.of("um", "µm"),
          List.of("mils", "mil"));
  private static final List<String> ENDS = List.of("\r\n", "\n", "\r", "\u0003");
  private static final List<String> STARTS = List.of("", ">", "\u0002", "$", "LOAD", "CH1 ");

  private enum Sign {
    ALWAYS,
    WHERE_NEGATIVE,
    AFTER
  }

  /** One number of the line. */
  private record Figure(
      String spelling,
      String unit,
      int decimals,
      int width,
      char pad,
      Sign sign,
      String beforeUnit) {}

  private final Random random;
  private final String delimiter;
  private final char mark;
  private final String start;
  private final String end;
  private final boolean time;
  private final boolean counter;
  private final int state;
  private final List<Figure> numbers = new ArrayList<>();
  final List<List<BigDecimal>> values = new ArrayList<>();

  RandomLineFormat(long seed) {
    random = new Random(seed);
    mark = random.nextInt(3) == 0 ? ',' : '.';
    delimiter =
        pick(
            mark == ','
                ? List.of(";", " ", "|", "\t", "; ")
                : List.of(";", ",", " ", "|", "\t", ", "));
    start = pick(STARTS);
    end = pick(ENDS);
    time = random.nextBoolean();
    counter = random.nextInt(3) == 0;
    state = random.nextInt(4);
    numbers.add(number(pick(FORCES)));
    if (random.nextBoolean()) {
      numbers.add(number(pick(LENGTHS)));
    }
    numbers.forEach(n -> values.add(new ArrayList<>()));
  }

  private <T> T pick(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  private Figure number(List<String> unit) {
    int decimals = 1 + random.nextInt(4);
    boolean padded = random.nextBoolean();
    return new Figure(
        unit.get(0),
        unit.get(1),
        decimals,
        padded ? 8 + decimals : 0,
        random.nextBoolean() ? '0' : ' ',
        pick(List.of(Sign.values())),
        pick(List.of("", " ", delimiter)));
  }

  String unit(int number) {
    return numbers.get(number).unit;
  }

  String stream(int lines) {
    StringBuilder out = new StringBuilder();
    int first = random.nextInt(9000);
    for (int i = 0; i < lines; i++) {
      out.append(line(i, first + i)).append(end);
    }
    return out.toString();
  }

  private String line(int i, int count) {
    List<String> parts = new ArrayList<>();
    if (time) {
      parts.add(String.format(Locale.ROOT, "%02d:%02d:%02d", 7 + i / 3600, i / 60 % 60, i % 60));
    }
    if (counter) {
      parts.add(Integer.toString(count));
    }
    if (state == 1) {
      parts.add(i % 6 == 2 ? "US" : "ST");
    }
    for (int n = 0; n < numbers.size(); n++) {
      parts.add(text(numbers.get(n), next(n, i)));
    }
    if (state == 2) {
      parts.add(i % 5 == 3 ? "M" : "S");
    }
    return start + String.join(delimiter, parts);
  }

  private BigDecimal next(int n, int i) {
    double shape = (n == 0 ? 90 : 7) * Math.sin(0.05 * i + n) + random.nextDouble();
    BigDecimal value =
        BigDecimal.valueOf(shape - 20).setScale(numbers.get(n).decimals, RoundingMode.HALF_EVEN);
    values.get(n).add(value);
    return value;
  }

  private String text(Figure number, BigDecimal value) {
    String digits = value.abs().toPlainString().replace('.', mark);
    String sign = value.signum() < 0 ? "-" : number.sign == Sign.WHERE_NEGATIVE ? "" : "+";
    String padding =
        Character.toString(number.pad).repeat(Math.max(0, number.width - digits.length()));
    String signed =
        number.sign == Sign.AFTER
            ? padding + digits + sign
            : number.pad == '0' ? sign + padding + digits : padding + sign + digits;
    return signed + number.beforeUnit + number.spelling;
  }

  BigDecimal greatest(int number) {
    return Collections.max(values.get(number));
  }

  BigDecimal least(int number) {
    return Collections.min(values.get(number));
  }
}
