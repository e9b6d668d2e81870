package io.github.platenwire.emulate;

import java.util.List;
import java.util.Locale;

/**
 * One split beam of the demo: its row in the table, its truth and the devices on it. Immutable.
 *
 * @param name unique in the demo
 * @param series what it is a companion in
 * @param bond how its bar is bonded, in words
 * @param crackNewtons true load at its first crack
 * @param widthMillimetres true width of its crack at {@value #AT_NEWTONS} N on first loading
 */
public record DemoBeam(
    String name, String series, String bond, double crackNewtons, double widthMillimetres) {
  /** The rig with a load at 100 Hz and gauges at 10 and 60 Hz. */
  public static final String RIG = "beam-frame";

  /** 3000 lbf in newtons. */
  static final double AT_NEWTONS = 13_344.6648457815;

  private static final String PLAIN = "plain bar well bonded";
  private static final String COATED = "coated bar poorly bonded";

  /** Three with a plain bar, well bonded, and three with a coated one, poorly: tenfold apart. */
  public static final List<DemoBeam> ALL =
      List.of(
          new DemoBeam("NA-PB-1", "NA-PB", PLAIN, 9_200, 0.032),
          new DemoBeam("NA-PB-2", "NA-PB", PLAIN, 8_900, 0.036),
          new DemoBeam("NA-PB-3", "NA-PB", PLAIN, 9_500, 0.029),
          new DemoBeam("NA-CB-1", "NA-CB", COATED, 9_200, 0.32),
          new DemoBeam("NA-CB-2", "NA-CB", COATED, 9_400, 0.29),
          new DemoBeam("NA-CB-3", "NA-CB", COATED, 8_800, 0.37));

  private static final List<String> PORTS =
      List.of("memory:beam-load", "memory:beam-gauge-a", "memory:beam-gauge-b");

  /** The names of its channels' calibrations, load first. */
  public static List<String> calibrations() {
    return List.of(calibration("load"), calibration("gauge-a"), calibration("gauge-b"));
  }

  private static String calibration(String channel) {
    return RIG + "-" + channel;
  }

  /** The addresses of its devices' ports, load first. */
  public static List<String> ports() {
    return PORTS;
  }

  /** What really happens: two load steps with a hold and a cycle, then up to 22 kN. */
  public BeamTruth truth() {
    BeamProgram program =
        new BeamProgram(8).to(11_500, 500).hold(12).to(2_000, 1000).hold(1).to(22_000, 500).hold(1);
    return new BeamTruth(
        EmulatedBeam.withWidth(crackNewtons, AT_NEWTONS, widthMillimetres), program);
  }

  /** Whether its bar is bonded as a bar should be. */
  public boolean isWellBonded() {
    return bond.equals(PLAIN);
  }

  /** What its devices send, load first. */
  public List<BeamReadings> readings(long seed) {
    BeamTruth truth = truth();
    long own = seed ^ name.hashCode();
    return List.of(
        new BeamReadings(truth, BeamDevice.load(100, 5, 1), own),
        new BeamReadings(truth, BeamDevice.gauge(0, 10, 0.0005, 0.0001), own),
        new BeamReadings(truth, BeamDevice.gauge(1, 60, 0.0005, 0.0001), own));
  }

  /** Its row in {@code specimens.csv}. */
  String row(String cast) {
    return name
        + ","
        + series
        + ",beam,,,500,,"
        + cast
        + ",7,,tank 20 C,moist,"
        + bond
        + ",150,150,12,30\n";
  }

  /** The rig file. */
  public static String rigText() {
    return "format = \"platenwire-rig 1\"\nname = \""
        + RIG
        + "\"\n"
        + "title = \"Beam frame, emulated, 200 kN, two crack gauges\"\n"
        + channel("load", "force", "kN", 0, "signed-line-kn", "[-5, 200]", 0.001, 2)
        + channel("gauge-a", "length", "mm", 1, "gauge-line-mm", "[-5, 5]", 0.0001, 4)
        + channel("gauge-b", "length", "mm", 2, "gauge-line-mm", "[-5, 5]", 0.0001, 4);
  }

  private static String channel(
      String name,
      String quantity,
      String unit,
      int port,
      String device,
      String range,
      double resolution,
      double zeroTolerance) {
    return String.format(
        Locale.ROOT,
        """

        [[channel]]
        name = "%s"
        quantity = "%s"
        unit = "%s"
        port = "%s"
        device = "%s"
        calibration = "%s"
        range = %s
        zero-tolerance = %s
        resolution = %.4f
        """,
        name,
        quantity,
        unit,
        PORTS.get(port),
        device,
        calibration(name),
        range,
        zeroTolerance,
        resolution);
  }
}
