package io.github.platenwire.emulate;

import io.github.platenwire.emulate.EmulatedCylinder.BreakKind;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * The demo's invented study: a footbridge over Alder Weir, natural against recycled aggregate
 * ({@code NA}, {@code RA}), cured in the tank or under wet sacking on site ({@code -T}, {@code
 * -S}). Today four sets of three companions are broken, {@code RA-S} and the reference {@code NA-T}
 * at 7 and at 28 days; the others wait. In truth {@code NA-T} gains between the two ages and {@code
 * RA-S}, dry after its first week, hardly does. The same start, zone and seed give the same study.
 * Immutable; safe for any thread.
 */
public final class DemoScenario {
  /** The name of the calibration that the rig's load channel refers to. */
  public static final String CALIBRATION_NAME = "frame-1-load";

  /** Mean of the truth of today's sets, in megapascals. */
  private static final double RECYCLED_AT_7 = 25.5;

  private static final double RECYCLED_AT_28 = 25.8;
  private static final double NATURAL_AT_7 = 33.5;
  private static final double NATURAL_AT_28 = 42.5;

  /**
   * Scatter of companions. The single-operator coefficient of variation of ASTM C39 for 100 × 200
   * mm cylinders is 3.2 % (from memory); the demo's companions stay within its printed range of
   * three, 10.6 % of their mean.
   */
  private static final double SCATTER_SHARE = 0.025;

  /** No companion is further from its mean. */
  private static final double GREATEST_SHARE = 0.05;

  private static final int COMPANIONS = 3;
  private static final String TANK = "tank 20 C";
  private static final String SACKING = "wet sacking on site";

  private final Instant start;
  private final ZoneId zone;
  private final long seed;
  private final List<DemoSpecimen> today;
  private final List<DemoSpecimen> waiting;

  /**
   * Invents the study.
   *
   * @param start when the demo's lab day begins
   * @param zone the lab's time zone, in which cast times are written
   * @param seed of strengths, dimensions and readings
   */
  public DemoScenario(Instant start, ZoneId zone, long seed) {
    this.start = start;
    this.zone = zone;
    this.seed = seed;
    Random random = new Random(new SplittableRandom(seed).nextLong());
    List<DemoSpecimen> broken = new ArrayList<>();
    broken.addAll(broken("RA-S", 7, SACKING, 2290, RECYCLED_AT_7, random));
    broken.addAll(broken("RA-S", 28, SACKING, 2290, RECYCLED_AT_28, own("RA-S-28")));
    broken.addAll(broken("NA-T", 7, TANK, 2380, NATURAL_AT_7, own("NA-T-07")));
    broken.addAll(broken("NA-T", 28, TANK, 2380, NATURAL_AT_28, own("NA-T-28")));
    today = List.copyOf(broken);
    List<DemoSpecimen> later = new ArrayList<>();
    later.addAll(waiting("RA-T", 7, 7, TANK, 2300, random));
    later.addAll(waiting("RA-T", 28, 7, TANK, 2300, random));
    later.addAll(waiting("NA-T", 3, 2, TANK, 2380, random));
    for (int ageDays : new int[] {3, 7, 28}) {
      later.addAll(waiting("NA-S", ageDays, 2, SACKING, 2370, random));
    }
    waiting = List.copyOf(later);
  }

  /** The companions that the demo breaks, set after set; each has its truth. */
  public List<DemoSpecimen> today() {
    return today;
  }

  /** The first of today's sets. */
  public List<DemoSpecimen> firstSet() {
    return today.subList(0, COMPANIONS);
  }

  /** The specimens that are not broken yet. */
  public List<DemoSpecimen> waiting() {
    return waiting;
  }

  /**
   * The test of one of today's specimens, ready to be sent.
   *
   * @param specimen one of {@link #today}
   * @param indicator what makes bytes of its load
   * @throws IllegalArgumentException if the specimen has no truth
   */
  public EmulatedFrame test(DemoSpecimen specimen, EmulatedIndicator indicator) {
    EmulatedCylinder cylinder =
        specimen
            .cylinder()
            .orElseThrow(
                () -> new IllegalArgumentException(specimen.name() + " is not broken today"));
    long own = new SplittableRandom(seed ^ specimen.name().hashCode()).nextLong();
    FrameProgram program = FrameProgram.cylinderAtCommonRate(specimen.expectedMegapascals());
    return new EmulatedFrame(new CylinderTruth(cylinder, program, own), indicator, own);
  }

