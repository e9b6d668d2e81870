package io.github.platenwire.live;

/**
 * One row as it was followed, kept for whoever wants to tell afterwards how a figure came about:
 * the load reading with what each gauge showed at its moment, and the averages of which it is the
 * newest row. Immutable. Newtons with the load's zero taken off; gauges in millimetres, or strains
 * where strains are followed; NaN where something is missing.
 */
public final class FollowedRow {
  private final long seq;
  private final long micros;
  private final double load;
  private final double[] values;
  private final long[] lowSeqs;
  private final long[] highSeqs;
  private final int mask;
  private final double opening;
  private final Averaged averaged;

  /**
   * Averages over the rows of the time window that ends with a row.
   *
   * @param firstSeq number of the first row averaged
   * @param rows how many rows
   * @param micros mean moment
   * @param newtons mean load
   * @param opening mean opening, or strain as read
   * @param width the opening less the elastic stretch; the opening where none is taken off
   * @param stretch elastic stretch a newton that was taken off
   */
  public record Averaged(
      long firstSeq,
      int rows,
      long micros,
      double newtons,
      double opening,
      double width,
      double stretch) {}

  FollowedRow(AlignedRow row, double load, int mask, double opening, Averaged averaged) {
    seq = row.seq;
    micros = row.micros;
    this.load = load;
    values = row.values.clone();
    lowSeqs = row.lowSeqs.clone();
    highSeqs = row.highSeqs.clone();
    this.mask = mask;
    this.opening = opening;
    this.averaged = averaged;
  }

  static FollowedRow of(AlignedRow aligned, double load, CrackRow row, double raw, double stretch) {
    return new FollowedRow(
        aligned,
        load,
        row.mask,
        raw,
        new Averaged(
            row.firstSeq, row.rows, row.micros, row.load, row.opening, row.width, stretch));
  }

  /** Told of each row. */
  @FunctionalInterface
  public interface Watch {
    /** The next row. */
    void row(FollowedRow row);
  }

  /** Number of the load reading in the raw file. */
  public long seq() {
    return seq;
  }

  /** Its moment, microseconds since the test's origin. */
  public long micros() {
    return micros;
  }

  /** The load of this row alone, newtons, zero taken off. */
  public double newtons() {
    return load;
  }

  /** How many gauges there are. */
  public int gauges() {
    return values.length;
  }

  /** Whether a gauge counts in this row. */
  public boolean counts(int gauge) {
    return (mask & (1 << gauge)) != 0;
  }

  /** What a gauge showed at that moment, zero not taken off. */
  public double value(int gauge) {
    return values[gauge];
  }

  /** Number of the gauge's reading at or before that moment; 0 where it is missing. */
  public long lowSeq(int gauge) {
    return lowSeqs[gauge];
  }

  /** Number of the gauge's reading at or after that moment; 0 where it is missing. */
  public long highSeq(int gauge) {
    return highSeqs[gauge];
  }

  /** The gauges that count, bit 0 for the first. */
  public int mask() {
    return mask;
  }

  /** Mean of the gauges that count in this row alone, zeros taken off. */
  public double opening() {
    return opening;
  }

  /** The averages of which it is the newest row. */
  public Averaged averaged() {
    return averaged;
  }
}
