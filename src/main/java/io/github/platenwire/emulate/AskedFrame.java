package io.github.platenwire.emulate;

/**
 * One whole test as a device answers for it that speaks only when it is asked. The same truth,
 * indicator and seed give the same answers to the same questions at the same times. Not
 * thread-safe.
 */
public final class AskedFrame {
  private static final byte[] NOTHING = {};

  private final SpecimenTruth truth;
  private final EmulatedIndicator indicator;
  private final Conversation conversation;
  private final ReadingMaker maker;

  AskedFrame(
      SpecimenTruth truth, EmulatedIndicator indicator, Conversation conversation, long seed) {
    this.truth = truth;
    this.indicator = indicator;
    this.conversation = conversation;
    this.maker = new ReadingMaker(truth, indicator, seed);
  }

  /** When the test is over, in nanoseconds since its start. */
  public long endNanos() {
    return truth.endNanos();
  }

  /** What was answered so far. */
  public SentTruth sent() {
    return maker.sent();
  }

  /**
   * Takes what the device hears.
   *
   * @param bytes any piece of what is sent to it
   * @param nanos when they came, since the start of the test
   * @return what it answers; none if nothing is to be said (yet)
   */
  public byte[] hear(byte[] bytes, long nanos) {
    return bytes.length == 0
        ? NOTHING
        : conversation.hear(
            bytes,
            nanos,
            framing -> maker.next(nanos, shown -> framing.apply(indicator.layout().bytes(shown))));
  }
}