  /**
   * An indicator that goes with {@link #rigText}: lines such as {@code +0123.45 kN} in steps of
   * 0.05 kN up to 1500 kN, with a little noise, jitter and zero.
   *
   * @param rateHertz readings a second
   */
  public static EmulatedIndicator indicator(double rateHertz) {
    return EmulatedIndicator.perfect(
            LineLayout.KILONEWTONS, new BigDecimal("0.05"), 1.5e6, rateHertz)
        .withNoiseAndZero(20, 120)
        .withJitterAndBursts(0.05, 0);
  }

  /** The table {@code specimens.csv}: today's specimens and the waiting ones. */
  public String specimensText() {
    return DemoTexts.specimens(today, waiting);
  }

  /** The file {@code study.toml}. */
  public String studyText() {
    return DemoTexts.study(TANK, SACKING);
  }

  /**
   * A rig file with one load channel in kilonewtons.
   *
   * @param rigName the file's name without {@code .toml}
   * @param port the address of the port at which the emulated indicator answers
   * @param device the name of the definition that decodes its lines
   */
  public String rigText(String rigName, String port, String device) {
    return DemoTexts.rig(rigName, port, device, CALIBRATION_NAME);
  }

  /**
   * The file {@code calibrations/}{@value #CALIBRATION_NAME}{@code .toml} of the rig's load
   * channel, dated 90 days before the start.
   */
  public String calibrationText() {
    return DemoTexts.calibration(CALIBRATION_NAME, LocalDate.ofInstant(start, zone).minusDays(90));
  }

  /** Chance of one set's own, so that a set more or less changes no other. */
  private Random own(String set) {
    return new Random(new SplittableRandom(seed ^ set.hashCode()).nextLong());
  }

  /** A set that is broken today, at its age. */
  private List<DemoSpecimen> broken(
      String series,
      int ageDays,
      String curing,
      double density,
      double megapascals,
      Random random) {
    return companions(series, ageDays, ageDays, curing, density, megapascals, random);
  }

  /** A set that waits; it has no truth. */
  private List<DemoSpecimen> waiting(
      String series, int ageDays, int oldDays, String curing, double density, Random random) {
    return companions(series, ageDays, oldDays, curing, density, Double.NaN, random);
  }

  private List<DemoSpecimen> companions(
      String series,
      int ageDays,
      int oldDays,
      String curing,
      double density,
      double megapascals,
      Random random) {
    List<DemoSpecimen> companions = new ArrayList<>();
    for (int i = 1; i <= COMPANIONS; i++) {
      double mean = clamped(100 + 0.15 * random.nextGaussian(), 99.5, 100.5);
      double ovality = clamped(0.12 * random.nextGaussian(), -0.4, 0.4);
      double first = rounded(mean + ovality, 1);
      double second = rounded(mean - ovality, 1);
      double length = rounded(clamped(200 + 0.6 * random.nextGaussian(), 198, 202), 1);
      double grams = density * (1 + 0.004 * random.nextGaussian()) * volume(first, second, length);
      Optional<EmulatedCylinder> truth =
          Double.isNaN(megapascals)
              ? Optional.empty()
              : Optional.of(cylinder((first + second) / 2, length, megapascals, random));
      companions.add(
          new DemoSpecimen(
              String.format(Locale.ROOT, "%s-%02d-%d", series, ageDays, i),
              series,
              first,
              second,
              length,
              Math.round(grams),
              cast(oldDays, companions.size()),
              ageDays,
              curing,
              megapascals,
              truth));
    }
    return companions;
  }

  private static EmulatedCylinder cylinder(
      double diameter, double length, double megapascals, Random random) {
    double share = clamped(SCATTER_SHARE * random.nextGaussian(), -GREATEST_SHARE, GREATEST_SHARE);
    BreakKind kind = random.nextInt(3) == 0 ? BreakKind.GRADUAL : BreakKind.BRITTLE;
    return EmulatedCylinder.ofNormalConcrete(diameter, length, megapascals * (1 + share), kind);
  }

  /** Whole days before the start and up to two hours and a bit, at a full five minutes. */
  private LocalDateTime cast(int daysAgo, int number) {
    Instant instant =
        start.minus(Duration.ofDays(daysAgo)).minus(Duration.ofMinutes(110 - 15L * number));
    long fiveMinutes = 300;
    long second = Math.floorDiv(instant.getEpochSecond(), fiveMinutes) * fiveMinutes;
    return LocalDateTime.ofInstant(Instant.ofEpochSecond(second), zone);
  }

  /** Litres, so that kilograms a cubic metre give grams. */
  private static double volume(double first, double second, double length) {
    double mean = (first + second) / 2;
    return Math.PI * mean * mean / 4 * length / 1e6;
  }

  private static double clamped(double value, double low, double high) {
    return Math.max(low, Math.min(high, value));
  }

  private static double rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).doubleValue();
  }
}
