package io.github.platenwire.emulate;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/** The ways of speaking that an emulated device has, each read by a shipped definition. */
@SuppressWarnings(
    "ImmutableEnumChecker") // every layout and talk is immutable, only not annotated so
public enum Voice {
  /** Lines in pounds-force. */
  LBF("lbf", "signed-line-lbf", LineLayout.POUNDS, "1", false, null),
  /** Lines in kilonewtons. */
  KN("kn", "signed-line-kn", LineLayout.KILONEWTONS, "0.01", false, null),
  /** Lines in kilonewtons with a state. */
  STATUS_KN("status-kn", "status-line-kn", LineLayout.STATUS_KILONEWTONS, "0.01", false, null),
  /** Load in newtons, for each query. */
  QUERY("query", "query-line-n", PackedLayout.EXPONENT, "0.1", false, QueryConversation::new),
  /** Load in newtons and gauge in millimetres, for each query. */
  QUERY_GAUGE(
      "query-gauge",
      "query-line-n-mm",
      PackedLayout.EXPONENT_AND_GAUGE,
      "0.1",
      true,
      QueryConversation::new),
  /** Binary frames with the load. */
  BINARY("binary", "binary-load", PackedLayout.FRAME, "0.1", false, null),
  /** Binary frames with load and gauge. */
  BINARY_GAUGE(
      "binary-gauge", "binary-load-and-gauge", PackedLayout.FRAME_WITH_GAUGE, "0.1", true, null),
  /** Load in input registers, asked for by Modbus RTU. */
  REGISTERS(
      "registers",
      "registers-load",
      PackedLayout.REGISTERS,
      "0.1",
      false,
      seed -> new RegisterConversation(17, 4, 8)),
  /** Load and gauge in holding registers, asked for by Modbus RTU. */
  REGISTERS_GAUGE(
      "registers-gauge",
      "registers-load-and-gauge",
      PackedLayout.REGISTERS_WITH_GAUGE,
      "0.1",
      true,
      seed -> new RegisterConversation(1, 3, 0));

  private final String word;
  private final String definition;
  private final ReadingLayout layout;
  private final BigDecimal resolution;
  private final boolean gauge;
  private final @Nullable LongFunction<Conversation> talk;

  Voice(
      String word,
      String definition,
      ReadingLayout layout,
      String resolution,
      boolean gauge,
      @Nullable LongFunction<Conversation> talk) {
    this.word = word;
    this.definition = definition;
    this.layout = layout;
    this.resolution = new BigDecimal(resolution);
    this.gauge = gauge;
    this.talk = talk;
  }

  /** The voice that a person calls by a word. */
  public static Optional<Voice> ofWord(String word) {
    return Arrays.stream(values()).filter(voice -> voice.word.equals(word)).findFirst();
  }

  /** Every word, in order. */
  public static List<String> words() {
    return Arrays.stream(values()).map(Voice::word).toList();
  }

  /** What a person calls it. */
  public String word() {
    return word;
  }

  /** Name of the shipped definition that reads it. */
  public String definition() {
    return definition;
  }

  /** Whether it also tells a gauge. */
  public boolean hasGauge() {
    return gauge;
  }

  /** Whether it speaks only when it is asked. */
  public boolean isAsked() {
    return talk != null;
  }

  /**
   * An indicator with this voice that never fails, with its finest resolution.
   *
   * @param capacityNewtons greatest load it can show
   * @param rateHertz readings a second; one that is asked keeps to who asks it
   */
  public EmulatedIndicator indicator(double capacityNewtons, double rateHertz) {
    return EmulatedIndicator.perfect(layout, resolution, capacityNewtons, rateHertz);
  }

  /**
   * A device that answers with this voice.
   *
   * @param truth what it measures
   * @param indicator made by {@link #indicator}
   * @param seed of noise and faults; it is the device's serial number too
   * @throws IllegalStateException if this voice speaks of its own accord
   */
  public AskedFrame asked(SpecimenTruth truth, EmulatedIndicator indicator, long seed) {
    if (talk == null) {
      throw new IllegalStateException(word + " is not asked");
    }
    return new AskedFrame(truth, indicator, talk.apply(seed), seed);
  }
}
